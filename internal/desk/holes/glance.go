package holes

import (
	"html/template"
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// glance is what a photographer at the glass needs of a hole, at a glance.
type glance struct {
	ID     string
	Status rules.Status
	Off    bool
	Mend   []findingRow // findings on this hole that are broken or not known
	Tight  string       // the tightest of those kept
	Facts  []shell.Fact
}

func (v *liveView) glanceOf(m plan.Mark, sys unit.System) *glance {
	g := &glance{ID: m.ID, Status: m.Status, Off: m.State == "off"}
	of := v.now.FindingsOf(m.ID)
	rows := viewFindings(of, m.ID, sys)
	g.Mend = rows.Open
	g.Tight = tightest(of, sys)
	g.Facts = []shell.Fact{
		{Name: "Along the boards", Value: whereIs(m, sys)},
		{Name: "Above the ice", Value: unit.Length(m.Height).Format(sys)},
		{Name: "Pane", Value: m.Pane},
	}
	if f, ok := v.lens(); ok {
		g.Facts = append(g.Facts,
			shell.Fact{Name: "Lens", Value: f.Short()},
			shell.Fact{Name: "Clean corners to", Value: degrees(f.PanClear) + " either side"},
			shell.Fact{Name: "Half the light at", Value: degrees(f.PanUsable)},
		)
	} else if v.now.Picked != nil {
		g.Facts = append(g.Facts, shell.Fact{Name: "Lens", Value: "none of the kit goes in"})
	}
	if v.now.Picked != nil {
		for _, l := range v.now.Picked.Light {
			if h, ok := v.plan.Hole(m.ID); ok && l.Zone == h.Slot {
				g.Facts = append(g.Facts, shell.Fact{Name: "ISO at the slot", Value: plan.ISOWords(l) + " at " + unit.Shutter(l.ShutterS).Format() + ", " + unit.Stop(l.Stop).Format()})
			}
		}
	}
	return g
}

// tightest says which kept rule has the least to spare, "" when none has a margin.
func tightest(findings []rules.Finding, sys unit.System) string {
	least, text := math.Inf(1), ""
	for _, f := range findings {
		m, ok := f.Margin.Get()
		if f.Status == rules.Pass && ok && m.Of == rules.AlongBoards && m.N < least {
			least, text = m.N, f.Rule+", "+f.Spare().In(sys)
		}
	}
	return text
}

// Size of the fit chart, in millimetres of the drawing.
const (
	fitChartWidth  = 150.0
	fitChartHeight = 72.0
)

// fitChart draws the light that the picked lens loses when it turns.
func fitChart(now plan.Now, hole string) template.HTML {
	at := now.Picked
	if at == nil || len(at.Loss) == 0 {
		return ""
	}
	c := chart.Fit{Hole: hole, Lens: at.Lens}
	for _, f := range at.Fits {
		if f.Lens == at.Lens && f.Focal == at.Focal {
			c.Lens = f.Short()
			c.Limits = fit.AxisLimits{Body: angleOf(f.PanBody), Clear: angleOf(f.PanClear), Usable: angleOf(f.PanUsable)}
		}
	}
	for _, r := range at.Loss {
		c.Rows = append(c.Rows, fit.LossRow{Angle: unit.Angle(r.Pan) * unit.Degree, Centre: passing(r.Centre), Corner: passing(r.Corner)})
	}
	return template.HTML(sheet.InlineSVG(chart.FitChart(c, fitChartWidth, fitChartHeight))) // the writer escapes every text in it
}

func angleOf(degrees *float64) unit.Maybe[unit.Angle] {
	if degrees == nil {
		return unit.Maybe[unit.Angle]{}
	}
	return unit.Known(unit.Angle(*degrees) * unit.Degree)
}

// passing returns the share of the light that is left after a loss in stops.
func passing(stops *float64) float64 {
	if stops == nil {
		return 0
	}
	return math.Exp2(-*stops)
}
