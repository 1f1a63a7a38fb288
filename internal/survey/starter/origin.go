package starter

import (
	"fmt"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Origin counts where the numbers of a part of the survey come from.
type Origin struct {
	Part                                     string
	Measured, Drawing, Frames, Guess, Unsaid int
}

// group is numbers of a part, by their paths, and what a guess among them costs.
type group struct {
	part, field string
	paths       []string
	ids         []string // of things that have ids, beside paths
	holes       []string // that a guess concerns, beside paths; "" for none
	costs, cure string
}

// groups are the numbers of a survey, in the order of the file.
func groups(a arena.Arena) []group {
	out := []group{
		{part: "rink", field: "size", paths: []string{"rink.length", "rink.width", "rink.corner-radius", "rink.markings"},
			costs: "every place that is told from a landmark, and every distance on the ice, is off by as much",
			cure:  "measure the ice between the boards, and the lines from the end boards"},
		{part: "boards", field: "height, ledge, setback", paths: present(map[string]bool{"boards.height": true, "boards.ledge": known(a.Boards.Ledge), "boards.setback": known(a.Boards.Setback)},
			"boards.height", "boards.ledge", "boards.setback"),
			costs: "heights above the ice and the blind strip along the near boards are off by as much",
			cure:  "hold a tape to the boards: their top above the ice, its depth, how far the glass stands back"},
		{part: "glass", field: "height, thickness, material", paths: []string{"glass"},
			costs: "lenses, light and pucks are reckoned in a pane that may be another, and a pane that may not be cut may pass",
			cure:  "read the mark in the pane's corner, and take callipers to a free edge"},
	}
	panes := group{part: "panes", field: "width", costs: "a stanchion may stand where a hole is planned", cure: "lay a tape along the boards, stanchion to stanchion"}
	for _, p := range a.Panes {
		panes.add("panes["+p.ID+"].width", p.ID, holesIn(a, p.ID)...)
	}
	cut := group{part: "holes", field: "place and size", costs: "the drawing and every answer for it may miss the hole that is cut", cure: "measure the hole from its pane's edges"}
	for _, h := range a.Holes {
		if h.State == glass.Cut {
			cut.add("holes["+h.ID+"]", h.ID)
		}
	}
	windows := group{part: "low-windows", field: "place and size", costs: "what a camera sees from it is off by as much", cure: "measure the window"}
	for _, w := range a.Windows {
		windows.add("low-windows["+w.ID+"]", w.ID)
	}
	zones := group{part: "zones", field: "from and to", costs: "a hole may stand before a bench or a gate and pass the rules unseen", cure: "pace along the boards and mark where each begins and ends"}
	for _, z := range a.Zones {
		zones.add("zones["+z.ID+"]", z.ID)
	}
	light := group{part: "light", field: "readings", costs: "shutter, stop and ISO are as good as the guess", cure: "walk the ice with a meter"}
	for i := range a.Light.Readings {
		light.add(fmt.Sprintf("light.readings[#%d]", i+1), fmt.Sprintf("#%d", i+1))
	}
	return append(out, panes, cut, windows, zones, light)
}

func (g *group) add(path, id string, holes ...string) {
	g.paths, g.ids = append(g.paths, path), append(g.ids, id)
	g.holes = append(g.holes, "")
	for i, h := range holes {
		if i > 0 {
			g.holes[len(g.holes)-1] += " "
		}
		g.holes[len(g.holes)-1] += h
	}
}

func known[T any](m interface{ Get() (T, bool) }) bool {
	_, ok := m.Get()
	return ok
}

// present returns those of some paths that are there.
func present(there map[string]bool, paths ...string) []string {
	var out []string
	for _, p := range paths {
		if there[p] {
			out = append(out, p)
		}
	}
	return out
}

// holesIn returns the working holes in a pane.
func holesIn(a arena.Arena, pane string) []string {
	var out []string
	for _, h := range a.Working() {
		if h.Pane == pane {
			out = append(out, h.ID)
		}
	}
	return out
}

// origins fills in where the numbers come from, and what the guesses cost. It says
// nothing of a survey that names no source at all.
func (r *Report) origins(a arena.Arena) {
	said := 0
	for _, g := range groups(a) {
		o, guess := Origin{Part: g.part}, Gap{Part: g.part, Field: g.field, Costs: g.costs, Cure: g.cure}
		for i, path := range g.paths {
			switch a.Source(path) {
			case arena.Measured:
				o.Measured++
			case arena.Drawing:
				o.Drawing++
			case arena.Frames:
				o.Frames++
			case arena.Guess:
				o.Guess++
				if g.ids != nil {
					guess.Of = append(guess.Of, g.ids[i])
				}
				if g.ids != nil && g.holes[i] != "" {
					guess.Holes = append(guess.Holes, g.holes[i])
				}
			default:
				o.Unsaid++
			}
		}
		if len(g.paths) > 0 {
			r.Origins = append(r.Origins, o)
			said += len(g.paths) - o.Unsaid
		}
		if o.Guess > 0 {
			r.Guesses = append(r.Guesses, guess)
		}
	}
	if said == 0 {
		r.Origins = nil
	}
}
