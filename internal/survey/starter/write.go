package starter

import (
	"bytes"
	"cmp"
	"fmt"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// writer writes the starter part by part.
type writer struct {
	b      bytes.Buffer
	plan   Layout
	habits habits
	grid   grid
	zones  []span
	panes  []pane
	holes  []hole
}

func (w *writer) put(format string, args ...any) { fmt.Fprintf(&w.b, format, args...) }

// len writes a length on the grid.
func (w *writer) len(l unit.Length) string { return w.grid.text(w.grid.up(l)) }

func (w *writer) all() {
	w.head()
	w.rink()
	w.glass()
	w.put("panes:\n")
	w.b.WriteString(lines(w.panes, w.grid, w.habits))
	w.allHoles()
	w.rest()
}

func (w *writer) head() {
	w.put(`rinkpane: arena 1

# A first survey of one rink. Everything in it is a proposal until somebody has
# measured it: walk round with a tape and correct the numbers. source says where
# numbers come from: measured, drawing or guess. What stands here is guessed, of
# everything that has no source of its own.
#
# Lengths carry their unit: 42 in, 4 1/2 in, 5' 6", 114 mm, 8.5 m. What is not
# measured yet is left empty or left out; it counts as unknown, never as zero.
#   rinkpane survey THIS-FILE   tells what is missing and what that costs
#   rinkpane check THIS-FILE    proves the holes against the rules
name: %s
place: %s
units: %s
source: guess

`, form.Scalar(cmp.Or(w.plan.Name, "My rink")), form.Scalar(cmp.Or(w.plan.Place, "My town")), w.plan.Units)
}

func (w *writer) rink() {
	d := w.plan.Rink.Dimensions()
	if w.plan.Standard != "" {
		w.put("# A standard rink; length, width, corner-radius and markings below it would replace\n# the standard's own.\nrink:\n  standard: %s\n\n", w.plan.Standard)
		return
	}
	w.put("# The ice between the boards. Corners and landmarks (goal-line, circle-bottom,\n# circle-top, blue-line) follow from the markings, measured from the end boards.\nrink:\n")
	if w.plan.Markings != "" {
		w.put("  # markings: %s\n", w.plan.Markings)
	}
	w.put("  length: %s\n  width: %s\n  corner-radius: %s\n", d.Length.Exact(w.plan.Units), d.Width.Exact(w.plan.Units), d.CornerRadius.Exact(w.plan.Units))
	if w.plan.Rink.Marked() {
		w.markings(d.Markings)
		return
	}
	blue := d.Length * blueShare
	marks := []string{"goal-line: 4 m", "blue-line: " + w.grid.text(w.grid.down(blue)/100*100), "blue-line-to: middle",
		"circle-radius: 4.5 m", "spot-from-goal: 6 m", "spot-from-axis: 7 m"}
	if w.plan.Units == unit.Imperial {
		marks = []string{"goal-line: 11 ft", "blue-line: " + w.grid.text(w.grid.down(blue)/footMarks*footMarks), "blue-line-to: far-edge",
			"circle-radius: 15 ft", "spot-from-goal: 20 ft", "spot-from-axis: 22 ft"}
	}
	w.put("  # measure these and take away the # signs:\n  # markings:\n")
	for _, m := range marks {
		w.put("  #   %s\n", m)
	}
	w.put("\n")
}

// markings writes what is known of own markings.
func (w *writer) markings(k rink.Markings) {
	w.put("  markings:\n")
	for _, m := range k.All() {
		if *m.At > 0 {
			w.put("    %s: %s\n", m.Field, m.At.Exact(w.plan.Units))
		}
	}
	if k.BlueLineTo == rink.LineFarEdge {
		w.put("    blue-line-to: far-edge\n")
	}
	w.put("\n")
}

// blueShare is the blue line's distance from the end boards as a share of the
// rink's length, for an example: 22.86 m of 60 m (IIHF), 75 ft of 200 ft.
const blueShare = 0.38

func (w *writer) glass() {
	w.put(`# The boards below the glass: height of their top above the ice, depth of that
# top, and how far the glass stands behind the boards' face.
boards:
  height: %s
  ledge:      # not measured yet
  setback:    # not measured yet

# What every pane is, unless its own line says otherwise. Height is above the
# boards. material: %s.
glass:
  height: %s
  thickness: %s
  material: acrylic

# Panes in station order: stations run along the boards, counter-clockwise seen
# from above, from 0 at the benches' end of the red line, first toward end B. A
# pane starts where the one before it ends, unless it says from; count: so many
# equal panes side by side, whose ids count on. No glass stands before the
# benches, only their doors.
`, w.habits.boards, form.Choices(glass.Names(nil)), w.len(w.habits.glass), w.habits.thickness)
}

func (w *writer) allHoles() {
	w.put(`
# Photo holes. place is {corner, landmark, offset}: a positive offset goes along
# the boards toward centre ice, a negative one back, toward the middle of the end
# boards. station: and a length would do as well. height is the centre's, above
# the ice; size is width x height; state is planned, cut or off.
`)
	if len(w.holes) == 0 {
		w.put(`holes: []
# holes:
#   - id: H1
#     station: %s
#     height: %s
#     size: %s
#     corner-radius: %s
#     rounding: %s
#     cover: {material: acrylic, tether: yes}
`, w.grid.text(w.grid.up(w.plan.Rink.Perimeter()/4)), w.habits.holeHeight, w.habits.holeSize, w.habits.holeCorner, w.habits.holeRounding)
		return
	}
	w.put("holes:\n")
	for i, h := range w.holes {
		if i > 0 {
			w.put("\n")
		}
		w.put("  - id: %s\n    place: {corner: %s, landmark: %s, offset: %s}\n", h.id, h.corner, h.landmark, w.grid.text(h.offset))
		w.put("    height: %s\n    size: %s\n    corner-radius: %s\n    rounding: %s\n    cover: {material: acrylic, tether: yes}\n    state: planned\n",
			w.habits.holeHeight, w.habits.holeSize, w.habits.holeCorner, w.habits.holeRounding)
	}
}

func (w *writer) rest() {
	w.put(`
# Low windows: openings or clear panels in the boards for a camera near the ice.
low-windows: []

# Who needs which boards. kind: bench, penalty-box, scorekeeper, gate, broadcast or
# keep-out. From one station to the other along rising stations.
`)
	if len(w.zones) == 0 {
		w.put("zones: []\n")
	} else {
		w.put("zones:\n")
	}
	for _, z := range w.zones {
		w.put("  - {id: %s, kind: %s, from: %s, to: %s}\n", z.id, z.kind, w.grid.text(w.grid.up(z.from)), w.grid.text(w.grid.down(z.to)))
	}
	if w.plan.Benches == Opposite {
		w.put("\n# What games here are like, for the moments that holes are judged by: officials are\n# 2, 3 or 4, or referees and linesmen each a number; cross-ice: yes is for small games across an end zone.\ngame:\n  benches: opposite\n")
	}
	hz := "50 Hz"
	if w.plan.Units == unit.Imperial {
		hz = "60 Hz"
	}
	w.put(`
# Light on the ice: hold the meter flat at faces' height, note where. x runs from
# centre ice toward end B, y toward the penalty boxes. Nine readings or more.
light:
  mains: %s   # of the country; decides which shutter times flicker
  readings: []
    # - {%s, light: 1000 lx}
`, hz, w.habits.reading)
}
