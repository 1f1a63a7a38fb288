package starter

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// hole is one proposed hole.
type hole struct {
	id       string
	corner   rink.Corner
	landmark rink.Landmark
	offset   int // marks, positive toward centre ice
}

// window is where common practice has holes beside a landmark, and the offset
// that a starter aims at.
type window struct {
	landmark     rink.Landmark
	from, to, at unit.Length // offsets
}

// windows gives each corner a hole no more than 5 ft behind the goal line, and
// those of the box side, away from the benches, one about the top of the circle.
// More can follow: common practice knows three a corner and eight in all.
func windows(c rink.Corner) []window {
	out := []window{{rink.GoalLine, -5 * unit.Foot, 0, -2 * unit.Foot}}
	if c == rink.ABox || c == rink.BBox {
		out = append(out, window{rink.CircleTop, -3 * unit.Foot, 3 * unit.Foot, 0})
	}
	return out
}

// clearEdge is how far a proposed hole's centre stays from its pane's edges,
// where the pane allows it; leastEdge is the least.
const (
	clearEdge = 12 * unit.Inch
	leastEdge = 6 * unit.Inch
)

// proposals finds a place for a hole beside each landmark of each corner: in
// an ordinary pane, away from its edges, then as near the aim as may be.
func proposals(r rink.Rink, g grid, panes []pane, zones []span) []hole {
	var out []hole
	step := 10 // marks: whole centimetres, or whole inches
	if g.sys == unit.Imperial {
		step = inchParts
	}
	for _, c := range rink.Corners() {
		n := 0
		for _, w := range windows(c) {
			best, bestEdge := 1<<30, unit.Length(-1)
			for o := g.up(w.from) / step * step; o <= g.down(w.to); o += step {
				s, err := r.FromLandmark(c, w.landmark, unit.Length(o)*g.mark())
				if err != nil || zoned(r, s, zones) {
					continue
				}
				edge := min(edgeAt(g, panes, s), clearEdge)
				if edge > bestEdge+unit.Millimetre || edge > bestEdge-unit.Millimetre && abs(o-g.down(w.at)) < abs(best-g.down(w.at)) {
					best, bestEdge = o, edge
				}
			}
			if bestEdge < leastEdge {
				continue
			}
			n++
			out = append(out, hole{id: c.String() + "-" + string(rune('0'+n)), corner: c, landmark: w.landmark, offset: best})
		}
	}
	return out
}

// edgeAt returns the distance from a station to the nearer edge of its pane;
// negative where no ordinary pane stands.
func edgeAt(g grid, panes []pane, s unit.Length) unit.Length {
	for _, p := range panes {
		from, to := unit.Length(p.from)*g.mark(), unit.Length(p.from+p.width)*g.mark()
		if s > from && s < to && p.gate == "" {
			return min(s-from, to-s)
		}
	}
	return -1
}

// zoned reports whether a station lies in a zone or within clearEdge of it.
func zoned(r rink.Rink, s unit.Length, zones []span) bool {
	for _, z := range zones {
		if r.Wrap(s-z.from+clearEdge) <= z.to-z.from+2*clearEdge {
			return true
		}
	}
	return false
}

func abs(n int) int { return max(n, -n) }
