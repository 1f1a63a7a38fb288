package rules

import "example.org/rinkpane/internal/survey/glass"

// coverDue asks for a cover, in whenever nobody works the hole.
type coverDue struct{}

func (coverDue) alone(c *court, h glass.Hole) Finding {
	f := c.start(NoAmount, h)
	cover, known := h.Cover.Get()
	switch {
	case !known:
		return f.unknown().say("Look whether hole %s has a cover and record it: a cover is due, in whenever nobody works the hole.", h.ID)
	case cover.Present:
		return f.decide(true).say("Keep the cover of hole %s in whenever nobody works the hole.", h.ID)
	}
	return f.decide(false).say("Make a cover for hole %s, and keep it in whenever nobody works the hole.", h.ID)
}

// tetherDue asks that the cover be tied to the boards or the glass.
type tetherDue struct{}

func (tetherDue) alone(c *court, h glass.Hole) Finding {
	f := c.start(NoAmount, h)
	cover, known := h.Cover.Get()
	tied, tetherKnown := cover.Tether.Get()
	switch {
	case known && !cover.Present:
		return f.decide(false).say("Make a cover with a tether for hole %s: it has no cover.", h.ID)
	case !known || !tetherKnown:
		return f.unknown().say("Look whether the cover of hole %s hangs on a tether and record it: a tether is due.", h.ID)
	case tied:
		return f.decide(true).say("Nothing to do: the cover of hole %s hangs on a tether.", h.ID)
	}
	return f.decide(false).say("Tie the cover of hole %s to the boards with a tether.", h.ID)
}
