package words

import (
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/table"
)

// PackText tells a visitor which lenses to pack for a hole.
func PackText(a arena.Arena, hole string, bags []game.Bag) string {
	all := bags[len(bags)-1]
	t := Bags(all).Of("", bags, a.Units)
	return fmt.Sprintf("Lenses to pack for %s at %s\n\n%s\n%s", hole, a.Name, t.Text(), table.Wrap(t.Keys(), ""))
}

// Bags are the columns of bags of lenses beside the bag that holds all.
func Bags(all game.Bag) table.Fields[game.Bag] {
	return table.Fields[game.Bag]{
		left("pack", "lenses", func(b game.Bag) string { return say.Names(b.Lenses) }),
		viewed("worth", "value", func(b game.Bag) float64 { return b.Value }),
		explained(viewed("of all", "share_of_all", func(b game.Bag) float64 { return b.Of(all.View) }), "the worth beside that of every lens used at this rink"),
		explained(viewed("goals", "goals_share", func(b game.Bag) float64 { return b.Goals }), "the goals of whom you follow that face the hole"),
		explained(viewed("seen", "seen_share", func(b game.Bag) float64 { return b.Seen }), "their news that is seen at all"),
	}
}

// AskText tells a visitor which hole to ask for with some lenses.
func AskText(a arena.Arena, lenses []string, stands []game.Stand) string {
	t := Stands(a).Of("", stands, a.Units)
	return fmt.Sprintf("Holes to ask for at %s with %s, the best first\n\n%s\n%s", a.Name, strings.Join(lenses, ", "), t.Text(), table.Wrap(t.Keys(), ""))
}

// Stands are the columns of the holes that a visitor may ask for.
func Stands(a arena.Arena) table.Fields[game.Stand] {
	return table.Fields[game.Stand]{
		left("hole", "hole", func(s game.Stand) string { return s.Hole }),
		inUnits("place", "place", false, func(s game.Stand, sys unit.System) table.Cell {
			h, _ := a.Hole(s.Hole)
			return table.Words(a.PlaceOf(h.Station).Say(sys))
		}),
		explained(viewed("worth", "value", func(s game.Stand) float64 { return s.Value }), "the mean score of the moments of whom you follow, by their news"),
		explained(viewed("goals", "goals_share", func(s game.Stand) float64 { return s.Goals }), "their goals that face the hole"),
		explained(viewed("seen", "seen_share", func(s game.Stand) float64 { return s.Seen }), "their news that is seen at all"),
	}
}

// viewed is a column of shares; one that does not exist is "-".
func viewed[T any](head, name string, of func(T) float64) table.Field[T] {
	return inUnits(head, name, true, func(row T, _ unit.System) table.Cell {
		if math.IsNaN(of(row)) {
			return table.None()
		}
		return table.Number(Percent(of(row)), of(row))
	})
}
