package rules

import (
	"math"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// slack is how far a limit may be missed and still be met, in metres: files
// hold rounded numbers, and sums of them are not exact.
const slack = 1e-6

// finding returns a finding on openings that has no status yet.
func (c *check) finding(of Quantity, openings ...opening) Finding {
	ids := make([]string, len(openings))
	for i, h := range openings {
		ids[i] = h.ID
	}
	return Finding{Set: c.set.ID, Rule: c.rule.ID, Kind: c.rule.Kind, Holes: ids, Of: of, LowWindow: len(openings) > 0 && openings[0].low}
}

// margin fills in what was measured, the limit and the margin, in metres,
// holes or shares, and decides by the margin.
func (f Finding) margin(measured, limit, margin float64) Finding {
	if math.Abs(margin) <= slack {
		margin = 0
	}
	f.Measured = unit.Known(Amount{f.Of, measured})
	f.Limit = unit.Known(Amount{f.Of, limit})
	f.Margin = unit.Known(Amount{f.Of, margin})
	return f.keeps(margin >= 0)
}

// atLeast measures a length that must be reached.
func (f Finding) atLeast(got, least unit.Length) Finding {
	return f.margin(got.Metres(), least.Metres(), (got - least).Metres())
}

// atMost measures a length that must not be passed.
func (f Finding) atMost(got, most unit.Length) Finding {
	return f.margin(got.Metres(), most.Metres(), (most - got).Metres())
}

// keeps gives a finding its status.
func (f Finding) keeps(kept bool) Finding {
	f.Status = Fail
	if kept {
		f.Status = Pass
	}
	return f
}

// kept adds the sentence for a rule that is kept.
func (f Finding) kept(form string, args ...any) Finding { return f.say(Pass, form, args) }

// broken adds the sentence for a rule that is broken.
func (f Finding) broken(form string, args ...any) Finding { return f.say(Fail, form, args) }

// unknown says what the survey lacks.
func (f Finding) unknown(form string, args ...any) Finding {
	f.Status = Unknown
	return f.say(Unknown, form, args)
}

func (f Finding) say(status Status, form string, args []any) Finding {
	if f.Status == status {
		f.Sentence = say.Make(form, args...)
	}
	return f
}

// names joins the openings' ids: "h1, h2 and h3".
func names(list []opening) string {
	ids := make([]string, len(list))
	for i, h := range list {
		ids[i] = h.ID
	}
	return say.Names(ids)
}

// lacksThickness answers when the pane's thickness is not recorded.
func (f Finding) lacksThickness(h opening) Finding {
	return f.unknown("Measure the thickness of the pane of %s and record it: the rule's limit is a multiple of it.", h.name())
}

// lacksRadius answers when the answer hangs on the hole's corner radius.
func (f Finding) lacksRadius(h opening) Finding {
	return f.unknown("Measure the corner radius of %s and record it: whether the distance is kept hangs on it.", h.name())
}

// lacksSetback answers where the answer hangs on how far the glass stands back.
func (f Finding) lacksSetback(h opening) Finding {
	return f.unknown("Measure how far the glass stands back from the boards' rink face and record it as setback: the pane of %s is the longer for it, and whether the distance is kept hangs on that.", h.name())
}

// lacksPane answers for a hole where no pane is recorded.
func (f Finding) lacksPane(h opening) Finding {
	return f.unknown("Survey the pane of %s: none is recorded there.", h.name())
}

// way names the way along the boards from a station, toward rising or falling
// stations, as rink people say it.
func (c *check) way(at unit.Length, rising bool) string {
	if corner := c.arena.Rink.Corner(at); corner != rink.NoCorner {
		if rising == (corner.TowardCentre() > 0) {
			return "toward centre ice"
		}
		return "toward the middle of the end boards"
	}
	t := c.arena.Rink.Tangent(at)
	if !rising {
		t = t.Scale(-1)
	}
	switch {
	case t.Y > max(t.X, -t.X):
		return "toward the box side"
	case -t.Y > max(t.X, -t.X):
		return "toward the bench side"
	case t.X > 0:
		return "toward end B"
	}
	return "toward end A"
}

func abs(l unit.Length) unit.Length { return max(l, -l) }
