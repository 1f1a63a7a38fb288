package wire

import (
	"math"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Pack encodes which lenses to pack for a hole.
func Pack(a arena.Arena, hole string, bags []game.Bag) Object {
	all := bags[len(bags)-1].View
	return Object{"arena", a.Name, "hole", hole, "pack", Each(bags, func(b game.Bag) Object {
		return append(Object{"lenses", b.Lenses, "share_of_all", b.Of(all)}, view(b.View)...)
	})}
}

// AskFor encodes which hole to ask for with some lenses.
func AskFor(a arena.Arena, lenses []string, stands []game.Stand) Object {
	return Object{"arena", a.Name, "lenses", lenses, "holes", Each(stands, func(s game.Stand) Object {
		return append(Object{"hole", s.Hole}, view(s.View)...)
	})}
}

func view(v game.View) Object {
	return Object{"value", v.Value, "goals_share", exists(v.Goals), "seen_share", v.Seen}
}

// exists is not known where a number does not exist.
func exists(x float64) unit.Maybe[float64] {
	if math.IsNaN(x) {
		return unit.Maybe[float64]{}
	}
	return unit.Known(x)
}
