package wire

import (
	"time"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/custody"
)

// Minding is how the covers of one arena stand, with its rates.
type Minding struct {
	Arena string
	Board custody.Board
	Rates []custody.Rate
	// Expected is told when it was asked for.
	Expected []custody.Expected
	Due      []custody.Due // inspections; likewise
}

// Covers encodes how covers stand, one list over all arenas. Names are the contract's.
func Covers(all []Minding) Object {
	var phases, covers, holes, alarms, rates, outliers, expected, due []Object
	for _, m := range all {
		b := m.Board
		phases = append(phases, Object{"arena", m.Arena, "day", b.Window.Date(), "phase", b.Phase, "since", moment(b.Began)})
		open := map[string]time.Duration{}
		for _, h := range b.Holes {
			open[h.ID] = h.OpenInAll()
			holes = append(holes, hole(m.Arena, h))
		}
		for _, c := range b.Covers {
			minutes := open[c.Hole].Minutes()
			delete(open, c.Hole) // said once for each hole, of its first cover
			covers = append(covers, Object{"id", c.ID, "hole", c.Hole, "state", c.State, "since", moment(c.Since),
				"open_minutes", minutes, "arena", m.Arena, "by", c.By, "words", c.Words})
		}
		for _, a := range b.Alarms {
			alarms = append(alarms, Object{"arena", m.Arena, "hole", a.Hole, "cover", a.Cover, "why", a.Why, "phase", a.Phase,
				"since", moment(a.Since), "due", moment(a.Due), "late", a.Late})
		}
		for _, r := range m.Rates {
			rates = append(rates, rate(m.Arena, r))
		}
		for _, e := range m.Expected {
			expected = append(expected, Object{"arena", m.Arena, "hole", e.Hole, "play_minutes", e.Play.Minutes, "play_pucks", e.Play.Expected, "play_pucks_high", e.Play.ExpectedHigh,
				"practice_minutes", e.Practice.Minutes, "practice_pucks", e.Practice.Expected, "practice_pucks_high", e.Practice.ExpectedHigh})
		}
		for _, d := range m.Due {
			due = append(due, Object{"arena", m.Arena, "hole", d.Hole, "last", moment(d.Last), "due", moment(d.By), "over", d.Over(m.Board.At), "why", d.Why,
				"every_days", d.Days(), "at_once_after", append([]rules.Cause{}, d.After...), "rules", append([]string{}, d.Rules...)})
		}
		for _, o := range custody.Outliers(m.Rates) {
			outliers = append(outliers, Object{"arena", m.Arena, "hole", o.Hole, "incidents", o.Incidents, "open_hours", o.Open.Hours(),
				"expected", o.Expected, "p", o.P, "p_adjusted", o.Adjusted, "above", o.Above()})
		}
	}
	return Object{"covers", list(covers), "rates", list(rates), "phases", list(phases), "holes", list(holes), "alarms", list(alarms), "outliers", list(outliers), "expected", list(expected), "interval", puck.Interval(), "inspections", list(due)}
}

func hole(arena string, h custody.Hole) Object {
	o := Object{"arena", arena, "hole", h.ID, "closed", h.Closed, "seated", h.Seated, "spare_panes", h.Panes}
	for _, p := range custody.Phases() {
		o = append(o, "open_minutes_"+string(p), h.Open[p].Minutes())
	}
	return o
}

func rate(arena string, r custody.Rate) Object {
	o := Object{"hole", r.Hole, "phase", r.Phase, "incidents", r.Incidents, "open_hours", r.Open.Hours()}
	if p, known := r.PerOpen.Get(); known {
		return append(o, "rate", p.Rate, "low", p.Low, "high", p.High, "arena", arena)
	}
	return append(o, "rate", nil, "low", nil, "high", nil, "arena", arena)
}

// moment writes a time as RFC 3339 in UTC, null for none.
func moment(t time.Time) any {
	if t.IsZero() {
		return nil
	}
	return t.UTC()
}

// list is a list that is [] and not null when it is empty.
func list(of []Object) []Object {
	if of == nil {
		return []Object{}
	}
	return of
}

// Inspection encodes what an inspection proves. Names are the contract's.
func Inspection(j custody.Judged) Object {
	return Object{
		"verdict", j.Verdict, "hole", j.Hole,
		"findings", Each(j.Findings, func(f custody.Finding) Object {
			o := Object{"what", f.What, "measured_mm", f.Value, "limit_low_mm", f.Low, "limit_high_mm", f.High,
				"uncertainty_mm", f.U, "verdict", f.Verdict, "conforms", f.Conformance()}
			if f.Would == nil {
				return append(o, "would_do", nil, "would_do_uncertainty_mm", nil)
			}
			return append(o, "would_do", f.Would.Name, "would_do_uncertainty_mm", f.Would.U)
		}),
		"seen", Each(j.Seen, func(s custody.Seen) Object { return Object{"what", s.What, "right", s.Right} }),
	}
}
