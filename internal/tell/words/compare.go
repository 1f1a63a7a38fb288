package words

import (
	"fmt"

	"example.org/rinkpane/internal/decide/compare"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// Became says what became of a hole, a short sentence a change; lengths in the
// system's units. A hole that stayed as it was gives none.
func Became(h compare.Hole, sys unit.System) []string {
	switch h.Kind {
	case compare.Added:
		return []string{"new: " + h.After.Place.Say(sys)}
	case compare.TurnedOn:
		return []string{"turned on again: " + h.After.Place.Say(sys)}
	case compare.Removed:
		return []string{"gone: it stood at " + h.Before.Place.Say(sys)}
	case compare.Off:
		return []string{"turned off"}
	}
	var out []string
	tell := func(differs bool, form string, args ...any) {
		if differs {
			out = append(out, say.Make(form, args...).In(sys))
		}
	}
	a, b := h.Before, h.After
	way, up := "higher", h.Up
	if up < 0 {
		way, up = "lower", -up
	}
	tell(h.Along != 0, "moved %s along the boards, to %s", max(h.Along, -h.Along), b.Place)
	tell(h.Up != 0, "%s %s", up, way)
	tell(a.Size != b.Size, "now %s instead of %s", b.Size, a.Size)
	tell(a.Opening.Thick.Value != b.Opening.Thick.Value, "in a pane %s thick instead of %s", b.Opening.Thick.Value, a.Opening.Thick.Value)
	tell(a.State != b.State, "now %s instead of %s", b.State, a.State)
	tell(a.Status != b.Status, "rules %s instead of %s", Status(b.Status), Status(a.Status))
	tell(compare.OtherLens(*a, *b), "best lens %s instead of %s", Best(*b), Best(*a))
	tell(!compare.Alike(a.Reach.Share, b.Reach.Share), "the frame's centre sees %s of the ice instead of %s", Percent(b.Reach.Share), Percent(a.Reach.Share))
	wasWhole, isWhole := a.Reach.Whole.Or(0), b.Reach.Whole.Or(0)
	tell(!compare.Alike(wasWhole, isWhole), "the whole frame sees %s of the ice instead of %s", Percent(isWhole), Percent(wasWhole))
	_, wasLit := a.SlotLight()
	_, isLit := b.SlotLight()
	tell(wasLit && isLit && compare.OtherISO(*a, *b), "ISO for faces %s at the slot instead of %s", slot(*b, FaceISO), slot(*a, FaceISO))
	return out
}

// Compared says the whole in one sentence: "2 holes moved, 1 added; the rules are
// broken now, kept before."
func Compared(c compare.Comparison) string {
	if c.Alike() {
		return "Nothing that counts differs."
	}
	text := ""
	for _, kind := range []compare.Kind{compare.Moved, compare.Changed, compare.Added, compare.Removed, compare.Off, compare.TurnedOn} {
		n := 0
		for _, h := range c.Holes {
			if h.Kind == kind {
				n++
			}
		}
		what := string(kind)
		if kind == compare.Off {
			what = "turned off"
		}
		switch {
		case n == 0:
		case text == "":
			text = say.Count(n, "hole") + " " + what
		default:
			text += fmt.Sprintf(", %d %s", n, what)
		}
	}
	if text == "" {
		text = "No hole differs"
	}
	if c.Before != c.After {
		text += "; the rules are " + Status(c.After) + " now, " + Status(c.Before) + " before"
	}
	return text + "."
}
