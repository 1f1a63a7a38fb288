package play

import (
	"bufio"
	"encoding/csv"
	"io"
	"math"
	"strconv"
)

// WriteMoments writes every body of every moment as CSV, and the puck in a row
// of its own, as [ReadTracks] reads it.
func (s *Set) WriteMoments(w io.Writer) error {
	buffered := bufio.NewWriter(w)
	out := csv.NewWriter(buffered)
	head := []string{"moment", "phase", "weight", "role", "team", "x_m", "y_m", "heading_deg", "height_m", "subject", "puck", "period", "end", "shot"}
	if err := out.Write(head); err != nil {
		return err
	}
	officials := s.crew
	if officials == (crew{}) {
		officials = Game{}.crew()
	}
	for i := range s.Len() {
		if err := writeMoment(out, i, s.At(i), officials); err != nil {
			return err
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return err
	}
	return buffered.Flush()
}

func writeMoment(out *csv.Writer, i int, m Moment, officials crew) error {
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 32) }
	mark := map[bool]string{true: "1", false: "0"}
	row := func(role Role, team string, x, y float64, heading string, height float64, subject, puck bool) error {
		return out.Write([]string{
			strconv.Itoa(i), m.Phase.String(), number(m.Weight), string(role), team, number(x), number(y), heading, number(height),
			mark[subject], mark[puck], strconv.Itoa(m.Period), map[int]string{1: "B", -1: "A"}[m.End], mark[m.Shot],
		})
	}
	for k, p := range m.People {
		if p.Height == 0 { // not in the game
			continue
		}
		role, team := roleOf(k, m.Team, officials)
		if err := row(role, team, p.X, p.Y, number(p.Heading*180/math.Pi), p.Height, k == m.Subject, false); err != nil {
			return err
		}
	}
	return row(PuckRole, "", m.Puck.X, m.Puck.Y, "", m.Puck.Z, false, true)
}

// roleOf returns the role and the team of a place in a moment's row.
func roleOf(place, attacking int, officials crew) (Role, string) {
	teams := [2]string{"home", "away"}
	switch {
	case place < Defenders:
		return Skater, teams[attacking]
	case place < AttackerGoalie:
		return Skater, teams[1-attacking]
	case place == AttackerGoalie:
		return Goalkeeper, teams[attacking]
	case place == DefenderGoalie:
		return Goalkeeper, teams[1-attacking]
	}
	return officials[place-Officials], ""
}
