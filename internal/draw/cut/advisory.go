package cut

import (
	"fmt"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// The plot's steps, and its part of the page's width.
const (
	curveSteps = 60
	plotShare  = 0.58
)

// advisoryPage plots the stress factor of the hole's shape against its corner
// radius and says what it is not.
func (s *set) advisoryPage(j Job) {
	g := s.page(lying, "radius", "Hole "+j.Hole.ID+": corner radius, a comparison of shapes", j.marks(),
		sheet.Field{Name: "Pane", Value: j.Pane.ID}, sheet.Field{Name: "Material", Value: string(j.Material.Name)},
		sheet.Field{Name: "Corner radius drawn", Value: both(j.Corner).Say(s.Arena.Units)})
	wide := g.area.W*plotShare - columnGap/2
	if curve := StressCurve(j.Hole.Size, curveSteps); len(curve) > 0 {
		g.d.Place(sheet.LayerCut, j.stressPlot(curve, g.sys).Draw(wide, g.area.H), sheet.Pt(g.area.X, g.area.Y), 1)
	} else {
		g.group(sheet.LayerText).Paragraph("note", sheet.Regular, sheet.Pt(g.area.X, g.area.Y),
			"The hole is longer and narrower than the formula's range (shorter side at least 0.3 of the longer): no curve.", sheet.SizeText, wide, lineHeight)
	}
	f := s.column(g, g.beside(wide), lying, j.marks())
	f.Heading("A comparison of shapes, no strength check")
	f.Notes(
		"The stress factor says how many times the stress at the hole's corner exceeds that in a plain, wide sheet of the same material pulled across the hole's longer side.",
		"A larger radius is kinder to the pane, down to where the curve is lowest. The curve is there to compare one radius with another, nothing else.",
		"It does not say what a pane bears: panes are bent and struck, not pulled; it knows no edge, no frame, no age of the material and no puck.",
		"Formula: Peterson's chart 4.62, restated by formula; valid from 0.2 to 1 of half the shorter side.")
	if rows := j.radii(); len(rows) > 0 {
		f.Heading("In numbers")
		f.Table(radiusFields().Of("", rows, g.sys), sheet.SizeTable)
	}
	if j.Material.MadeToOrder() {
		f.Notes("The factory's own limits govern.")
	}
}

// stressPlot is the curve with the drawing's own radius marked on it.
func (j Job) stressPlot(curve []StressPoint, sys unit.System) chart.Plot {
	in := func(r unit.Length) float64 {
		if sys == unit.Imperial {
			return r.Inches()
		}
		return r.Millimetres()
	}
	name := map[unit.System]string{unit.Metric: "corner radius, mm", unit.Imperial: "corner radius, inches"}[sys]
	line := chart.Series{Name: "stress factor"}
	for _, c := range curve {
		line.Points = append(line.Points, chart.XY{X: in(c.Radius), Y: c.Factor})
	}
	words := "this drawing: R " + both(j.Corner).Say(sys)
	if k, ok := StressFactor(j.Hole.Size, j.Corner); ok {
		words += fmt.Sprintf(", Kt %.2f", k)
	} else {
		words += fmt.Sprintf(", outside the formula's range: Kt above %.2f", curve[0].Factor)
	}
	return chart.Plot{
		Name: "stress", Title: "Stress factor against corner radius",
		X: chart.Axis{Name: name, FromZero: true}, Y: chart.Axis{Name: "stress factor Kt"},
		Series: []chart.Series{line}, Marks: []chart.RefLine{{Words: words, At: in(j.Corner), Strong: true}},
	}
}

// radius is one row of the advisory's table.
type radius struct {
	what   string
	is     unit.Length
	factor float64 // stress factor, without unit
}

// radii lists some radii with their stress factors, the drawing's own last.
func (j Job) radii() []radius {
	var out []radius
	add := func(what string, r unit.Length) {
		if k, ok := StressFactor(j.Hole.Size, r); ok {
			out = append(out, radius{what, r, k})
		}
	}
	half := min(j.Hole.Size.W, j.Hole.Size.H) / 2
	for _, share := range []float64{0.2, 0.3, 0.4, 0.5, 0.75, 1} {
		add(fmt.Sprintf("%.2g of half the shorter side", share), unit.Length(share)*half)
	}
	add("this drawing", j.Corner)
	return out
}

func radiusFields() table.Fields[radius] {
	return table.Fields[radius]{
		texts("corner radius", "radius", func(r radius) string { return r.what }),
		lengths("is", "radius_mm", func(r radius) unit.Length { return r.is }),
		numbers("Kt", "stress_factor", func(r radius, _ unit.System) table.Cell {
			return table.Number(fmt.Sprintf("%.2f", r.factor), r.factor)
		}),
	}
}
