package glass

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
)

// OrderedMade says which materials nobody cuts, in a clause.
func OrderedMade() string {
	return say.Names(Names(Properties.MadeToOrder)) + " glass is never cut: it is ordered made"
}

// Cautions returns the sentences that stand on every drawing and page about
// barrier work, in the order of their weight.
func Cautions() []string {
	return []string{
		"Work on the barrier belongs to the rink operator and the glass maker, under local codes and licensed practice.",
		"Never cut " + form.Choices(Names(Properties.MadeToOrder)) + " glass: order it made.",
		"No hole without its cover, in whenever nobody works the hole.",
		"Nothing of a camera or a person past the rink face during play.",
		"This model does not replace a strength check.",
	}
}
