package starter

import (
	"slices"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Doubt is a number that can be read but that hardly any rink has: likely a slip of
// the pen.
type Doubt struct {
	Part string       // as in [Gap]
	Of   string       // id of what it is about; "" for the arena's own
	Says say.Sentence // the value, and what is odd about it
	Cure say.Sentence
}

// usual is how long the stretches of boards of a kind commonly are (own judgement,
// wide; the books ask for benches of 24 ft and more).
var usualZones = map[string][2]unit.Length{
	"bench":       {4 * unit.Metre, 20 * unit.Metre},
	"penalty-box": {1.2 * unit.Metre, 9 * unit.Metre},
	"scorekeeper": {1.2 * unit.Metre, 12 * unit.Metre},
	"gate":        {600 * unit.Millimetre, 8 * unit.Metre},
	"broadcast":   {300 * unit.Millimetre, 20 * unit.Metre},
}

// What boards, glass and light commonly measure (own judgement round the books'
// figures: boards 40 to 48 in, side panes of 12 to 16 mm, floodlit ice of 500 to 2000 lx).
var (
	usualBoards = [2]unit.Length{900 * unit.Millimetre, 1300 * unit.Millimetre}
	usualLedge  = [2]unit.Length{0, 400 * unit.Millimetre}
	usualThick  = [2]unit.Length{8 * unit.Millimetre, 25 * unit.Millimetre}
)

// oddLight is how many times brighter or darker than the middle one a reading is odd.
const oddLight = 4

// doubts finds what was likely mistyped, in the order of the file.
func doubts(a arena.Arena) []Doubt {
	out := append(boardDoubts(a), zoneDoubts(a)...)
	out = append(out, sideDoubts(a)...)
	return append(out, lightDoubts(a)...)
}

func outside(l unit.Length, usual [2]unit.Length) bool { return l < usual[0] || l > usual[1] }

func boardDoubts(a arena.Arena) []Doubt {
	var out []Doubt
	ask := func(part, of, name string, l unit.Length, usual [2]unit.Length) {
		if outside(l, usual) {
			out = append(out, Doubt{part, of, say.Make("%s %s; %s to %s is usual", name, say.Fine(l), say.Fine(usual[0]), say.Fine(usual[1])),
				say.Make("measure it again, and look at its unit")})
		}
	}
	ask("boards", "", "the top of the boards above the ice,", a.Boards.Height, usualBoards)
	if l, ok := a.Boards.Ledge.Get(); ok {
		ask("boards", "", "the boards' top, front to back,", l, usualLedge)
	}
	for _, p := range a.Panes {
		if t, ok := p.Thickness.Get(); ok {
			ask("panes", p.ID, "a thickness of", t, usualThick)
		}
	}
	return merged(out)
}

// merged keeps the first of several panes of which the same is said.
func merged(list []Doubt) []Doubt {
	return slices.CompactFunc(list, func(a, b Doubt) bool {
		return a.Part == b.Part && a.Says.In(unit.Metric) == b.Says.In(unit.Metric)
	})
}

// length is how much of the boards a zone takes.
func length(a arena.Arena, z arena.Zone) unit.Length { return a.Rink.Wrap(z.To - z.From) }

func zoneDoubts(a arena.Arena) []Doubt {
	var out []Doubt
	for i, z := range a.Zones {
		l := length(a, z)
		if usual, is := usualZones[z.Kind]; is && outside(l, usual) {
			cure := say.Make("exchange from and to when it runs the other way, or correct one of them")
			if meant := l * 12; l < usual[0] && !outside(meant, usual) {
				cure = say.Make("was %s meant, and feet written as inches? Correct from or to", meant)
			}
			out = append(out, Doubt{"zones", z.ID, say.Make("a %s only %s long; %s to %s is usual", z.Kind, l, usual[0], usual[1]), cure})
			if l > usual[1] {
				out[len(out)-1].Says = say.Make("a %s %s long; %s to %s is usual", z.Kind, l, usual[0], usual[1])
			}
		}
		for _, o := range a.Zones[:i] {
			if over := overlap(a, o, z); over > post {
				out = append(out, Doubt{"zones", z.ID, say.Make("it reaches %s into %s (%s)", over, o.ID, o.Kind),
					say.Make("let one end where the other begins, or take one out; rules count a hole there twice")})
			}
		}
	}
	return out
}

// overlap is how much boards two zones share.
func overlap(a arena.Arena, p, q arena.Zone) unit.Length {
	shared := unit.Length(0)
	for _, r := range [2][2]arena.Zone{{p, q}, {q, p}} {
		if ahead := a.Rink.Wrap(r[1].From - r[0].From); ahead < length(a, r[0]) {
			shared = max(shared, min(length(a, r[0])-ahead, length(a, r[1])))
		}
	}
	return shared
}

// sideDoubts finds benches and boxes on the sides whose names say otherwise: play is
// told with the benches at y < 0, and stations begin there.
func sideDoubts(a arena.Arena) []Doubt {
	var out []Doubt
	sides := map[string]map[bool][]string{"bench": {}, "penalty-box": {}}
	for _, z := range a.Zones {
		if sides[z.Kind] != nil {
			across := a.Rink.Point(a.Rink.Wrap(z.From+length(a, z)/2)).Y > 0
			sides[z.Kind][across] = append(sides[z.Kind][across], z.ID)
		}
	}
	benches := sides["bench"]
	if len(benches[true]) > 0 && len(benches[false]) == 0 {
		out = append(out, Doubt{"zones", benches[true][0], say.Make("the benches stand on the box side (y > 0), where the frame has the penalty boxes"),
			say.Make("count stations from the benches' end of the red line; the sampler's benches follow the zones")})
	}
	if boxes := sides["penalty-box"]; len(boxes[false]) > 0 && len(boxes[true]) == 0 && len(benches[true]) == 0 {
		out = append(out, Doubt{"zones", boxes[false][0], say.Make("the penalty boxes stand on the bench side (y < 0)"),
			say.Make("check from which end of the red line the stations were counted")})
	}
	return out
}

func lightDoubts(a arena.Arena) []Doubt {
	var lux []float64
	for _, r := range a.Light.Readings {
		lux = append(lux, float64(r.Lux))
	}
	slices.Sort(lux)
	var out []Doubt
	for i, r := range a.Light.Readings {
		middle := lux[len(lux)/2]
		if v := float64(r.Lux); len(lux) >= 3 && (v > oddLight*middle || v < middle/oddLight) {
			out = append(out, Doubt{"light", say.Make("#%d", i+1).In(a.Units), say.Make("a reading of %.0f lx; the middle one is %.0f lx", v, middle),
				say.Make("look whether foot-candles (fc) were written as lux, or a digit is missing")})
		}
	}
	return out
}
