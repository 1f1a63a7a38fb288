package play

import (
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
)

// crew is who stands at the officials' four places of a moment, "" for nobody: deep in the
// zone that is attacked, in the neutral zone, at the blue line (and at the drop of a
// face-off), behind the play.
type crew [People - Officials]Role

// mostOfficials is how many a moment has places for.
const mostOfficials = People - Officials

// Where referees and linesmen stand, the likeliest place first. Without linesmen a
// referee drops the puck.
var (
	refereePlaces  = [mostOfficials]int{0, 1, 3, 2}
	linesmanPlaces = [mostOfficials]int{2, 3, 1, 0}
	alonePlaces    = [mostOfficials]int{2, 0, 1, 3}
)

// counts returns how many referees and linesmen are on the ice. What is said of one of
// them leaves of the other as many as the officials said, else two where there is room.
func (g Game) counts() (referees, linesmen int) {
	total := g.Officials
	if total == 0 {
		total = mostOfficials
	}
	r, saysR := g.Referees.Get()
	l, saysL := g.Linesmen.Get()
	switch {
	case saysR && saysL:
		return r, l
	case saysR:
		return r, min(2, total-r)
	case saysL:
		return min(2, total-l), l
	}
	return max(1, total-2), min(2, total-1)
}

func (g Game) crew() crew {
	var out crew
	referees, linesmen := g.counts()
	at := refereePlaces
	if linesmen == 0 {
		at = alonePlaces
	}
	for _, i := range at[:referees] {
		out[i] = Referee
	}
	for _, i := range linesmanPlaces[:linesmen] {
		out[i] = Linesman
	}
	return out
}

// Check reports what makes no game.
func (g Game) Check() error {
	if g.Officials != 0 && (g.Officials < 2 || g.Officials > mostOfficials) {
		return fmt.Errorf("officials: %d: write 2, 3 or 4", g.Officials)
	}
	for _, n := range []unit.Maybe[int]{g.Referees, g.Linesmen} {
		if n.Or(0) < 0 || n.Or(0) > mostOfficials {
			return fmt.Errorf("%d referees or linesmen: write numbers from 0 to %d", n.Or(0), mostOfficials)
		}
	}
	if r, l := g.counts(); r+l < 1 || r+l > mostOfficials || r < 0 || l < 0 {
		return fmt.Errorf("referees %d, linesmen %d: together 1 to %d stand on the ice", r, l, mostOfficials)
	}
	return nil
}

// absent takes the officials off the ice that a game does without.
func (s *scene) absent() {
	for i, role := range s.ass.Game.crew() {
		if role == "" {
			s.m.People[Officials+i] = Person{X: float64(Officials + i), Y: -(s.lay.HalfWidth + away)}
		}
	}
}
