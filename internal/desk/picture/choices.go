package picture

import (
	"cmp"
	"errors"

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
