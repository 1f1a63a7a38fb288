package cut

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Room in millimetres around the elevation of a pane for its dimensions and its name.
const (
	elevLeft   = 25.0 // for the overall height, and for a short measure past the datum edge
	elevAbove  = 19.0 // for the view's name and the overall width
	stub       = 8.0  // how much of the boards is shown
	level      = 9.5  // from one dimension to the next, and from the pane to the first
	keyWide    = 55.0 // of the view from the rink side, at most
	keyHigh    = 50.0
	keyTall    = 60.0 // the same on an upright sheet
	keyRoom    = 16.0 // above and below it, for its name and the boards
	leastNamed = 32.0 // height of a drawn pane that has room for the names of its edges
	mainShare  = 0.56 // of the view with dimensions in the width of a lying sheet
	upShare    = 0.72 // the same of an upright one, the view from the rink side beside it
	upWords    = 54.0 // for the words below on an upright one
	upHole     = 10.0 // more of them for each hole beyond the first
	upCurved   = 22.0 // more of them for a curved pane
)

// panePage draws a pane with all its holes: from the shooting side with every dimension
// from the datum edges, small from the rink side, and in words.
func (s *set) panePage(j paneJob) {
	m := j.marks()
	fields := func(scale string) []sheet.Field {
		g := page{sys: s.Arena.Units}
		return []sheet.Field{{Name: "Pane", Value: j.Pane.ID}, {Name: "Material", Value: fmt.Sprintf("%s, %s", j.Material.Name, g.one(j.Thick))},
			{Name: "Quantity", Value: "1"}, {Name: "Scale", Value: scale}, {Name: "Route", Value: string(j.route())}, g.governing()}
	}
	e := elevation{job: j, lefts: levels(j.spots, func(k onPane) unit.Length { return k.Left }), ups: levels(j.spots, func(k onPane) unit.Length { return k.Up })}
	var as way
	e.scale, as = s.largest(ways(), func(w way) float64 {
		a := s.probe(w, m, fields("1:100")...).area
		box := sheet.Rect{W: a.W * mainShare, H: a.H}
		if w == upright {
			box = sheet.Rect{W: a.W * upShare, H: a.H - e.wordsHigh()}
		}
		return s.scaleFor(j.front(j.Face.Width), j.Face.Height, box.W-elevLeft-e.beside(), box.H-elevAbove-e.below(), 1)
	})
	e.page = s.page(as, "pane", j.title(), m, fields(scaleText(e.scale))...)
	f := s.column(e.page, e.draw(s, as), as, m)
	s.paneWords(f, j)
}

// title names the pane's sheet by its holes.
func (j paneJob) title() string {
	var ids []string
	for _, k := range j.spots {
		ids = append(ids, k.Hole.ID)
	}
	if len(ids) == 1 {
		return "Pane " + j.Pane.ID + ", hole " + ids[0]
	}
	return "Pane " + j.Pane.ID + ", holes " + strings.Join(ids, ", ")
}

// levels are the different lengths of the holes, the smallest first: each has one dimension.
func levels(holes []onPane, of func(onPane) unit.Length) (out []unit.Length) {
	for _, k := range holes {
		if !slices.ContainsFunc(out, func(l unit.Length) bool { return math.Abs(float64(l-of(k))) < float64(slack) }) {
			out = append(out, of(k))
		}
	}
	slices.Sort(out)
	return out
}

// elevation draws one pane.
type elevation struct {
	page
	job        paneJob
	scale      float64 // nominal
	lefts, ups []unit.Length
}

// wordsHigh is the room that the words about the pane take below it on an upright sheet.
func (e elevation) wordsHigh() float64 {
	high := upWords + upHole*float64(len(e.job.spots)-1)
	if e.job.Face.Curved {
		high += upCurved
	}
	return high
}

// beside and below are the room for dimensions to the right of the pane and under it.
func (e elevation) beside() float64 { return level*float64(len(e.ups)) + 6 }
func (e elevation) below() float64  { return stub + level*float64(len(e.lefts)) + 5 }

// draw draws both views and returns the room for words.
func (e elevation) draw(s *set, as way) sheet.Rect {
	k, front := e.laid(e.scale), e.job.front
	w, h := front(e.job.Face.Width).Millimetres()*k, e.job.Face.Height.Millimetres()*k
	main := sheet.Rect{X: e.area.X, Y: e.area.Y, W: elevLeft + w + e.beside(), H: elevAbove + h + e.below()}
	pane := sheet.Rect{X: main.X + elevLeft, Y: main.Y + elevAbove, W: w, H: h}
	e.name(main.X, main.Y, main.W, "FROM THE SHOOTING SIDE", "from the spectators' side, looking at the ice")
	e.pane(pane, k, false)
	e.measures(pane, k)
	rest := sheet.Rect{X: main.X + main.W + columnGap, Y: e.area.Y}
	rest.W, rest.H = e.area.X+e.area.W-rest.X, e.area.H
	kh := e.key(s, rest, map[way]float64{lying: keyHigh, upright: keyTall}[as])
	if as == upright {
		return sheet.Rect{X: e.area.X, Y: main.Y + main.H + 2, W: e.area.W, H: e.area.H - main.H - 2}
	}
	return sheet.Rect{X: rest.X, Y: rest.Y + kh, W: rest.W, H: rest.H - kh}
}

// key draws the pane small from the rink side and returns the height it takes.
func (e elevation) key(s *set, box sheet.Rect, high float64) float64 {
	front := e.job.front
	nominal := s.scaleFor(front(e.job.Face.Width), e.job.Face.Height, min(keyWide, box.W-12), high, e.scale)
	k := e.laid(nominal)
	w, h := front(e.job.Face.Width).Millimetres()*k, e.job.Face.Height.Millimetres()*k
	e.name(box.X, box.Y, box.W, "FROM THE RINK SIDE, "+scaleText(nominal), "mirror image; label this face:", "THIS FACE TO ICE, "+e.job.Pane.ID)
	e.pane(sheet.Rect{X: box.X + 6, Y: box.Y + keyRoom + 2, W: w, H: h}, k, true)
	return keyRoom + 2 + h + stub + 4
}

// name sets a view's name and what it is.
func (e elevation) name(x, y, wide float64, name string, say ...string) {
	t := e.group(sheet.LayerText)
	t.Add("head", sheet.Text{At: sheet.Pt(x, y), S: name, Size: sheet.Bold.FitSize(name, sheet.SizeHead, sheet.SizeSmall, wide), VAlign: sheet.Top})
	for i, s := range say {
		t.Add("note", sheet.Text{At: sheet.Pt(x, y+5+lineHeight*float64(i)), S: s, VAlign: sheet.Top})
	}
}

// pane draws pane, boards, edges and holes; mirrored from the rink side.
func (e elevation) pane(pane sheet.Rect, k float64, mirrored bool) {
	d, t := e.group(sheet.LayerDatum), e.group(sheet.LayerText)
	d.Add("pane", sheet.RoundRect(pane, 0))
	const over = 6.0
	d.Add("boards", sheet.RoundRect(sheet.Rect{X: pane.X - over, Y: pane.Y + pane.H, W: pane.W + 2*over, H: stub * min(1, pane.H/60)}, 0))
	y := e.clearOf(pane, k)
	edges := [2]string{"LEFT EDGE", "RIGHT EDGE"}
	if mirrored {
		slices.Reverse(edges[:])
	}
	for i, x := range []float64{pane.X + 3.2, pane.X + pane.W - 3.2} {
		if pane.H < leastNamed {
			break
		}
		t.Add("caption", sheet.Text{At: sheet.Pt(x, y), S: edges[i], Anchor: sheet.Middle, VAlign: sheet.Centre, Rotate: math.Pi / 2})
	}
	row, end := 0, math.Inf(-1)
	spots := slices.Clone(e.job.spots)
	if mirrored {
		slices.Reverse(spots)
	}
	for _, o := range spots {
		c := e.at(pane, k, o, mirrored)
		hole := rim(c, o.Hole.Size, k)
		outline := sheet.RoundRect(hole, o.Corner.Millimetres()*k)
		e.group(o.work.layer()).Add(o.work.class(), outline)
		if mirrored {
			continue
		}
		d.CentreMark(c, hole.W, hole.H)
		// Names side by side in one row, by turns in two where they would meet.
		half := sheet.Bold.Width(o.Hole.ID, sheet.SizeText)/2 + 2
		if row++; c.X-half > end {
			row = 0
		}
		end = c.X + half
		t.Add("tag", sheet.Text{At: sheet.Pt(c.X, hole.Y-4-lineHeight*float64(row%2)), S: sheet.Bold.Shorten(o.Hole.ID, sheet.SizeText, pane.W), Anchor: sheet.Middle})
	}
}

// clearOf is the height on a drawn pane that is farthest from the names of its holes.
func (e elevation) clearOf(pane sheet.Rect, k float64) (y float64) {
	var names []float64
	for _, o := range e.job.spots {
		names = append(names, rim(e.at(pane, k, o, false), o.Hole.Size, k).Y-5)
	}
	return sheet.Clearest([]float64{pane.Y + pane.H*0.25, pane.Y + pane.H*0.5, pane.Y + pane.H*0.75}, names, 16)
}

// at is where a hole's centre stands on a drawn pane.
func (e elevation) at(pane sheet.Rect, k float64, o onPane, mirrored bool) sheet.Point {
	x := e.job.front(o.Left).Millimetres() * k
	if mirrored {
		x = pane.W - x
	}
	return sheet.Pt(pane.X+x, pane.Y+pane.H-o.Up.Millimetres()*k)
}

// measures sets the dimensions: overall above and to the left, every hole's place from
// the datum edges below and to the right. A measure too short for its words has them
// past the datum edge, where no other line runs.
func (e elevation) measures(pane sheet.Rect, k float64) {
	g, front := e.group(sheet.LayerDim), e.job.front
	foot, right := pane.Y+pane.H, pane.X+pane.W
	dim(g, sheet.Pt(pane.X, pane.Y), sheet.Pt(right, pane.Y), 6, front(e.job.Face.Width), e.places)
	dim(g, sheet.Pt(pane.X, foot), sheet.Pt(pane.X, pane.Y), 12, e.job.Face.Height, e.places)
	for i, l := range e.lefts {
		x := pane.X + front(l).Millimetres()*k
		dim(g, sheet.Pt(x, foot), sheet.Pt(pane.X, foot), stub+level*(float64(i)+0.6), front(l), e.places)
	}
	for i, l := range e.ups {
		y := foot - l.Millimetres()*k
		dim(g, sheet.Pt(right, y), sheet.Pt(right, foot), level*float64(i+1), l, e.places)
		first := slices.MinFunc(e.job.spots, func(a, b onPane) int {
			return cmp.Compare(math.Abs(float64(a.Up-l)), math.Abs(float64(b.Up-l)))
		})
		g.Add("dim", sheet.Line{A: sheet.Pt(e.at(pane, k, first, false).X, y), B: sheet.Pt(right, y)})
	}
	e.datum(sheet.Pt(pane.X, pane.Y+pane.H*0.12), math.Pi, "A")
	e.datum(sheet.Pt(e.clearAlong(pane, k), foot), -math.Pi/2, "B")
}

// clearAlong is a place along a drawn pane's foot, to the right where it can be, that the
// lines from its holes down to their dimensions keep clear of.
func (e elevation) clearAlong(pane sheet.Rect, k float64) float64 {
	const in, enough = 5.0, 4.0
	var down []float64
	places, last := []float64{pane.X + pane.W - in, pane.X + in}, pane.X
	for _, l := range e.lefts {
		x := pane.X + e.job.front(l).Millimetres()*k
		down, places, last = append(down, x), append(places, (last+x)/2), x
	}
	return sheet.Clearest(append(places, (last+pane.X+pane.W)/2), down, enough)
}

// datum marks a datum edge: a filled triangle on it and its letter in a frame beside
// (ISO 5459, from memory). out points away from the part.
func (g page) datum(at sheet.Point, out float64, letter string) {
	const tall, box = 2.0, 4.4
	d := g.group(sheet.LayerDim)
	d.Add("bar", sheet.Polygon(at.Polar(1.2, out+math.Pi/2), at.Polar(1.2, out-math.Pi/2), at.Polar(tall, out)))
	c := at.Polar(tall+box/2, out)
	d.Add("edge", sheet.RoundRect(sheet.Rect{X: c.X - box/2, Y: c.Y - box/2, W: box, H: box}, 0))
	d.Add("note datum-letter", sheet.Text{At: c, S: letter, Anchor: sheet.Middle, VAlign: sheet.Centre})
}

// paneWords says which holes the pane has and how places are measured.
func (s *set) paneWords(f *sheet.Flow, j paneJob) {
	g := page{sys: s.Arena.Units}
	f.Heading("Holes, their centres from the datum edges")
	f.Table(spotFields(j).Of("", j.spots, g.sys), sheet.SizeTable)
	if j.Face.Curved {
		f.Heading("The same along the rink face: curved pane, inner radius " + g.one(j.Face.Radius))
		f.Table(rinkFields(j.Face).Of("", j.spots, g.sys), sheet.SizeTable)
	}
	f.Notes(s.placeNotes(j, g)...)
}

// placeNotes says where the pane stands and how places are measured.
func (s *set) placeNotes(j paneJob, g page) []string {
	before := map[Route]string{Order: "ordering", Standing: "relying on it"}[j.route()]
	lines := []string{
		"Datum A: the pane's left visible edge; datum B: its bottom edge, at the top of the boards. Try with a square that they are square. Measure the pane itself before " + cmp.Or(before, "cutting") + ": what the frame hides is not known.",
		"Places are on the shooting face, " + tolerance(placeTolerance, g.sys) + ". Thick outline: to be made. Thin: exists, nothing is cut of it. Dashed: not part of this work.",
	}
	for _, k := range j.spots {
		lines = append(lines, fmt.Sprintf("Hole %s, %s: %s; centre %s above the ice.", k.Hole.ID, k.work.words(), s.whereabouts(j.Pane.ID, k.Hole.Station), g.one(k.Hole.Height)))
	}
	lines = append(lines, "Material: "+stock(j.Material, j.Thick, g.sys)+".")
	for _, k := range j.jobs {
		for _, a := range k.Assumed {
			if s := "Assumed: " + a.In(g.sys) + "."; !slices.Contains(lines, s) {
				lines = append(lines, s)
			}
		}
	}
	return append(lines, s.history()...)
}

// stock is a pane's material as a buyer would have to name it; what nobody surveyed is said.
func stock(m glass.Properties, thick unit.Length, sys unit.System) string {
	how := "cast or extruded, and grade, not surveyed; its thickness is taken to vary as a cast sheet's (ISO 7823-1)"
	switch {
	case m.MadeToOrder():
		how = "make-up and grade not surveyed"
	case m.Name == glass.Polycarbonate:
		how = "extruded, as solid sheets are; grade not surveyed"
	}
	return m.Noun() + ", " + both(thick).Say(sys) + " thick; " + how
}
