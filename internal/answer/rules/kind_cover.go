package rules

import "example.org/rinkpane/internal/measure/form"

var coverKind = kind{
	name: "cover", windows: always,
	asks: "there is a cover, in whenever nobody works the hole",
	read: func(form.Map) demand { return coverDue{} },
}

type coverDue struct{}

func (coverDue) one(c *check, h opening) Finding {
	f := c.finding(NoAmount, h)
	cover, known := h.Cover.Get()
	if !known {
		return f.unknown("Look whether %s has a cover and record it: a cover is due, in whenever nobody works the %s.", h.name(), h.what())
	}
	return f.keeps(cover.Present).
		kept("Keep the cover of %s in whenever nobody works the %s.", h.name(), h.what()).
		broken("Make a cover for %s, and keep it in whenever nobody works the %s.", h.name(), h.what())
}

var tetherKind = kind{
	name: "tether", windows: always,
	asks: "the cover hangs on a tether",
	read: func(form.Map) demand { return tetherDue{} },
}

type tetherDue struct{}

func (tetherDue) one(c *check, h opening) Finding {
	f := c.finding(NoAmount, h)
	cover, known := h.Cover.Get()
	tied, tetherKnown := cover.Tether.Get()
	switch {
	case known && !cover.Present:
		return f.keeps(false).broken("Make a cover with a tether for %s: it has no cover.", h.name())
	case !known || !tetherKnown:
		return f.unknown("Look whether the cover of %s hangs on a tether and record it: a tether is due.", h.name())
	}
	return f.keeps(tied).
		kept("Nothing to do: the cover of %s hangs on a tether.", h.name()).
		broken("Tie the cover of %s to the boards with a tether.", h.name())
}
