package picture

import (
	"cmp"
	"errors"
	"math"

	"example.org/rinkpane/internal/answer/frame"
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

// kitOf returns the lens and the body of these ids, or the usual ones.
func kitOf(k kit.Kit, a arena.Arena, lens, body string) (kit.Lens, kit.Body, error) {
	l, err := k.PickLens(lens, a.Lenses)
	if err != nil {
		return l, kit.Body{}, errors.New("no such lens in the kit; choose one of those listed")
	}
	b, err := k.PickBody(cmp.Or(l.Body, body))
	if err != nil {
		return l, b, errors.New("no such body in the kit; choose one of those listed")
	}
	return l, b, nil
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
	o, err := a.Opening(hole)
	if err != nil {
		return 0
	}
	at := frame.MountOf(a, o)
	best, least := 0, math.Inf(1)
	for i := range moments.Len() {
		m := moments.At(i)
		aim := at.AimAt(frame.Chest(m))
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
