package game

import (
	"fmt"

	"example.org/rinkpane/internal/measure/form"
)

// seats reads the seats given by hand. One hole holds one person, one person one hole,
// period by period.
func (rd *reader) seats(n form.Node) {
	taken := map[string]string{} // by game, period and hole or person, who or which
	for m := range entries(n, MaxFixed, seatFields) {
		f := Fixed{Game: known(m.At("game"), "game", rd.ids.games), Who: known(m.At("who"), "person", rd.ids.people), Hole: rd.given(m.At("hole"))}
		if !m.OK() {
			return
		}
		g, _ := rd.Game(f.Game)
		f.Periods = periods(m.At("periods"), g.Periods)
		if why := rd.WhyClosed(g, f.Hole); why != "" {
			m.At("hole").Failf("%s is closed: %s; give another hole, or open it", f.Hole, why)
		}
		for period := 1; period <= g.Periods; period++ {
			if !covers(f.Periods, period) {
				continue
			}
			at := fmt.Sprintf("%s, period %d", g.ID, period)
			if who, twice := taken[at+" hole "+f.Hole]; twice && who != f.Who {
				m.At("hole").Failf("%s is given to %s already in game %s; keep one of the two", f.Hole, who, at)
			}
			if hole, twice := taken[at+" who "+f.Who]; twice && hole != f.Hole {
				m.At("who").Failf("%s has hole %s already in game %s; keep one of the two", f.Who, hole, at)
			}
			taken[at+" hole "+f.Hole], taken[at+" who "+f.Who] = f.Who, f.Hole
		}
		rd.Fixed = append(rd.Fixed, f)
	}
}

// mostLinks is how many links of one card may be revoked.
const mostLinks = 1000

// revoked reads the cards of which links were revoked, each once.
func (rd *reader) revoked(n form.Node) {
	for m := range entries(n, MaxRevoked, revokedFields) {
		c := Revoked{Game: known(m.At("game"), "game", rd.ids.games), Who: known(m.At("who"), "person", rd.ids.people), Links: m.At("links").Int(1, mostLinks)}
		if m.OK() && rd.Revocations(c.Game, c.Who) > 0 {
			m.At("who").Failf("the card of %s at game %s is there already; count its links in one place", c.Who, c.Game)
		}
		rd.Revoked = append(rd.Revoked, c)
	}
}
