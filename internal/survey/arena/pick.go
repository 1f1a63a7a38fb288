package arena

import "example.org/rinkpane/internal/survey/glass"

// Pick returns the openings with these ids in the order given: working holes and
// low windows; without any id those of all working holes. Errors are those of
// [Arena.Opening] and [Opening.Passable].
func (a Arena) Pick(ids []string) ([]Opening, error) {
	if len(ids) == 0 {
		ids = idsOf(a.Working())
	}
	out := make([]Opening, 0, len(ids))
	for _, id := range ids {
		o, err := a.Opening(id)
		if err != nil {
			return nil, err
		}
		if err := o.Passable(); err != nil {
			return nil, err
		}
		out = append(out, o)
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
