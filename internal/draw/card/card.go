package card

import (
	"time"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// Card is what one person needs at one game.
type Card struct {
	Game   game.Game
	Person game.Person
	Arena  arena.Arena
	Turns  []Turn // a period each, from the first
	Posts  []Post // the holes of the turns, each with its lens once
}

// Turn is where somebody is in a period.
type Turn struct {
	Period  int
	At      time.Time // when it begins; zero where nobody said
	Hole    string    // "" has no seat in this period
	Attacks string    // the team that attacks the end of the hole
	Lens    kit.Lens
	Why     say.Sentence // what speaks for the hole
	Next    string       // who works the hole in the next period, by name; "" the same person, or nobody
}

// Post is a hole with the lens that is mounted in it.
type Post struct {
	Hole         string
	Place        arena.Place
	End          string // of the rink: A or B
	Lens         kit.Lens
	Clean, Turns unit.Maybe[unit.Angle] // how far the lens turns either way: with clean corners, and at all
	Light        []light.Row            // of the zones before the hole
	Sector       puck.Sector            // behind the hole to be kept clear
	Cover        string                 // the cover's id, "" where the caller knows none
}
