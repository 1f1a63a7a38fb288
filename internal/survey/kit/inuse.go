package kit

import (
	"fmt"
	"slices"

	"example.org/rinkpane/internal/measure/form"
)

// InUse returns the lenses with the given ids, all when none is given, in the
// kit's order. An id that the kit lacks is an error.
func (k Kit) InUse(ids []string) ([]Lens, error) {
	if len(ids) == 0 {
		return k.Lenses, nil
	}
	for _, id := range ids {
		if _, ok := k.Lens(id); !ok {
			return nil, fmt.Errorf("lenses: %s; take it out of the arena's lenses, or add it to the kit", k.Lacking(id))
		}
	}
	var out []Lens
	for _, l := range k.Lenses {
		if slices.Contains(ids, l.ID) {
			out = append(out, l)
		}
	}
	return out, nil
}

// Lacking says that the kit has no lens of this id, and asks for the nearest.
func (k Kit) Lacking(id string) string {
	if near := form.Nearest(id, k.LensIDs()); near != "" {
		return fmt.Sprintf("the kit has no lens %q, did you mean %q", id, near)
	}
	return fmt.Sprintf("the kit has no lens %q", id)
}
