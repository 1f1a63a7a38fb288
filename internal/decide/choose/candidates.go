package choose

import (
	"context"
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// placing lays candidates over an arena's panes.
type placing struct {
	arena    arena.Arena
	rules    *rules.Applied
	opt      Options
	standard glass.Hole
	places   []Candidate
	tally    map[string]map[string]int // by pane: by cause, how many of its places
}

// lay lists every place: the arena's own holes, then places along each pane.
// Places that break a rule are listed too, with the rules that they break. The error is ctx's.
func lay(ctx context.Context, a arena.Arena, sets rules.Sets, opt Options) (*placing, error) {
	l := &placing{arena: a, rules: sets.On(a), opt: opt, tally: map[string]map[string]int{}}
	l.standard = l.likeDrawn(sets.Standard(a))
	for _, h := range a.Working() {
		c := Candidate{Hole: h, Place: a.PlaceOf(h.Station)}
		if pane, ok := a.Pane(h.Pane); ok && !c.IsCut() && l.wrongMaterial(pane) != "" {
			c.against = append(c.against, materialsWish)
		}
		l.add(c)
	}
	heights := opt.Heights
	if len(heights) == 0 && opt.Person.Asked() {
		heights = opt.Person.At(a).heights()
	}
	if len(heights) == 0 {
		heights = []unit.Length{l.standard.Height}
	}
	for i, p := range a.Panes {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		opt.tell(Report{Stage: "placing", Share: float64(i) / float64(len(a.Panes))})
		if cause := l.unfit(p, heights); cause != "" {
			l.count(p.ID, cause)
			continue
		}
		for _, z := range heights {
			for _, offset := range l.offsets(p) {
				l.add(l.newAt(p, offset, z, len(heights) > 1))
			}
		}
	}
	return l, nil
}

// unfit says why a pane holds no place at all, "" when it may.
func (l *placing) unfit(p glass.Pane, heights []unit.Length) string {
	wrong := l.wrongMaterial(p)
	switch {
	case p.Gate != "":
		return "the pane is a gate"
	case wrong != "":
		return wrong
	case len(l.offsets(p)) == 0:
		return "the pane is too narrow for the hole and its distance to the edges"
	case !slices.ContainsFunc(heights, func(z unit.Length) bool { return l.insideHeight(p, z) }):
		return "no allowed height lies inside the pane"
	}
	return ""
}

// materialsWish names the wish for panes of some materials only.
const materialsWish = "materials"

// wrongMaterial says why a pane's material forbids a new hole, "" when it does not.
func (l *placing) wrongMaterial(p glass.Pane) string {
	m, known := p.Material.Get()
	switch {
	case len(l.opt.Materials) == 0 || slices.Contains(l.opt.Materials, m) && known:
		return ""
	case !known:
		return "the pane's material is not surveyed"
	}
	return "the material is not to be cut or ordered: " + string(m)
}

// insideHeight reports whether a hole's centre at height z above the ice
// leaves the edge distance to the pane's top and bottom.
func (l *placing) insideHeight(p glass.Pane, z unit.Length) bool {
	half := l.standard.Size.H/2 + l.opt.Edge
	base := l.arena.Boards.Height
	return z-half >= base-slackLength && z+half <= base+p.Height+slackLength
}

// slackLength forgives rounding in files, metres.
const slackLength = 1e-6

// offsets returns the places of a pane, as distances of the hole's centre from
// the pane's lower edge: its middle, and steps to both sides.
func (l *placing) offsets(p glass.Pane) []unit.Length {
	margin := l.standard.Size.W/2 + l.opt.Edge
	room := p.Width/2 - margin
	if room < -slackLength {
		return nil
	}
	n := int((room + slackLength) / l.opt.Step)
	var out []unit.Length
	for k := -n; k <= n; k++ {
		out = append(out, p.Width/2+unit.Length(k)*l.opt.Step)
	}
	return out
}

// newAt returns the standard hole at a distance from a pane's lower edge, moved
// to the nearest place that people can measure and an arena file states: what is
// proved is what is written.
func (l *placing) newAt(p glass.Pane, offset, z unit.Length, several bool) Candidate {
	sys := l.arena.Units
	c := Candidate{Hole: l.standard, New: true, Lifted: several, Place: l.arena.PlaceOf(p.From + offset).Measured(sys)}
	c.Hole.Pane, c.Hole.Height, c.Hole.State = p.ID, z.Measured(sys), glass.Planned
	c.Hole.Rounding = l.rounding(p)
	c.Hole.Station = l.arena.StationOf(c.Place)
	c.Hole.ID = fmt.Sprintf("%s+%.0f", p.ID, offset.Millimetres())
	if several {
		c.Hole.ID += fmt.Sprintf("@%.0f", z.Millimetres())
	}
	return c
}

// rounding returns how far the standard hole's edges are rounded in a pane: on both
// faces together no more than the pane is thick, down to a whole step of half a
// millimetre, which can be written and made.
func (l *placing) rounding(p glass.Pane) unit.Maybe[unit.Length] {
	const step = unit.Millimetre / 2
	r, known := l.standard.Rounding.Get()
	if t, measured := p.Thickness.Get(); known && measured && 2*r > t {
		return unit.Known(unit.Length(math.Floor(float64(t/2/step)+1e-9)) * step)
	}
	return l.standard.Rounding
}

// likeDrawn gives the standard hole the corners that most of the arena's own
// holes of its size have, so that new places and drawn ones are compared by
// where they are. Where a rule speaks against those corners they stay as round
// as can be.
func (l *placing) likeDrawn(h glass.Hole) glass.Hole {
	count := map[unit.Length]int{}
	best := h.Corner.Or(0)
	for _, own := range l.arena.Working() {
		if r, ok := own.Corner.Get(); ok && own.Size == h.Size {
			if count[r]++; count[r] > count[best] || count[r] == count[best] && r > best {
				best = r
			}
		}
	}
	own := h
	own.Corner = unit.Known(best)
	for _, p := range l.arena.Panes {
		for _, try := range [...]*glass.Hole{&h, &own} {
			try.Pane, try.Station = p.ID, l.arena.Rink.Wrap(p.From+p.Width/2)
		}
		if l.rules.Standing(h) == rules.Pass && l.rules.Standing(own) != rules.Pass {
			return h
		}
	}
	return own
}

// add judges a candidate by the rules on single holes.
func (l *placing) add(p Candidate) {
	pane, _ := l.arena.Pane(p.Hole.Pane)
	p.corner, p.at = l.arena.Rink.Corner(p.Hole.Station), l.arena.Rink.Point(p.Hole.Station)
	if p.New && !l.insideHeight(pane, p.Hole.Height) {
		l.count(p.Hole.Pane, "no allowed height lies inside the pane")
		return
	}
	if l.rules.Standing(p.Hole) != rules.Pass {
		for _, f := range l.rules.Alone(p.Hole) {
			switch f.Status {
			case rules.Fail:
				p.against = append(p.against, f.Set+"/"+f.Rule)
			case rules.Unknown:
				p.against = append(p.against, f.Set+"/"+f.Rule+" (the survey lacks a number)")
			}
		}
	}
	if p.New && l.opt.Person.Crowds(l.arena, p.Hole.Station) {
		p.against = append(p.against, elbowRoom)
	}
	cause := ""
	if len(p.against) > 0 {
		cause = p.against[0]
	}
	if p.New {
		l.count(p.Hole.Pane, cause)
	}
	l.places = append(l.places, p)
}

// count notes why a place of a pane fell out, "" for one that did not.
func (l *placing) count(pane, cause string) {
	if l.tally[pane] == nil {
		l.tally[pane] = map[string]int{}
	}
	l.tally[pane][cause]++
}

// sorted splits the places into those that may be chosen and those kept for
// the price of a rule: drawn holes and places to keep that break rules, and of
// each pane without a choice the place nearest its middle if one rule alone is
// against it.
func (l *placing) sorted() (open, barred []Candidate) {
	free := map[string]bool{}
	for _, p := range l.places {
		if len(p.against) == 0 {
			open = append(open, p)
			free[p.Hole.Pane] = true
		}
	}
	nearest := map[string]int{}
	for i, p := range l.places {
		if len(p.against) == 0 {
			continue
		}
		if l.asked(p) {
			barred = append(barred, p)
			continue
		}
		if free[p.Hole.Pane] || len(p.against) > 1 {
			continue
		}
		k, seen := nearest[p.Hole.Pane]
		if !seen || l.fromMiddle(p) < l.fromMiddle(l.places[k]) {
			nearest[p.Hole.Pane] = i
		}
	}
	for i, p := range l.places {
		if k, ok := nearest[p.Hole.Pane]; ok && k == i {
			barred = append(barred, p)
		}
	}
	return open, barred
}

// asked reports whether somebody asks about a place by itself.
func (l *placing) asked(p Candidate) bool {
	return !p.New || slices.ContainsFunc(l.opt.Keep, p.Is)
}

func (l *placing) fromMiddle(p Candidate) unit.Length {
	pane, _ := l.arena.Pane(p.Hole.Pane)
	d := l.arena.Rink.Wrap(p.Hole.Station-pane.From) - pane.Width/2
	return max(d, -d)
}
