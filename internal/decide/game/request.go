package game

import (
	"slices"
	"time"
)

// Request is that somebody wants a hole at some games.
type Request struct {
	Who       string
	Games     Games
	Periods   []int  // from 1; none: all
	Follows   Follow // "" as the person usually does
	Must      bool   // firm: goes before every wish
	Asked     time.Time
	Withdrawn bool
	NoShow    bool // known after the game: was given a seat and did not come
}

// Games picks games: all, or those whose id or series is named.
type Games struct {
	All   bool
	Names []string // ids and series
}

// Has reports whether a game is picked.
func (s Games) Has(g Game) bool {
	return s.All || slices.Contains(s.Names, g.ID) || g.Series != "" && slices.Contains(s.Names, g.Series)
}

// Reservation keeps holes for one kind of camera, by a rule that is named. Where nobody
// with such a camera asks for a game, the hole is free to all.
type Reservation struct {
	Holes   []string
	For     Camera
	Rule    string // the document that says so
	Games   Games
	Periods []int // none: all
}

// Closed is a hole that is not given, and why: an inspection refused it, its cover is
// lost.
type Closed struct {
	Hole, Why string
	Games     Games
}

// Fixed is a seat given by hand.
type Fixed struct {
	Game, Who, Hole string
	Periods         []int // from 1; none: all
}

// Revoked is that the first so many links to somebody's card of a game open nothing.
type Revoked struct {
	Game, Who string
	Links     int // 1 or more
}

// Ask is one person's request as it stands for one game.
type Ask struct {
	Person
	Request
	Late bool // asked after the closing time
}

// Wants reports whether a hole is asked for in a period.
func (a Ask) Wants(period int) bool { return covers(a.Request.Periods, period) }

func covers(periods []int, period int) bool {
	return len(periods) == 0 || slices.Contains(periods, period)
}

// Late reports whether a request came after the closing time before a game.
func (s Season) Late(r Request, g Game) bool {
	return s.Closing > 0 && !r.Asked.IsZero() && r.Asked.After(g.Start.Add(-s.Closing))
}

// Asks returns who asks for a game, in the order of the people: each by the last of their
// requests that picks the game. A seat given by hand is a request. Nobody asks for a game
// that is off.
func (s Season) Asks(g Game) []Ask {
	if g.Off {
		return nil
	}
	last := map[string]Request{}
	for _, f := range s.Fixed {
		if f.Game == g.ID {
			last[f.Who] = Request{Who: f.Who, Must: true}
		}
	}
	for _, r := range s.Requests {
		if r.Games.Has(g) {
			last[r.Who] = r
		}
	}
	var out []Ask
	for _, p := range s.People {
		r, asks := last[p.ID]
		if !asks || r.Withdrawn {
			continue
		}
		if r.Follows == "" {
			r.Follows = p.Follows
		}
		out = append(out, Ask{Person: p, Request: r, Late: s.Late(r, g)})
	}
	return out
}
