package starter

import (
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// habits is where a rink of one system commonly puts things, and how large. The
// boards and the glass follow the rule books where they say (IIHF 2023/24,
// Rules 1.2 and 1.3; North American books, rink section); the rest, benches and
// boxes included, is an assumption to be measured.
type habits struct {
	benchFrom, benchLength   unit.Length // along the boards from the red line
	boxLength, timekeeper    unit.Length // each penalty box; the timekeeper's bench between them
	door, iceGate            unit.Length
	highGlass, glass         unit.Length
	boards, thickness        string
	holeHeight, holeSize     string // the height is the centre's, above the ice
	holeCorner, holeRounding string
	highTo                   unit.Length // the high glass ends this far from the goal line toward centre ice
	reading                  string      // an example of a light reading
}

func habitsOf(sys unit.System) habits {
	if sys == unit.Imperial {
		return habits{
			benchFrom: 2 * unit.Foot, benchLength: 26 * unit.Foot,
			boxLength: 8 * unit.Foot, timekeeper: 10 * unit.Foot, door: 3 * unit.Foot, iceGate: 10 * unit.Foot,
			boards: "42 in", highGlass: 8 * unit.Foot, glass: 6 * unit.Foot, thickness: "5/8 in",
			holeHeight: "58 in", holeSize: "5.5 in x 4.5 in", holeCorner: "1/2 in", holeRounding: "1/8 in",
			highTo: 13 * unit.Foot, reading: "x: 20 ft, y: -10 ft, height: 4 ft",
		}
	}
	return habits{
		benchFrom: 1 * unit.Metre, benchLength: 10 * unit.Metre,
		boxLength: 4 * unit.Metre, timekeeper: 5.5 * unit.Metre, door: 0.9 * unit.Metre, iceGate: 3.2 * unit.Metre,
		boards: "1.07 m", highGlass: 2.4 * unit.Metre, glass: 1.8 * unit.Metre, thickness: "15 mm",
		holeHeight: "1.47 m", holeSize: "140 mm x 114 mm", holeCorner: "12 mm", holeRounding: "3 mm",
		highTo: 4 * unit.Metre, reading: "x: 6 m, y: -3 m, height: 1.2 m",
	}
}

// stretch is a piece of boards with one kind of glass, or with none.
type stretch struct {
	from, to unit.Length // exact stations
	title    string      // for the comment above its panes
	curved   bool
	gate     string // of every pane on it
	leaves   int    // this many equal panes, whatever the nominal width; 0: as many as fit
	open     bool   // no glass
}

// span is a named piece of boards, before the cutting.
type span struct {
	from, to unit.Length
	id, kind string
	// What stands on it: a door at each end with open boards between, a door at
	// one end, glass as elsewhere, or a gate of two leaves.
	doorFirst, doorLast, open bool
	leaves                    int    // of a gate: so many panes; 0: no gate
	door                      string // what the gate is for
}

// spans places benches, boxes, the timekeeper and the ice machine's gate on a
// rink, in station order. On a short rink they shrink; what has no room is
// left out.
func spans(r rink.Rink, h habits, benches Benches) []span {
	d := r.Dimensions()
	per := r.Perimeter()
	straight := d.Length/2 - d.CornerRadius // of a side, from the red line
	if straight < 3*h.door {
		return nil
	}
	bench := min(h.benchLength, straight-2*h.benchFrom)
	side := per / 2 // the box-side end of the red line
	keeper := min(h.timekeeper/2, straight/4)
	box := min(h.boxLength, straight/3)
	out := []span{
		{from: h.benchFrom, to: h.benchFrom + bench, id: "home-bench", kind: "bench", doorFirst: true, doorLast: true, open: true},
		{from: side - keeper - box, to: side - keeper, id: "home-box", kind: "penalty-box", doorFirst: true},
		{from: side - keeper, to: side + keeper, id: "timekeeper", kind: "scorekeeper"},
		{from: side + keeper, to: side + keeper + box, id: "guest-box", kind: "penalty-box", doorLast: true},
	}
	arc := unit.Length(math.Pi/2) * d.CornerRadius
	if end := d.Width - 2*d.CornerRadius; end >= h.iceGate {
		middle := per/2 + straight + arc + end/2 // the middle of end A's boards
		out = append(out, span{from: middle - h.iceGate/2, to: middle + h.iceGate/2, id: "ice-machine", kind: "gate", leaves: 2, door: "ice machine"})
	}
	if benches == Opposite {
		guest := min(bench, straight-keeper-box-h.benchFrom)
		if guest > 2*h.door {
			from := side + keeper + box
			out = slices.Insert(out, 4, span{from: from, to: from + guest, id: "guest-bench", kind: "bench", doorFirst: true, doorLast: true, open: true})
		}
		return out
	}
	if bench > 2*h.door {
		last := per - h.benchFrom
		return append(out, span{from: last - bench, to: last, id: "guest-bench", kind: "bench", doorFirst: true, doorLast: true, open: true})
	}
	return out[1:]
}

// sections are the straight and curved pieces of boards in station order.
func sections(r rink.Rink) []stretch {
	d := r.Dimensions()
	straight, end := d.Length/2-d.CornerRadius, d.Width-2*d.CornerRadius
	arc := unit.Length(math.Pi/2) * d.CornerRadius
	var out []stretch
	at := unit.Length(0)
	add := func(l unit.Length, curved bool, title string) {
		if l > 0 {
			out = append(out, stretch{from: at, to: at + l, title: title, curved: curved})
			at += l
		}
	}
	add(straight, false, "bench side, from the red line toward end B")
	add(arc, true, "corner B-bench")
	add(end, false, "end B")
	add(arc, true, "corner B-box")
	add(2*straight, false, "box side, from end B to end A")
	add(arc, true, "corner A-box")
	add(end, false, "end A")
	add(arc, true, "corner A-bench")
	add(straight, false, "bench side, from end A to the red line")
	return out
}

// stretches cuts the sections where something begins or ends.
func stretches(r rink.Rink, h habits, sp []span) []stretch {
	var out []stretch
	for _, sec := range sections(r) {
		at := sec.from
		put := func(to unit.Length, gate string, leaves int, open bool) {
			if to > at {
				s := sec
				s.from, s.to, s.gate, s.leaves, s.open = at, to, gate, leaves, open
				out = append(out, s)
				at = to
			}
		}
		for _, p := range sp {
			if p.from < sec.from || p.from >= sec.to {
				continue
			}
			put(p.from, "", 0, false)
			if p.leaves > 0 {
				put(p.to, p.door, p.leaves, false)
				continue
			}
			if p.doorFirst {
				put(p.from+h.door, p.kind, 1, false)
			}
			if p.doorLast {
				put(p.to-h.door, "", 0, p.open)
				put(p.to, p.kind, 1, false)
				continue
			}
			put(p.to, "", 0, p.open)
		}
		put(sec.to, "", 0, false)
	}
	return out
}
