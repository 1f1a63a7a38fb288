package kit

import (
	"fmt"
	"slices"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// The lens that is meant when none is named: a zoom as far as this and as bright,
// the usual one of the trade (common practice, no published source).
const (
	usualReach = 200 * unit.Millimetre
	usualStop  = unit.Stop(2.8)
)

// PickLens finds the lens named, or the usual zoom among those in use, else the
// first in use. Without ids in use all of the kit's lenses are.
func (k Kit) PickLens(id string, inUse []string) (Lens, error) {
	if id != "" || len(k.Lenses) == 0 {
		return picked(k.Lenses, "lens", id, k.LensIDs())
	}
	at := slices.IndexFunc(k.Lenses, func(l Lens) bool {
		here := len(inUse) == 0 || slices.Contains(inUse, l.ID)
		return here && l.FocalMin < l.FocalMax && l.FocalMax >= usualReach && l.StopLong <= usualStop
	})
	if at < 0 && len(inUse) > 0 {
		at = slices.Index(k.LensIDs(), inUse[0])
	}
	return k.Lenses[max(at, 0)], nil
}

// PickBody finds the body named, or the kit's first.
func (k Kit) PickBody(id string) (Body, error) {
	if id == "" && len(k.Bodies) > 0 {
		return k.Bodies[0], nil
	}
	return picked(k.Bodies, "body", id, names(k.Bodies, func(b Body) string { return b.ID }))
}

// LensIDs returns the lenses' ids in the kit's order.
func (k Kit) LensIDs() []string { return names(k.Lenses, func(l Lens) string { return l.ID }) }

func names[T any](list []T, id func(T) string) []string {
	out := make([]string, len(list))
	for i, v := range list {
		out[i] = id(v)
	}
	return out
}

func picked[T any](list []T, thing, id string, ids []string) (T, error) {
	if at := slices.Index(ids, id); at >= 0 {
		return list[at], nil
	}
	var none T
	return none, fmt.Errorf("%s %q: not in the kit; write %s", thing, id, form.Choices(ids))
}
