package desk

// The ways of an arena lead from each of its pages to the others; the pages of
// the picture and of the choice keep their own state, of which the ways carry
// on what the others know.

// Address is the arena with the picked hole and lens, for the ways.
func (p picturePage) Address() address {
	return address{slug: p.Slug, hole: p.State.Hole, lens: p.State.Lens.ID, system: p.Units}
}

// Way names the page among the ways.
func (p picturePage) Way() string { return "picture" }

// Way names the page among the ways.
func (p choosePage) Way() string { return "choose" }
