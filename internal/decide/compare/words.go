package compare

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/unit"
)

// Words says what became of a hole, a short sentence a change; lengths in the
// system's units. A hole that stayed as it was gives none.
func (h Hole) Words(sys unit.System) []string {
	switch h.Kind {
	case Added:
		return []string{"new: " + h.After.Where(sys)}
	case TurnedOn:
		return []string{"turned on again: " + h.After.Where(sys)}
	case Removed:
		return []string{"gone: it stood at " + h.Before.Where(sys)}
	case Off:
		return []string{"turned off"}
	}
	var out []string
	out = append(out, h.moves(sys)...)
	out = append(out, h.shape(sys)...)
	return append(out, h.follows()...)
}

// moves says where a hole went.
func (h Hole) moves(sys unit.System) []string {
	var out []string
	if math.Abs(h.Along) > least {
		out = append(out, fmt.Sprintf("moved %s along the boards, to %s", unit.Length(math.Abs(h.Along)).Format(sys), h.After.Where(sys)))
	}
	if math.Abs(h.Up) > least {
		way := "higher"
		if h.Up < 0 {
			way = "lower"
		}
		out = append(out, unit.Length(math.Abs(h.Up)).Format(sys)+" "+way)
	}
	return out
}

// shape says what else of the hole itself changed.
func (h Hole) shape(sys unit.System) []string {
	var out []string
	a, b := h.Before, h.After
	if a.Size() != b.Size() {
		out = append(out, "now "+b.Size().Format(sys)+" instead of "+a.Size().Format(sys))
	}
	if a.Thick != b.Thick {
		out = append(out, fmt.Sprintf("in a pane %s thick instead of %s",
			(unit.Length(b.Thick)*unit.Millimetre).Format(sys), (unit.Length(a.Thick)*unit.Millimetre).Format(sys)))
	}
	if a.State != b.State {
		out = append(out, "now "+b.State+" instead of "+a.State)
	}
	return out
}

// follows says what the change means: rules, reach, lens, light.
func (h Hole) follows() []string {
	var out []string
	a, b := h.Before, h.After
	if a.Status != b.Status {
		out = append(out, "rules "+StatusWords(b.Status)+" instead of "+StatusWords(a.Status))
	}
	if a.Best != b.Best || a.BestFocal != b.BestFocal {
		out = append(out, "best lens "+bestWords(*b)+" instead of "+bestWords(*a))
	}
	if !alike(a.Reach.Share, b.Reach.Share) {
		out = append(out, fmt.Sprintf("sees %.0f %% of the ice instead of %.0f %%", 100*b.Reach.Share, 100*a.Reach.Share))
	}
	if was, is := slotISO(*a), slotISO(*b); was != is && was != "" && is != "" {
		out = append(out, "ISO "+is+" at the slot instead of "+was)
	}
	return out
}

func bestWords(h plan.Hole) string {
	if f, ok := h.BestFit(); ok {
		return f.Short()
	}
	return "none"
}

// StatusWords says a rule's answer in plain words; "" is a rule not asked.
func StatusWords(s rules.Status) string {
	switch s {
	case rules.Pass:
		return "kept"
	case rules.Fail:
		return "broken"
	case rules.Unknown:
		return "not known"
	}
	return "not asked"
}

// Summary says the whole in one sentence: "2 holes moved, 1 added; the rules are
// broken now, kept before".
func (c Comparison) Summary() string {
	if c.Alike() {
		return "Nothing that counts differs."
	}
	text := ""
	for _, kind := range []Kind{Moved, Changed, Added, Removed, Off, TurnedOn} {
		n := 0
		for _, h := range c.Holes {
			if h.Kind == kind {
				n++
			}
		}
		switch {
		case n == 0:
		case text == "":
			text = plan.Count(n, "hole") + " " + kind.words()
		default:
			text += fmt.Sprintf(", %d %s", n, kind.words())
		}
	}
	if text == "" {
		text = "No hole differs"
	}
	if c.Before != c.After {
		text += "; the rules are " + StatusWords(c.After) + " now, " + StatusWords(c.Before) + " before"
	}
	return text + "."
}

// words says what became of holes of a kind.
func (k Kind) words() string {
	if k == Off {
		return "turned off"
	}
	return string(k)
}
