package survey

import "example.org/rinkpane/internal/survey/arena"

// An id's form, as people read it.
const idHint = "letters, digits, dots and dashes; no other of its kind has it"

func panes() Part {
	return Part{
		Name: "panes", Title: "The panes", Lead: "In station order. A pane without a start begins where the one before it ends; one that is changed moves those beside it along.",
		Path: "panes", Item: "pane", Columns: []string{"id", "count", "from", "width", "height", "thickness", "material", "curved", "gate"},
		Questions: []Question{
			line("id", "Name", idHint, true),
			line("width", "Width", "along the boards, "+lengthHint, true),
			line("count", "How many", "equal panes side by side, whose names count on: 12 from P007 are P007 to P018; empty: one", false),
			place("from", "Starts at", false),
			line("height", "Height above the boards", "empty: as all the glass", false),
			line("thickness", "Thickness", "empty: as all the glass", false),
			material("material", "not said: as all the glass"),
			yesNo("curved", "Bent to the corner", ""),
			line("gate", "Gate", "what the door is for; empty for a pane that is no door", false),
			source(),
		},
	}
}

func holes() Part {
	return Part{
		Name: "holes", Title: "The holes", Lead: "Openings for lenses, told from the rink's side.",
		Path: "holes", Item: "hole", Columns: []string{"id", "place", "height", "size", "state"},
		Questions: []Question{
			line("id", "Name", idHint, true),
			place("place", "Centre along the boards", true),
			line("height", "Centre above the ice", lengthHint, true),
			line("size", "Size", "width x height, such as 5.5 in x 4.5 in", true),
			cornerRadius(), rounding(), cover("in whenever nobody works the hole"),
			choice("state", "State", "a hole turned off is kept in the file and counted nowhere", false, alike("planned", "cut", "off")...),
			line("note", "Note", "", false),
			source(),
		},
	}
}

func cornerRadius() Question {
	return line("corner-radius", "Corner radius", "empty: not measured", false)
}

func rounding() Question {
	return line("rounding", "Edges rounded by", "radius on both faces; empty: not measured", false)
}

func cover(hint string) Question {
	return Question{Name: "cover", Label: "Cover", Kind: Cover, Hint: hint, Options: []Option{{"", "not said"}, {"none", "none"}, {"yes", "yes"}}}
}

func windows() Part {
	return Part{
		Name: "windows", Title: "The low windows", Lead: "Openings and clear panels in the boards, for a camera near the ice.",
		Path: "low-windows", Item: "low window", Columns: []string{"id", "kind", "place", "height", "size", "printed"},
		Questions: []Question{
			line("id", "Name", idHint, true),
			choice("kind", "Kind", "", true, Option{"opening", "an opening"}, Option{"panel", "a clear panel"}),
			place("place", "Centre along the boards", true),
			line("height", "Centre above the ice", lengthHint, true),
			line("size", "Size", "width x height, such as 16 in x 12 in", true),
			material("material", "of a panel"),
			line("thickness", "Thickness", "of a panel; empty: not measured", false),
			cornerRadius(), rounding(), cover("of an opening; in whenever nobody works the window"),
			line("nearest", "Nearest play", "that the window is for: its clear patch lets a lens tilt from the puck to a face there; empty: 4 m", false),
			yesNo("printed", "Printed or coated", "a film that the lens needs a clear patch in"),
			line("note", "Note", "", false),
			source(),
		},
	}
}

func zones() Part {
	return Part{
		Name: "zones", Title: "The zones", Lead: "Stretches of boards with a use; rules keep holes away from them.",
		Path: "zones", Item: "zone", Columns: []string{"id", "kind", "from", "to", "note"},
		Questions: []Question{
			line("id", "Name", idHint, true),
			choice("kind", "Use", "", true, alike(arena.ZoneKinds()...)...),
			place("from", "Starts at", true),
			place("to", "Ends at", true),
			line("note", "Note", "", false),
			source(),
		},
	}
}

func readings() Part {
	return Part{
		Name: "light", Title: "The light readings", Lead: "Lux on the ice, each with its place: x from centre ice toward end B, y toward the penalty boxes.",
		Path: "light.readings", Item: "reading", Columns: []string{"x", "y", "light", "height"},
		Questions: []Question{
			line("x", "Along the rink (x)", "minus is toward end A; such as -61 ft or 18.6 m", true),
			line("y", "Across (y)", "minus is toward the benches", true),
			line("light", "Light", "such as 1200 lx, 1.2 klx or 110 fc", true),
			line("height", "Meter above the ice", "empty: on the ice", false),
			choice("facing", "Meter looked", "faces need the light of an upright meter", false, Option{"", "not said: up"}, Option{"up", "up"},
				Option{"bench", "upright, to the benches"}, Option{"box", "upright, to the penalty boxes"}, Option{"A", "upright, to end A"}, Option{"B", "upright, to end B"}),
			source(),
		},
	}
}

func dispensations(o Around) Part {
	var ids []string
	for _, h := range o.Arena.Holes {
		ids = append(ids, h.ID)
	}
	rule := line("rule", "Rule", "as the findings name it", true)
	if len(o.Rules) > 0 {
		rule = choice("rule", "Rule", "", true, alike(o.Rules...)...)
	}
	return Part{
		Name: "dispensations", Title: "The dispensations", Lead: "Who allowed what a rule forbids, with the paper that says so.",
		Path: "dispensations", Item: "dispensation", Columns: []string{"rule", "holes", "by", "reference", "date", "until"},
		Questions: []Question{
			rule,
			{Name: "holes", Label: "For these holes", Kind: Ticks, Options: alike(ids...), Hint: "none ticked: for every hole"},
			line("by", "Allowed by", "", true),
			line("reference", "Paper", "its number or title", true),
			line("date", "Date", "such as 2026-01-31", true),
			line("until", "Until", "its last day; empty when it does not end", false),
		},
	}
}
