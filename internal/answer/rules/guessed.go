package rules

import (
	"slices"
	"strings"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// ground is a number of the survey that findings of some kinds stand on.
type ground struct {
	words string
	path  func(h glass.Hole) string
	kinds []string // none: every kind that concerns a pane
}

// grounds are the numbers whose guess can turn a verdict.
func grounds() []ground {
	at := func(path string) func(glass.Hole) string { return func(glass.Hole) string { return path } }
	return []ground{
		{"the rink's size and markings", at("rink"), []string{"most-per-corner", "stretches"}},
		{"the boards' height", at("boards.height"), []string{"height-range"}},
		{"where zones begin and end", at("zones"), []string{"forbidden-zones"}},
		{"the pane's material", at("glass.material"), []string{"materials", Trade, "trade-distance", "material"}},
		{"the pane's place and width", func(h glass.Hole) string { return "panes[" + h.Pane + "].width" },
			[]string{"in-one-pane", "pane-edge", "pane-corner", "cut-out-share"}},
	}
}

// guessNotes says which guessed numbers the findings rest on; nothing where the survey
// names no guess.
func guessNotes(a arena.Arena, found []Finding) []string {
	var parts []string
	for _, g := range grounds() {
		rests := slices.ContainsFunc(found, func(f Finding) bool { return slices.Contains(g.kinds, f.Kind) })
		guessed := slices.ContainsFunc(a.Working(), func(h glass.Hole) bool { return a.Source(g.path(h)) == arena.Guess })
		if rests && guessed {
			parts = append(parts, g.words)
		}
	}
	if len(parts) == 0 {
		return nil
	}
	return []string{"These numbers are guessed, and the verdict rests on them: " + strings.Join(parts, ", ") + ". Measure them before a hole is cut."}
}
