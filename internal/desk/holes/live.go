package holes

import (
	"errors"
	"html/template"
	"slices"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// liveView is what follows a hole under somebody's hand: the same for a page that
// is shell.Opened and for an answer while something is dragged.
type liveView struct {
	Address  shell.Address
	Verdict  rules.Status
	Words    string // the verdict in words
	Readout  string // where the picked hole is
	Picks    []pick
	Glance   *glance   // of the picked hole; nil on an arena without holes
	Picked   *holeView // nil when none is picked or it is turned off
	Findings findingsView
	FitChart template.HTML

	arena   arena.Arena // as edited, in the visitor's units
	plan    plan.Plan   // of the version that the edits began with
	now     plan.Now
	version int  // that the edits began with
	moved   bool // something was edited: what takes longer is not worked out anew
}

// pick is one hole to pick.
type pick struct {
	ID, URL, Words string
	Status         rules.Status
	Off            bool
	Chosen         bool
}

// live works out what a page says of a document: of a version as kept, or with
// edits that are not saved.
func (d area) live(b shelf.Book, doc *arena.Document, p plan.Plan, at shell.Address) (liveView, error) {
	v := liveView{Address: at, plan: p, version: b.Version.Number, moved: arena.Revision(doc.Bytes()) != p.Revision}
	ask := plan.Question{Hole: at.Hole, Lens: at.Lens, Focal: at.Focal, All: true, Units: unit.Known(at.Units(p.Survey.System()))}
	if h, ok := p.Hole(at.Hole); ok && at.Lens == "" {
		ask.Lens, ask.Focal = h.Best, h.BestFocal
	}
	var err error
	if v.arena, err = doc.Check(); err != nil {
		return v, err
	}
	sys := at.Units(v.arena.Units)
	v.arena.Units = sys
	v.now, err = b.Live.Try(doc, ask)
	if errors.Is(err, plan.ErrAsked) { // the lens of an old address is no longer in use
		ask.Lens, ask.Focal = "", 0
		v.now, err = b.Live.Try(doc, ask)
	}
	if err != nil {
		return v, err
	}
	v.Verdict, v.Words = v.now.Verdict, plan.VerdictWords(v.now.Findings)
	v.Findings = viewFindings(v.now.Findings, "", sys)
	for _, m := range v.now.Holes {
		v.Picks = append(v.Picks, pick{
			ID: m.ID, URL: at.Pick(m.ID).URL(), Words: whereIs(m, sys), Status: m.Status,
			Off: m.State == "off", Chosen: m.ID == at.Hole,
		})
	}
	if i := slices.IndexFunc(v.now.Holes, func(m plan.Mark) bool { return m.ID == at.Hole }); i >= 0 {
		v.pickedView(v.now.Holes[i], sys)
	}
	if v.Picked != nil && b.Version.Number < b.Document.Head {
		v.Picked.Picture = "" // pictures are taken of the newest version
	}
	return v, nil
}

// pickedView fills in what is said of the picked hole.
func (v *liveView) pickedView(m plan.Mark, sys unit.System) {
	v.Readout = whereIs(m, sys) + ", " + unit.Length(m.Height).Format(sys) + " above the ice"
	v.Glance = v.glanceOf(m, sys)
	h, ok := v.plan.Hole(m.ID)
	if v.now.Picked == nil || !ok && !v.moved {
		return
	}
	h = follow(h, m, v.now)
	view := viewHole(v, h, sys)
	view.Picture = pictureURL(v.Address, h)
	v.Picked = &view
	v.FitChart = fitChart(v.now, m.ID)
}

// follow returns a hole's results with those that follow a move at once; reach
// and framing stay those of the version.
func follow(h plan.Hole, m plan.Mark, now plan.Now) plan.Hole {
	h.ID, h.Pane, h.State, h.Corner, h.Landmark, h.Offset = m.ID, m.Pane, m.State, m.Corner, m.Landmark, m.Offset
	h.Station, h.Height, h.Width, h.Tall, h.Status = m.Station, m.Height, m.Width, m.Tall, m.Status
	h.Light = now.Picked.Light
	framing := map[[2]any]float64{}
	for _, f := range h.Fits {
		framing[[2]any{f.Lens, f.Focal}] = f.Framing
	}
	h.Fits = slices.Clone(now.Picked.Fits)
	for i := range h.Fits {
		f := &h.Fits[i]
		f.Framing = framing[[2]any{f.Lens, f.Focal}]
	}
	return h
}

// whereIs says where a hole is along the boards.
func whereIs(m plan.Mark, sys unit.System) string {
	return plan.Hole{Corner: m.Corner, Landmark: m.Landmark, Offset: m.Offset, Station: m.Station}.Where(sys)
}

// chart returns what the drawings show.
func (v liveView) chart() chart.Plan {
	c := v.plan.Chart(v.arena.Units, v.Address.Hole)
	c.Arena, c.Bare, c.Moving = v.arena, true, true
	for _, m := range v.now.Holes {
		c.Status[m.ID] = m.Status
		if m.State == "off" {
			delete(c.Status, m.ID)
		}
	}
	if f, ok := v.lens(); ok && f.PanClear != nil {
		turn := unit.Angle(*f.PanClear) * unit.Degree
		wedge := chart.Wedge{Hole: v.Address.Hole, Left: turn, Right: turn}
		if i := slices.IndexFunc(c.Reach, func(w chart.Wedge) bool { return w.Hole == wedge.Hole }); i >= 0 {
			c.Reach[i] = wedge
		} else {
			c.Reach = append(c.Reach, wedge)
		}
		c.Notes[v.Address.Hole] = f.Lens
	}
	return c
}

// lens returns the fit of the lens that is picked.
func (v liveView) lens() (plan.LensFit, bool) {
	if v.now.Picked == nil {
		return plan.LensFit{}, false
	}
	for _, f := range v.now.Picked.Fits {
		if f.Lens == v.now.Picked.Lens && f.Focal == v.now.Picked.Focal {
			return f, f.Fits
		}
	}
	return plan.LensFit{}, false
}
