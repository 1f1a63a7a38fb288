package picture

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// Opening names a hole or low window for people: "hole B1", "low window LW1".
func Opening(a arena.Arena, id string) string {
	if _, ok := a.Hole(id); ok {
		return "hole " + id
	}
	return "low window " + id
}

func firstHole(a arena.Arena) string {
	if all := a.Openings(); len(all) > 0 {
		return all[0]
	}
	return ""
}

// usualLens is what most pictures of a game are taken with, when the arena
// names no lenses.
const usualLens = "70-200"

// lensOf returns the lens of an id; without one the usual, or the first in use.
func lensOf(k kit.Kit, a arena.Arena, id string) (kit.Lens, error) {
	if id != "" {
		if l, ok := k.Lens(id); ok {
			return l, nil
		}
		return kit.Lens{}, fmt.Errorf("no such lens in the kit; choose one of those listed")
	}
	for _, want := range append([]string{usualLens}, a.Lenses...) {
		if l, ok := k.Lens(want); ok {
			return l, nil
		}
	}
	if len(k.Lenses) == 0 {
		return kit.Lens{}, fmt.Errorf("the kit has no lens")
	}
	return k.Lenses[0], nil
}

func bodyOf(k kit.Kit, id string) (kit.Body, error) {
	if id != "" {
		if b, ok := k.Body(id); ok {
			return b, nil
		}
		return kit.Body{}, fmt.Errorf("no such body in the kit; choose one of those listed")
	}
	if len(k.Bodies) == 0 {
		return kit.Body{}, fmt.Errorf("the kit has no body")
	}
	return k.Bodies[0], nil
}

// mountOf returns where a hole or low window is.
func mountOf(a arena.Arena, id string) (frame.Mount, bool) {
	if h, ok := a.Hole(id); ok {
		return frame.MountAt(a, h.Station, h.Height, a.Boards.Setback.Or(0)), true
	}
	for _, w := range a.Windows {
		if w.ID == id {
			return frame.MountAt(a, w.Station, w.Height, 0), true
		}
	}
	return frame.Mount{}, false
}

// A picture is worth taking about this far away and not far aside: what a
// visitor sees first.
const (
	likedAway = 12.0 // metres
	likedTurn = 35.0 // degrees, to either side
)

// Favourite returns the moment to show first at a hole: the one whose subject
// stands nearest to likedAway, turned by likedTurn at most where there is one.
func Favourite(a arena.Arena, moments *play.Set, hole string) int {
	at, ok := mountOf(a, hole)
	if !ok {
		return 0
	}
	best, least := 0, math.Inf(1)
	for i := range moments.Len() {
		m := moments.At(i)
		p := m.People[m.Subject]
		aim := at.AimAt(geom.Vec3{X: p.X, Y: p.Y, Z: chestHeight})
		off := math.Abs(aim.Distance.Metres() - likedAway)
		if math.Abs(aim.Pan.Degrees()) > likedTurn {
			off += likedAway
		}
		if off < least {
			best, least = i, off
		}
	}
	return best
}

// NextOf returns the next moment of a phase after one, going round; ok is false
// when there is none.
func NextOf(moments *play.Set, phase play.Phase, after int) (int, bool) {
	n := moments.Len()
	for k := 1; k <= n; k++ {
		if i := (after + k) % n; moments.Phase[i] == phase {
			return i, true
		}
	}
	return 0, false
}
