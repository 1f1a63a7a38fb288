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
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/words"
)

// liveView is what follows a hole under somebody's hand: the same for a page that
// is shell.Opened and for an answer while something is dragged.
type liveView struct {
	Address  shell.Address
	Verdict  rules.Status
	Words    string // the verdict in words
	Picks    []pick
	Glance   *glance   // of the picked hole; nil when none is picked
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
	ask := plan.Question{Hole: at.Hole, Lens: at.Lens, Focal: unit.Length(at.Focal) * unit.Millimetre, All: true}
	if h, ok := p.Hole(at.Hole); ok && at.Lens == "" {
		f, _ := h.BestFit()
		ask.Lens, ask.Focal = f.Lens.ID, f.Focal
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
	v.Verdict, v.Words = v.now.Verdict, words.Verdict(v.now.Findings)
	v.Findings = viewFindings(v.now.Findings, "", sys)
	for _, m := range v.now.Holes {
		v.Picks = append(v.Picks, pick{
			ID: m.ID, URL: at.Pick(m.ID).URL(), Words: words.NearPlace(m.Place, sys), Status: m.Status,
			Off: m.State == glass.Off, Chosen: m.ID == at.Hole,
		})
	}
	if i := slices.IndexFunc(v.now.Holes, func(m plan.SurveyedHole) bool { return m.ID == at.Hole }); i >= 0 {
		v.pickedView(v.now.Holes[i], sys)
	}
	if v.Picked != nil && b.Version.Number < b.Document.Head {
		v.Picked.Picture = "" // pictures are taken of the newest version
	}
	return v, nil
}

// pickedView fills in what is said of the picked hole.
func (v *liveView) pickedView(m plan.SurveyedHole, sys unit.System) {
	v.Glance = v.glanceOf(m, sys)
	h, ok := v.plan.Hole(m.ID)
	if v.now.Picked == nil || !ok && !v.moved {
		return
	}
	h = follow(h, m, v.now)
	view := viewHole(v, h, sys)
	view.Picture, view.Peek = pictureURLs(v.Address, h.ID, v.now.Picked.Fit())
	v.Picked = &view
	v.FitChart = fitChart(v.now, m.ID)
}

// follow returns a hole's results with those that follow a move at once; reach
// and framing stay those of the version.
func follow(h plan.Hole, m plan.SurveyedHole, now plan.Now) plan.Hole {
	was := h.Fits
	h.SurveyedHole, h.Light, h.Fits = m, now.Picked.Light, slices.Clone(now.Picked.Fits)
	if len(was) != len(h.Fits) {
		h.Best = unit.Maybe[int]{} // a hole that the version lacks
		return h
	}
	for i := range h.Fits {
		h.Fits[i].Framing = was[i].Framing
	}
	return h
}

// chart returns what the drawings show.
func (v liveView) chart() chart.Content {
	c := chart.OfPlan(v.plan, v.arena.Units, v.Address.Hole)
	c.Arena, c.Bare, c.Moving = v.arena, true, true
	for _, m := range v.now.Holes {
		c.Status[m.ID] = m.Status
		if m.State == glass.Off {
			delete(c.Status, m.ID)
		}
	}
	if f, ok := v.lens(); ok {
		c.Aim(v.Address.Hole, f, true)
	}
	return c
}

// lens returns the fit of the lens that is picked.
func (v liveView) lens() (plan.LensFit, bool) {
	if v.now.Picked == nil {
		return plan.LensFit{}, false
	}
	f := v.now.Picked.Fit()
	return f, f.Fits
}
