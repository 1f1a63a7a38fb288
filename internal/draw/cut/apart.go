package cut

import (
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// others draws the neighbours, which are no part of this job, dashed and with
// their names.
func (e elevation) others(pane sheet.Rect, x func(unit.Length) float64) {
	for _, k := range e.job.Neighbours {
		c := sheet.Pt(x(k.Left), pane.Y+pane.H-k.Up.Millimetres()*e.scale)
		hole := rim(c, k.Hole.Size, e.scale)
		e.group(sheet.LayerDatum).Add("beside", sheet.RoundRect(hole, k.Corner.Millimetres()*e.scale))
		e.group(sheet.LayerText).Add("caption", sheet.Text{At: sheet.Pt(c.X, hole.Y-1), S: k.Hole.ID, Anchor: sheet.Middle})
	}
}

// besides says which holes are dashed, in one line; "" for none.
func (j Job) besides() string {
	var ids []string
	for _, k := range j.Neighbours {
		id := k.Hole.ID
		if k.Hole.State == glass.Cut {
			id += " (exists)"
		}
		ids = append(ids, id)
	}
	switch len(ids) {
	case 0:
		return ""
	case 1:
		return "Dashed: hole " + ids[0] + " of the same pane. It has a sheet of its own."
	}
	return "Dashed: holes " + say.Names(ids) + " of the same pane. Each has a sheet of its own."
}
