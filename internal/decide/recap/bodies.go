package recap

import (
	"slices"
	"strings"
)

// Body is a camera of the game: how many frames it took and how its clock stands.
type Body struct {
	Name, Model string
	Frames      int
	Clock       Clock
}

// Bodies lists the bodies of an answer's frames by name.
func Bodies(a Answer) (out []Body) {
	for _, m := range a.Frames {
		i := slices.IndexFunc(out, func(b Body) bool { return b.Name == m.Body })
		if i < 0 {
			c, told := a.Clocks[m.Body]
			if !told {
				c = Clock{Spread: unchecked}
			}
			i, out = len(out), append(out, Body{Name: m.Body, Model: m.Model, Clock: c})
		}
		out[i].Frames++
	}
	slices.SortFunc(out, func(a, b Body) int { return strings.Compare(a.Name, b.Name) })
	return out
}
