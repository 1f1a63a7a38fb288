package cut

import (
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Neighbour is another working hole of the same pane, placed as [Face] does.
type Neighbour struct {
	Hole     glass.Hole
	Left, Up unit.Length // of its centre, from the pane's left edge and the top of the boards
}

// neighbours returns the other working holes of a job's pane.
func (p Plan) neighbours(j Job) []Neighbour {
	var out []Neighbour
	for _, k := range p.Arena.Holes {
		if k.ID != j.Hole.ID && k.Pane == j.Hole.Pane && k.State != glass.Off {
			f := FaceOf(p.Arena, j.Pane, k)
			out = append(out, Neighbour{k, f.Left, f.Up})
		}
	}
	return out
}

// apart returns what the job's rim must keep from its neighbours' rims: two
// thicknesses in glass (the trade's table, hole to hole); in plastics the
// smaller side of the hole, so that as much material stays between two rims as
// the guides leave between a rim and an edge. A neighbour's corner radius that
// is not recorded counts 0, the safe side.
func (j Job) apart() []Limit {
	least, source := min(j.Hole.Size.W, j.Hole.Size.H), asFromAnEdge
	if j.neverCut() {
		least, source = holeThicknesses*j.Thick, tradeTable
	}
	var out []Limit
	for _, k := range j.Neighbours {
		gap := glass.RimOf(j.Hole, j.Corner).Gap(glass.RimOf(k.Hole, k.Hole.Corner.Or(0)), k.Left-j.Face.Left)
		out = append(out, Limit{What: "rim to the rim of hole " + k.Hole.ID, Have: max(0, gap), Least: least, Source: source})
	}
	return out
}

// others draws the neighbours, which are no part of this job, dashed and with
// their names.
func (e elevation) others(pane sheet.Rect, x func(unit.Length) float64) {
	for _, k := range e.job.Neighbours {
		c := sheet.Pt(x(k.Left), pane.Y+pane.H-k.Up.Millimetres()*e.scale)
		w, h := k.Hole.Size.W.Millimetres()*e.scale, k.Hole.Size.H.Millimetres()*e.scale
		rim := sheet.Rect{X: c.X - w/2, Y: c.Y - h/2, W: w, H: h}
		e.group(sheet.LayerDatum).Add("beside", sheet.RoundRect(rim, cornerOf(k.Hole).Millimetres()*e.scale))
		e.group(sheet.LayerText).Add("caption", sheet.Text{At: sheet.Pt(c.X, rim.Y-1), S: k.Hole.ID, Anchor: sheet.Middle})
	}
}

// besides says which holes are dashed, in one line; "" for none.
func (j Job) besides() string {
	ids := make([]string, len(j.Neighbours))
	for i, k := range j.Neighbours {
		ids[i] = k.Hole.ID
	}
	switch len(ids) {
	case 0:
		return ""
	case 1:
		return "Dashed: hole " + ids[0] + " of the same pane. It has a sheet of its own."
	}
	return "Dashed: holes " + strings.Join(ids, ", ") + " of the same pane. Each has a sheet of its own."
}
