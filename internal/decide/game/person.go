package game

import (
	"example.org/rinkpane/internal/decide/choose"
)

// Camera is how somebody works.
type Camera string

// The cameras.
const (
	Stills    Camera = "stills"
	Broadcast Camera = "broadcast"
	Remote    Camera = "remote" // clamped in the hole, with nobody behind it
)

// Person is somebody who asks for holes, or a camera that does.
type Person struct {
	ID, Name, Outlet string
	Camera           Camera
	Follows          Follow
	Lenses           []string // of the kit, in its order; never empty
	Works            choose.Person
	Cannot           []string // holes that they cannot use, whatever the reason
}

// Follow is whom or what pictures are of.
type Follow string

// What may be followed: a team's attacks, a goalkeeper at the end that the team defends,
// or whatever happens at one end of the rink.
const (
	Home           Follow = "home"
	Away           Follow = "away"
	Both           Follow = "both"
	HomeGoalkeeper Follow = "home-goalkeeper"
	AwayGoalkeeper Follow = "away-goalkeeper"
	EndA           Follow = "end-A"
	EndB           Follow = "end-B"
)

// Follows lists what may be followed.
func Follows() []Follow {
	return []Follow{Home, Away, Both, HomeGoalkeeper, AwayGoalkeeper, EndA, EndB}
}

// kinds returns which kinds of moments a follower waits for in a period of a game.
func (f Follow) kinds(g Game, period int) []kind {
	attack := func(team int) kind { return kind{team: team, end: g.Ends.Attacks(team, period)} }
	keeper := func(team int) kind { k := attack(1 - team); k.keeper = true; return k }
	at := func(end int) []kind {
		if k := attack(0); k.end == end {
			return []kind{k}
		}
		return []kind{attack(1)}
	}
	switch f {
	case Home:
		return []kind{attack(0)}
	case Away:
		return []kind{attack(1)}
	case HomeGoalkeeper:
		return []kind{keeper(0)}
	case AwayGoalkeeper:
		return []kind{keeper(1)}
	case EndA:
		return at(-1)
	case EndB:
		return at(+1)
	}
	return []kind{attack(0), attack(1)}
}
