package cut

import (
	"errors"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/survey/glass"
)

// ListRow is one hole of the cut list.
type ListRow struct {
	Job     Job
	Refused []say.Sentence // why there is no drawing; Job then holds only hole and pane
	First   bool           // the first drawn hole of its pane, with which the pane is counted and weighed
}

// List is the cut list over an arena: what exists and what is to be made.
type List struct {
	Rows    []ListRow
	Panes   []Alike
	Covers  []Alike
	Reached float64 // probability that the spares last the season, all kinds together
	Options SpareOptions
}

// Sum is what a list comes to of one kind of work.
type Sum struct {
	Holes, Panes, Covers int
	MassKG               float64 // of the drilled panes, kg
}

// List gathers the cut list of all working holes. Refused holes stand in it
// with their reasons. A pane with several holes is one pane, and to be made
// when one of its holes is.
func (p ShopOrder) List(o Options, s SpareOptions) (List, error) {
	l := List{Options: s}
	var panes [][]Job
	at := make(map[string]int)
	var covers, drilled []part
	for _, h := range p.Arena.Working() {
		j, err := p.Job(h, o)
		var no *Refusal
		if errors.As(err, &no) {
			pane, _ := p.Arena.Pane(h.Pane)
			l.Rows = append(l.Rows, ListRow{Job: Job{Hole: h, Pane: pane}, Refused: no.Reasons})
			continue
		}
		if err != nil {
			return List{}, err
		}
		i, met := at[h.Pane]
		if !met {
			i, panes = len(panes), append(panes, nil)
			at[h.Pane] = i
		}
		panes[i] = append(panes[i], j)
		covers = append(covers, coverOf(j))
		l.Rows = append(l.Rows, ListRow{Job: j, First: !met})
	}
	for _, jobs := range panes {
		drilled = append(drilled, paneOf(jobs))
	}
	l.Panes, l.Covers = kindsOf(drilled, false), kindsOf(covers, true)
	return l, l.stock()
}

// Work is what is to be done about a hole.
func (r ListRow) Work() work {
	switch {
	case len(r.Refused) > 0:
		return notDrawn
	}
	return workOf(r.Job.Exists())
}

// Sums returns what is still to be made and what exists already; refused
// holes are in neither.
func (l List) Sums() (make, exist Sum) {
	for _, r := range l.Rows {
		if len(r.Refused) > 0 {
			continue
		}
		j := r.Job
		add := func(there bool, f func(*Sum)) {
			if there {
				f(&exist)
			} else {
				f(&make)
			}
		}
		add(j.Exists(), func(s *Sum) { s.Holes++ })
		add(j.CoverExists(), func(s *Sum) { s.Covers++ })
		if r.First {
			add(j.PaneExists(), func(s *Sum) { s.Panes++; s.MassKG += j.Mass })
		}
	}
	return make, exist
}

// Spares returns how many drilled panes and covers to keep, all kinds together.
func (l List) Spares() (panes, covers int) {
	for k := range l.kinds() {
		if k.Cover {
			covers += k.Spares
		} else {
			panes += k.Spares
		}
	}
	return panes, covers
}

// stateWord is a hole's state as written in the plan.
func stateWord(j Job) string {
	if j.Hole.State == "" {
		return string(glass.Planned)
	}
	return string(j.Hole.State)
}
