package learn

import (
	"slices"
	"strings"

	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/arena"
)

// spot is a landmark as somebody at a hole would name it, and where it lies on the map.
type spot struct {
	Name, Words string
	X, Y        float64 // millimetres of the map
}

// spotGroup is landmarks of a kind.
type spotGroup struct {
	Name  string
	Spots []spot
}

// beholder is where somebody looks from; without a hole nothing is near, far, left or right.
type beholder struct {
	at     geom.Vec2
	stands bool
}

// from returns who looks through a hole of an arena.
func from(a arena.Arena, hole string) beholder {
	h, ok := a.Hole(hole)
	if !ok {
		return beholder{}
	}
	return beholder{a.Rink.Point(h.Station), true}
}

// groups lists an arena's landmarks by kind, in words of who looks.
func groups(a arena.Arena, b beholder) []spotGroup {
	known := resect.Landmarks(a)
	on := chart.Content{Arena: a, Bare: true}.MapFrame(shell.MapWidth)
	out := []spotGroup{{Name: "Goals"}, {Name: "Lines at the boards"}, {Name: "Spots and circles"}, {Name: "Edges of panes"}}
	for _, l := range known {
		s := spot{Name: l.Name, Words: b.words(l, known), X: on.CentreX + on.Scale*l.At.X, Y: on.CentreY - on.Scale*l.At.Y}
		k := kindOf(l.Name)
		out[k].Spots = append(out[k].Spots, s)
	}
	for _, g := range out {
		slices.SortStableFunc(g.Spots, func(x, y spot) int { return strings.Compare(nearness(x.Words), nearness(y.Words)) })
	}
	return out
}

// nearness puts what is near before what is far.
func nearness(words string) string {
	switch {
	case strings.HasPrefix(words, "near"):
		return "a"
	case strings.HasPrefix(words, "far"):
		return "c"
	}
	return "b"
}

// kindOf returns the group of a landmark.
func kindOf(name string) int {
	switch {
	case strings.Contains(name, ":post-"):
		return 0
	case strings.Contains(name, "-line:"):
		return 1
	case strings.HasPrefix(name, "pane:"):
		return 3
	}
	return 2
}

// words names a landmark: "near goal, left post, foot".
func (b beholder) words(l resect.Landmark, known []resect.Landmark) string {
	parts := append(strings.Split(l.Name, ":"), "", "")
	end, what, more := b.end(parts[0]), parts[1], parts[2]
	side := b.side(l, known)
	switch {
	case parts[0] == "pane":
		return "pane " + what + ", its right edge seen from the ice, at the boards' top"
	case parts[0] == "red-line":
		return "red line at the boards, " + side
	case parts[0] == "centre-spot":
		return "centre face-off spot"
	case strings.HasPrefix(what, "post-"):
		return end + " goal, " + side + " post, " + more
	case strings.HasSuffix(what, "-line"):
		return end + " " + strings.Replace(what, "-", " ", 1) + " at the boards, " + side
	case strings.HasPrefix(what, "neutral-"):
		return end + " neutral-zone spot, " + side
	case strings.HasPrefix(what, "spot-"):
		return end + " end, " + side + " face-off spot"
	case more == "bottom":
		return end + " end, " + side + " circle, edge toward the goal"
	}
	return end + " end, " + side + " circle, edge toward centre ice"
}

// end says which end is meant.
func (b beholder) end(name string) string {
	switch {
	case !b.stands:
		return name
	case (b.at.X < 0) == (name == "A"):
		return "near"
	}
	return "far"
}

// side says on which side a landmark lies, of it and the one like it on the other side.
func (b beholder) side(l resect.Landmark, known []resect.Landmark) string {
	own, other := "bench", "box"
	if !strings.Contains(l.Name, own) {
		own, other = other, own
	}
	twin := strings.Replace(l.Name, own, other, 1)
	k := slices.IndexFunc(known, func(o resect.Landmark) bool { return o.Name == twin })
	if !b.stands || k < 0 {
		return own + "-side"
	}
	p, q := l.At.XY().Sub(b.at), known[k].At.XY().Sub(b.at)
	if p.X*q.Y-p.Y*q.X < 0 { // from the one to the other is clockwise, seen from above
		return "left"
	}
	return "right"
}
