package rules

import (
	"math"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// slack is how far a limit may be missed and still be met, in metres: files
// hold rounded numbers, and sums of them are not exact.
const slack = 1e-6

// start returns a finding on holes that has no status yet.
func (c *court) start(of Quantity, holes ...glass.Hole) Finding {
	ids := make([]string, len(holes))
	for i, h := range holes {
		ids[i] = h.ID
	}
	return Finding{Set: c.set.ID, Rule: c.rule.ID, Kind: c.rule.Kind, Holes: ids, Of: of}
}

// weigh fills in measured, limit and margin, in metres, holes or shares, and
// decides by the margin.
func (f Finding) weigh(measured, limit, margin float64) Finding {
	if math.Abs(margin) <= slack {
		margin = 0
	}
	f.Measured = unit.Known(Amount{f.Of, measured})
	f.Limit = unit.Known(Amount{f.Of, limit})
	f.Margin = unit.Known(Amount{f.Of, margin})
	return f.decide(margin >= 0)
}

// decide gives a finding its status.
func (f Finding) decide(kept bool) Finding {
	f.Status = Fail
	if kept {
		f.Status = Pass
	}
	return f
}

// unknown gives a finding whose numbers the survey lacks.
func (f Finding) unknown() Finding {
	f.Status = Unknown
	return f
}

// say adds the sentence, as [say.Make] does.
func (f Finding) say(form string, args ...any) Finding {
	f.Sentence = say.Make(form, args...)
	return f
}
