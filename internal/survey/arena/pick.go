package arena

import (
	"fmt"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/glass"
)

// Pick returns the working holes with these ids in the order given, all of them
// without any id. An id that no working hole has is an error that names those there are.
func (a Arena) Pick(ids []string) ([]glass.Hole, error) {
	working := a.Working()
	if len(ids) == 0 {
		return working, nil
	}
	var out []glass.Hole
	for _, id := range ids {
		h, ok := a.Hole(id)
		if !ok || h.State == glass.Off {
			return nil, fmt.Errorf("%s: no working hole has this id; write %s", form.Quote(id), form.Choices(idsOf(working)))
		}
		out = append(out, h)
	}
	return out, nil
}

// Openings returns the ids of what a camera can shoot through: the working
// holes, then the low windows.
func (a Arena) Openings() []string {
	out := idsOf(a.Working())
	for _, w := range a.Windows {
		out = append(out, w.ID)
	}
	return out
}

func idsOf(holes []glass.Hole) []string {
	var out []string
	for _, h := range holes {
		out = append(out, h.ID)
	}
	return out
}
