package starter

import (
	"fmt"
	"slices"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// zones returns what stands along the boards: the usual things, and the gates that a
// sentence names, which stand in place of the usual ice machine's.
func (p Layout) zones(h habits) ([]span, error) {
	out := spans(p.Rink, h, p.Benches)
	if len(p.Wish.Gates) == 0 {
		return out, nil
	}
	out = slices.DeleteFunc(out, func(s span) bool { return s.leaves > 0 })
	for i, g := range p.Wish.Gates {
		s, err := p.gate(g, h)
		if err != nil {
			return nil, err
		}
		s.id = fmt.Sprintf("gate-%d", i+1)
		for _, o := range out {
			if s.from < o.to && o.from < s.to {
				return nil, fmt.Errorf("a gate at %s, from %s to %s, stands in %s (%s to %s); move it beside that",
					g.At.Format(p.Units), s.from.Format(p.Units), s.to.Format(p.Units), o.id, o.from.Format(p.Units), o.to.Format(p.Units))
			}
		}
		out = append(out, s)
	}
	slices.SortFunc(out, func(a, b span) int { return int((a.from - b.from) / unit.Millimetre) })
	return out, nil
}

// gate places one gate, which must lie within one straight or curved piece of boards.
func (p Layout) gate(g Gate, h habits) (span, error) {
	if per := p.Rink.Perimeter(); g.At < 0 || g.At >= per {
		return span{}, fmt.Errorf("a gate at %s: the boards are %s round; write a station from 0", g.At.Format(p.Units), per.Format(p.Units))
	}
	if g.Width == 0 {
		g.Width = h.door
	}
	for _, sec := range sections(p.Rink) {
		if g.At < sec.from || g.At >= sec.to || sec.to-sec.from < g.Width {
			continue
		}
		from := min(max(g.At-g.Width/2, sec.from), sec.to-g.Width) // moved to where the corner begins
		return span{from: from, to: from + g.Width, kind: "gate", leaves: 1, door: "gate"}, nil
	}
	return span{}, fmt.Errorf("a gate of %s has no room at %s; the boards bend there", g.Width.Format(p.Units), g.At.Format(p.Units))
}

// listed turns the lines of a contractor's list into the schedule. Panes that reach
// into each other or go more than once round are told by the list's line.
func listed(list []Listed, g grid, round unit.Length, sys unit.System) ([]pane, error) {
	var out []pane
	end, first := unit.Length(0), unit.Length(0)
	for i, l := range list {
		from := l.from.Or(end)
		if i == 0 {
			first = from
		}
		if over := end - from; over > unit.Millimetre && i > 0 {
			return nil, fmt.Errorf("line %d: pane %s starts at %s, %s before the one above it ends; correct its from, or a width above it",
				l.line, l.fields["id"], from.Format(sys), over.Format(sys))
		}
		end = from + unit.Length(l.count)*l.width
		if over := end - first - round; over > unit.Millimetre {
			return nil, fmt.Errorf("line %d: pane %s ends %s past the whole round of the boards, %s; take panes out above it, correct their widths, or the rink's size",
				l.line, l.fields["id"], over.Format(sys), round.Format(sys))
		}
		for k := range l.count {
			p := pane{from: g.up(from + unit.Length(k)*l.width), width: g.down(l.width), gate: l.fields["gate"], told: true}
			if k == 0 {
				p.text = l.text(i == 0)
			}
			out = append(out, p)
		}
	}
	return out, nil
}

// text writes a line of the list as one of the arena file.
func (l Listed) text(first bool) string {
	text := "  - {"
	for _, name := range ListColumns() {
		v := l.fields[name]
		if v == "" && name == "from" && first {
			v = "0 m"
		}
		if v != "" {
			text += name + ": " + form.Scalar(v) + ", "
		}
	}
	return text + "source: drawing}\n"
}
