package choose

import (
	"fmt"
	"slices"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// place is one candidate: a hole that stands or could stand.
type place struct {
	hole    glass.Hole
	drawn   bool     // in the arena's document, cut or planned
	cut     bool     // cut already: no new cut
	against []string // rules on single holes that it fails, or that the survey cannot answer
}

// placing lays candidates over an arena's panes.
type placing struct {
	arena    arena.Arena
	sets     rules.Sets
	opt      Options
	standard glass.Hole
	places   []place
	tally    map[string]map[string]int // by pane: by cause, how many of its places
}

// lay lists every place: the arena's own holes, then places along each pane.
// Places that break a rule are listed too, with the rules that they break.
func lay(a arena.Arena, sets rules.Sets, opt Options) *placing {
	l := &placing{arena: a, sets: sets, opt: opt, standard: sets.Standard(a), tally: map[string]map[string]int{}}
	for _, h := range a.Working() {
		p := place{hole: h, drawn: true, cut: h.State == glass.Cut}
		if pane, ok := a.Pane(h.Pane); ok && !p.cut && l.wrongMaterial(pane) != "" {
			p.against = append(p.against, materialsWish)
		}
		l.add(p)
	}
	heights := opt.Heights
	if len(heights) == 0 {
		heights = []unit.Length{l.standard.Height}
	}
	for _, p := range a.Panes {
		if cause := l.unfit(p, heights); cause != "" {
			l.count(p.ID, cause)
			continue
		}
		for _, z := range heights {
			for _, offset := range l.offsets(p) {
				l.add(place{hole: l.holeAt(p, offset, z, len(heights) > 1)})
			}
		}
	}
	return l
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

// holeAt returns the standard hole at a place, named by its pane and its
// distance from the pane's lower edge in millimetres: "P017+610".
func (l *placing) holeAt(p glass.Pane, offset, z unit.Length, several bool) glass.Hole {
	h := l.standard
	h.Pane, h.Station, h.Height = p.ID, l.arena.Rink.Wrap(p.From+offset), z
	h.ID = fmt.Sprintf("%s+%.0f", p.ID, offset.Millimetres())
	if several {
		h.ID += fmt.Sprintf("@%.0f", z.Millimetres())
	}
	return h
}

// add judges a place by the rules on single holes.
func (l *placing) add(p place) {
	pane, _ := l.arena.Pane(p.hole.Pane)
	if !p.drawn && !l.insideHeight(pane, p.hole.Height) {
		l.count(p.hole.Pane, "no allowed height lies inside the pane")
		return
	}
	if l.sets.Standing(l.arena, p.hole) != rules.Pass {
		for _, f := range l.sets.Alone(l.arena, p.hole) {
			switch f.Status {
			case rules.Fail:
				p.against = append(p.against, f.Set+"/"+f.Rule)
			case rules.Unknown:
				p.against = append(p.against, f.Set+"/"+f.Rule+" (the survey lacks a number)")
			}
		}
	}
	cause := ""
	if len(p.against) > 0 {
		cause = p.against[0]
	}
	if !p.drawn {
		l.count(p.hole.Pane, cause)
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
func (l *placing) sorted() (open, barred []place) {
	free := map[string]bool{}
	for _, p := range l.places {
		if len(p.against) == 0 {
			open = append(open, p)
			free[p.hole.Pane] = true
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
		if free[p.hole.Pane] || len(p.against) > 1 {
			continue
		}
		k, seen := nearest[p.hole.Pane]
		if !seen || l.fromMiddle(p) < l.fromMiddle(l.places[k]) {
			nearest[p.hole.Pane] = i
		}
	}
	for i, p := range l.places {
		if k, ok := nearest[p.hole.Pane]; ok && k == i {
			barred = append(barred, p)
		}
	}
	return open, barred
}

// asked reports whether somebody asks about a place by itself.
func (l *placing) asked(p place) bool {
	return p.drawn || slices.Contains(l.opt.Keep, p.hole.ID)
}

func (l *placing) fromMiddle(p place) unit.Length {
	pane, _ := l.arena.Pane(p.hole.Pane)
	d := l.arena.Rink.Wrap(p.hole.Station-pane.From) - pane.Width/2
	return max(d, -d)
}
