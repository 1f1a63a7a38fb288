package revision

import "strings"

// Clash is a place that both sides changed in different ways.
type Clash struct {
	Line   int    // line in base, from 1
	Base   string // the lines as they were
	Mine   string
	Theirs string
}

// Merge joins two texts that were both made from base. What only one side
// changed is taken from that side; where both changed the same lines in
// different ways, the result has mine and the place is listed as a clash.
// The texts are compared line by line, as [Diff] does; lines next to each other
// count as one place.
func Merge(base, mine, theirs string) (merged string, clashes []Clash) {
	b := strings.SplitAfter(base, "\n")
	m, t := changesOf(base, mine), changesOf(base, theirs)
	var out strings.Builder
	at := 0
	for len(m) > 0 || len(t) > 0 {
		group := nextGroup(&m, &t)
		writeLines(&out, b[at:group.from])
		was := b[group.from:group.to]
		my, their := apply(was, group.from, group.mine), apply(was, group.from, group.theirs)
		switch {
		case len(group.mine) == 0:
			writeLines(&out, their)
		case len(group.theirs) == 0 || same(my, their):
			writeLines(&out, my)
		default:
			writeLines(&out, my)
			clashes = append(clashes, Clash{
				Line: group.from + 1, Base: join(was), Mine: join(my), Theirs: join(their),
			})
		}
		at = group.to
	}
	writeLines(&out, b[at:])
	return out.String(), clashes
}

// A group is a run of base lines in which changes of both sides overlap or touch.
type group struct {
	from, to     int
	mine, theirs []change
}

// nextGroup takes the next group off both lists; one of them is not empty.
func nextGroup(m, t *[]change) group {
	var g group
	if len(*t) == 0 || len(*m) > 0 && (*m)[0].from <= (*t)[0].from {
		g.from, g.to = (*m)[0].from, (*m)[0].to
	} else {
		g.from, g.to = (*t)[0].from, (*t)[0].to
	}
	for g.take(m, &g.mine) || g.take(t, &g.theirs) {
	}
	return g
}

// take moves the first change of a side into the group when it touches the group.
func (g *group) take(side *[]change, into *[]change) bool {
	if len(*side) == 0 || (*side)[0].from > g.to {
		return false
	}
	c := (*side)[0]
	g.to = max(g.to, c.to)
	*into = append(*into, c)
	*side = (*side)[1:]
	return true
}

// apply returns the lines of a group as one side has them.
func apply(was []string, from int, changes []change) []string {
	var out []string
	at := 0
	for _, c := range changes {
		out = append(out, was[at:c.from-from]...)
		out = append(out, c.with...)
		at = c.to - from
	}
	return append(out, was[at:]...)
}

func same(a, b []string) bool { return join(a) == join(b) }

func join(lines []string) string { return strings.Join(lines, "") }

func writeLines(out *strings.Builder, lines []string) {
	for _, l := range lines {
		out.WriteString(l)
	}
}
