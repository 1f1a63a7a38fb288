package starter

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// pane is one line of the schedule, in marks of the grid.
type pane struct {
	id          string
	from, width int  // marks
	first       bool // of its stretch: says from
	high        bool
	curved      bool
	gate        string
	title       string // of the comment above it; "" for none
	told        bool   // by a list, with text as its line; "" within a row
	text        string
}

// grid is the scale that lengths are written on: sixteenths of an inch, or
// millimetres.
type grid struct{ sys unit.System }

const (
	inchParts = 16 // marks to the inch
	footMarks = 12 * inchParts
)

func (g grid) mark() unit.Length {
	if g.sys == unit.Imperial {
		return unit.Inch / inchParts
	}
	return unit.Millimetre
}

// slack lets a length that is a mark but for rounding count as that mark.
const slack = 1e-6

func (g grid) up(l unit.Length) int   { return int(math.Ceil(float64(l/g.mark()) - slack)) }
func (g grid) down(l unit.Length) int { return int(math.Floor(float64(l/g.mark()) + slack)) }

// text writes n marks: "115 ft 11 13/16 in", "35.353 m", "900 mm".
func (g grid) text(n int) string { return (unit.Length(n) * g.mark()).Tape(g.sys) }

// schedule lays panes of a nominal width on every stretch that has glass.
func schedule(r rink.Rink, g grid, h habits, all []stretch, nominal func(stretch) unit.Length) []pane {
	d := r.Dimensions()
	highFrom := d.Length/2 - d.Markings.GoalLine - h.highTo // |x| from which the glass is high
	if !r.Marked() {
		highFrom = d.Length/2 - d.CornerRadius
	}
	var out []pane
	title := ""
	for _, s := range all {
		if s.open {
			continue
		}
		at := g.up(s.from)
		for i, w := range widths(at, g.down(s.to), g.down(nominal(s)), g.up(leastPane), s.leaves) {
			p := pane{from: at, width: w, first: i == 0, curved: s.curved, gate: s.gate}
			middle := r.Point(unit.Length(float64(at)+float64(w)/2) * g.mark())
			p.high = math.Abs(middle.X) > highFrom.Metres()
			if s.title != title {
				p.title, title = s.title, s.title
			}
			out = append(out, p)
			at += w
		}
	}
	digits := max(2, len(strconv.Itoa(len(out))))
	for i := range out {
		out[i].id = fmt.Sprintf("P%0*d", digits, i+1)
	}
	return out
}

// leastPane is the narrowest pane laid; a shorter piece of boards counts as a
// [post], and so do two of them that meet at the red line.
const leastPane = 70 * unit.Millimetre

// widths shares a stretch out, in marks; one shorter than least gets none. A last pane under half the nominal
// width shares with the one before it.
func widths(from, to, nominal, least, leaves int) []int {
	length := to - from
	if length < least {
		return nil
	}
	if leaves > 0 {
		out := make([]int, leaves)
		for i := range out {
			out[i] = length*(i+1)/leaves - length*i/leaves
		}
		return out
	}
	var out []int
	for length > nominal {
		out = append(out, nominal)
		length -= nominal
	}
	if n := len(out); n > 0 && 2*length < nominal {
		both := nominal + length
		out[n-1] = both - both/2
		return append(out, both/2)
	}
	return append(out, length)
}

// lines writes the schedule, equal panes side by side in one line.
func lines(panes []pane, g grid, h habits) string {
	var b strings.Builder
	for i := 0; i < len(panes); {
		n := 1
		if panes[i].told {
			b.WriteString(panes[i].text)
			i++
			continue
		}
		for i+n < len(panes) && panes[i+n].continues(panes[i]) {
			n++
		}
		b.WriteString(panes[i].line(n, g, h))
		i += n
	}
	return b.String()
}

// continues reports whether a pane is one more of the row that another begins.
func (p pane) continues(row pane) bool {
	return !p.first && p.title == "" && p.width == row.width && p.high == row.high && p.curved == row.curved && p.gate == row.gate
}

// line writes n equal panes as a line of the arena file.
func (p pane) line(n int, g grid, h habits) string {
	var b strings.Builder
	if p.title != "" {
		b.WriteString("  # " + p.title + "\n")
	}
	b.WriteString("  - {id: " + p.id)
	if p.first {
		b.WriteString(", from: " + g.text(p.from))
	}
	b.WriteString(", width: " + g.text(p.width))
	if n > 1 {
		fmt.Fprintf(&b, ", count: %d", n)
	}
	if p.high {
		b.WriteString(", height: " + g.text(g.down(h.highGlass)))
	}
	if p.curved {
		b.WriteString(", curved: yes")
	}
	if p.gate != "" {
		b.WriteString(", gate: " + p.gate)
	}
	return b.String() + "}\n"
}
