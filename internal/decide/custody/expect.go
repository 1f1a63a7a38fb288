package custody

import (
	"slices"

	"example.org/rinkpane/internal/answer/puck"
)

// Expected is how many pucks to expect through a hole for as long as it was open.
type Expected struct {
	Hole           string
	Play, Practice puck.Passes // warm-up counts as practice; in all other phases nobody shoots
}

// Expect puts the time that holes were open beside what the guard of each says comes
// through in an hour. A hole without a guard is left out.
func Expect(holes []Hole, guards []puck.Guard) []Expected {
	var out []Expected
	for _, h := range holes {
		if at := slices.IndexFunc(guards, func(g puck.Guard) bool { return g.Hole == h.ID }); at >= 0 {
			g := guards[at]
			out = append(out, Expected{h.ID, g.Game.Over(h.Open[Play].Minutes()), g.Practice.Over((h.Open[Practice] + h.Open[WarmUp]).Minutes())})
		}
	}
	return out
}
