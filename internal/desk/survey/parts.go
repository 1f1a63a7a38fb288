package survey

import (
	"strconv"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// Around is what the questions' options come from besides the document.
type Around struct {
	Arena  arena.Arena
	Lenses []Option // of the kit
	Rules  []string // ids of the rules in force
	Kits   []Option // that the desk keeps
	Sets   []Option // rule sets, the desk's own and shipped ones
}

// Parts returns every part of an arena's document, in its order.
func Parts(o Around) []Part {
	return []Part{
		hall(), boards(), allGlass(), panes(), holes(), windows(), zones(), mains(), readings(), game(),
		dispensations(o), lenses(o), outfit(o),
	}
}

// PartOf returns the part of a name.
func PartOf(o Around, name string) (Part, bool) {
	for _, p := range Parts(o) {
		if p.Name == name {
			return p, true
		}
	}
	return Part{}, false
}

// lengthHint shows how lengths are written.
const lengthHint = "such as 42 in, 4 1/2 in, 5' 6\", 1.07 m or 114 mm"

func line(name, label, hint string, needed bool) Question {
	return Question{Name: name, Label: label, Hint: hint, Kind: Line, Needed: needed}
}

func choice(name, label, hint string, needed bool, options ...Option) Question {
	if !needed {
		options = append([]Option{{"", "not said"}}, options...)
	}
	return Question{Name: name, Label: label, Hint: hint, Kind: Choice, Options: options, Needed: needed}
}

func yesNo(name, label, hint string) Question {
	return choice(name, label, hint, false, Option{"yes", "yes"}, Option{"no", "no"})
}

func alike(list ...string) []Option {
	out := make([]Option, len(list))
	for i, w := range list {
		out[i] = Option{w, w}
	}
	return out
}

// Materials are the materials to choose from, and none of them.
func Materials() []Option {
	out := []Option{{"", "not said"}}
	for _, m := range glass.Materials() {
		out = append(out, Option{string(m), string(m)})
	}
	return out
}

func material(name, hint string) Question {
	return choice(name, "Material", hint, false, Materials()[1:]...)
}

// source asks where the numbers of a group come from.
func source() Question {
	return choice("source", "Its numbers are", "guesses are told wherever they matter", false,
		Option{string(arena.Measured), "measured"}, Option{string(arena.Drawing), "from a drawing, a list or a book"}, Option{string(arena.Frames), "from frames of a game"}, Option{string(arena.Guess), "a guess"})
}

// place asks for a place on the boards.
func place(name, label string, needed bool) Question {
	return Question{
		Name: name, Label: label, Kind: Where, Options: origins(), Needed: needed,
		Hint: "a distance, " + lengthHint + "; from a landmark, plus is toward centre ice, minus back toward the middle of the end boards",
	}
}

// origins are what a place can be measured from.
func origins() []Option {
	out := []Option{{alongBoards, "station 0, the benches' end of the red line"}}
	for _, c := range rink.Corners() {
		for _, l := range rink.Landmarks() {
			name := c.String() + " " + string(l)
			out = append(out, Option{name, name})
		}
	}
	return out
}

func hall() Part {
	return Part{
		Name: "rink", Title: "The rink", Lead: "Its name, its units and the size of the ice.",
		Questions: []Question{
			line("name", "Name", "", true),
			line("place", "Town or building", "", false),
			choice("units", "Answers are printed in", "each visitor may choose otherwise", true, alike("imperial", "metric")...),
			choice("rink.standard", "Size of the ice", "leave it unsaid for a rink of its own size", false,
				Option{"north-american", "North American: 200 by 85 ft, corners of 28 ft"}, Option{"international", "international: 60 by 30 m, corners of 8.5 m"}),
			line("rink.length", "Length", "only where it differs from the standard; "+lengthHint, false),
			line("rink.width", "Width", "only where it differs", false),
			line("rink.corner-radius", "Corner radius", "only where it differs", false),
			inGroup("rink.", source()),
			line("note", "Note", "", false),
		},
	}
}

// inGroup asks the same of a group of the topmost fields.
func inGroup(group string, q Question) Question {
	q.Name = group + q.Name
	return q
}

func boards() Part {
	return Part{
		Name: "boards", Title: "The boards", Lead: "They hide the ice nearest to a hole; how much, their height and depth decide.", Path: "boards",
		Questions: []Question{
			line("height", "Top above the ice", lengthHint, true),
			line("ledge", "Depth of the top", "front to back; empty: not measured", false),
			line("setback", "Glass stands back by", "from the boards' rink face; empty: not measured", false),
			line("floor", "Floor behind the boards", "above the ice, below it with a minus; empty: not measured", false),
			source(),
		},
	}
}

func allGlass() Part {
	return Part{
		Name: "glass", Title: "All the glass", Lead: "What every pane is, unless its own line says otherwise.", Path: "glass",
		Questions: []Question{
			line("height", "Height above the boards", lengthHint, false),
			line("thickness", "Thickness", "with callipers at a free edge; empty: not measured", false),
			material("material", glass.OrderedMade()),
			source(),
		},
	}
}

func mains() Part {
	return Part{
		Name: "mains", Title: "The lamps", Lead: "Lamps on the mains flicker at twice its frequency.", Path: "light",
		Questions: []Question{choice("mains", "Mains", "", false, Option{"50 Hz", "50 Hz"}, Option{"60 Hz", "60 Hz"})},
	}
}

func game() Part {
	return Part{
		Name: "game", Title: "The games", Lead: "What games here are like: the moments by which holes are chosen and compared follow it.", Path: "game",
		Questions: []Question{
			choice("officials", "Officials on the ice", "two referees and two linesmen where nobody says", false,
				Option{"4", "four: two referees, two linesmen"}, Option{"3", "three: one referee, two linesmen"}, Option{"2", "two: one referee, one linesman"}),
			choice("referees", "Referees among them", "where they are not as above, as three referees and a linesman; four officials at most", false, numbers(0, 4)...),
			choice("linesmen", "Linesmen among them", "without any, a referee drops the puck", false, numbers(0, 4)...),
			choice("benches", "Players' benches", "said, the moments' benches stand in the zones whose names begin with home and guest", false,
				Option{"one side", "both on the bench side"}, Option{"opposite", "on opposite sides"}),
			choice("home-defends", "End that the home team defends first", "teams change ends after each period; a game may say otherwise", false,
				Option{"A", "end A"}, Option{"B", "end B"}),
			yesNo("cross-ice", "Small games across the ice", "nets at the side boards of an end zone, as children play"),
		},
	}
}

// numbers are the options from one whole number to another.
func numbers(from, to int) []Option {
	var out []Option
	for n := from; n <= to; n++ {
		out = append(out, Option{strconv.Itoa(n), strconv.Itoa(n)})
	}
	return out
}

func lenses(o Around) Part {
	return Part{
		Name: "lenses", Title: "The lenses", Lead: "Those that photographers bring to this rink. None ticked: every lens of the kit.",
		Questions: []Question{{Name: "lenses", Label: "Lenses in use", Kind: Ticks, Options: o.Lenses}},
	}
}

func outfit(o Around) Part {
	return Part{
		Name: "outfit", Title: "Kit and rules", Lead: "What this rink is planned with on this desk: from the page of kits and rules, or as the desk was started.",
		Questions: []Question{
			choice("kit", "Kit", "not said: the program's", false, o.Kits...),
			{Name: "rules", Label: "Rule sets in force", Kind: Ticks, Options: o.Sets, Hint: "none ticked: those that the desk was started with"},
		},
	}
}
