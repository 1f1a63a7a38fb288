package card

import (
	"context"
	"maps"
	"slices"
	"strings"
	"sync"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
)

// Rink is what all cards of a season stand on.
type Rink struct {
	season game.Season
	views  *game.Table // of each lens alone
	lit    light.Lit
	guards map[string]puck.Guard
	posts  *posts
}

// posts are lenses in holes that were worked out: a season asks for the same ones again.
type posts struct {
	mu   sync.Mutex
	done map[[2]string]Post // by hole and lens
}

// Prepare works out what all cards of a season stand on: seconds once, and every card is
// made in milliseconds. Errors: those of the answers' packages, ctx's.
func Prepare(ctx context.Context, s game.Season) (Rink, error) {
	r := Rink{season: s, guards: map[string]puck.Guard{}, posts: &posts{done: map[[2]string]Post{}}}
	alone := map[string]bool{}
	for _, p := range s.People {
		for _, lens := range p.Lenses {
			alone[lens] = true
		}
	}
	var bags [][]string
	for _, lens := range slices.Sorted(maps.Keys(alone)) {
		bags = append(bags, []string{lens})
	}
	guards, err := puck.Assess(ctx, s.Arena, puck.DefaultOptions())
	if err != nil {
		return Rink{}, err
	}
	for _, g := range guards {
		r.guards[g.Hole] = g
	}
	if r.lit, err = light.Over(s.Arena, unit.Maybe[unit.Illuminance]{}); err != nil {
		return Rink{}, err
	}
	r.views, err = game.Score(ctx, s.Arena, s.Kit, s.Holes, bags)
	return r, err
}

// For returns the same for a season that differs in its games, requests and seats only: the
// rink, the holes that are given and the lenses that people bring are as they were.
func (r Rink) For(s game.Season) Rink {
	r.season = s
	return r
}

// Cards returns a card for each person who has a seat at a game and did not stay away, in
// the order of the season's people. covers names each hole's cover where the caller knows it.
func (r Rink) Cards(g game.Game, seats []seat.Seat, covers map[string]string) ([]Card, error) {
	holder := holders(seats)
	var out []Card
	for _, ask := range r.season.Asks(g) {
		if ask.NoShow {
			continue
		}
		c, err := r.card(g, ask, seats, holder, covers)
		if err != nil {
			return nil, err
		}
		if len(c.Posts) > 0 {
			out = append(out, c)
		}
	}
	return out, nil
}

// Card returns the card of one person at a game; ok is false where they have no seat.
func (r Rink) Card(g game.Game, seats []seat.Seat, covers map[string]string, who string) (c Card, ok bool, err error) {
	if !slices.ContainsFunc(seats, func(s seat.Seat) bool { return s.Who == who }) {
		return c, false, nil
	}
	for _, ask := range r.season.Asks(g) {
		if ask.ID == who && !ask.NoShow {
			c, err = r.card(g, ask, seats, holders(seats), covers)
		}
	}
	return c, len(c.Posts) > 0, err
}

// holders says who has each hole in each period.
func holders(seats []seat.Seat) map[seat.Seat]string {
	holder := map[seat.Seat]string{} // by period and hole
	for _, s := range seats {
		holder[seat.Seat{Period: s.Period, Hole: s.Hole}] = s.Who
	}
	return holder
}

// card makes the card of one request.
func (r Rink) card(g game.Game, ask game.Ask, seats []seat.Seat, holder map[seat.Seat]string, covers map[string]string) (Card, error) {
	c := Card{Game: g, Person: ask.Person, Arena: r.season.Arena}
	for period := 1; period <= g.Periods; period++ {
		turn := Turn{Period: period}
		turn.At, _ = g.At(game.PeriodStage(period))
		for _, s := range seats {
			if s.Who == ask.ID && s.Period == period {
				turn.Hole = s.Hole
			}
		}
		if turn.Hole != "" {
			if err := r.fill(&c, &turn, ask, covers[turn.Hole]); err != nil {
				return c, err
			}
			if next := holder[seat.Seat{Period: period + 1, Hole: turn.Hole}]; next != ask.ID {
				p, _ := r.season.Person(next)
				turn.Next = p.Name
			}
		}
		c.Turns = append(c.Turns, turn)
	}
	return c, nil
}

// fill says what a turn at a hole needs, and adds its post to the card.
func (r Rink) fill(c *Card, turn *Turn, ask game.Ask, cover string) error {
	end := r.season.EndOf(turn.Hole)
	for team := range 2 {
		if c.Game.Ends.Attacks(team, turn.Period) == end {
			turn.Attacks = c.Game.Team(team)
		}
	}
	best := -1.0
	for _, id := range ask.Lenses {
		alone := ask
		alone.Lenses = []string{id}
		w := r.season.Worth(r.views, c.Game, alone, turn.Period, turn.Hole)
		if w.Value > best {
			best, turn.Why = w.Value, w.Why()
			turn.Lens, _ = r.season.Kit.Lens(id)
		}
	}
	for _, p := range c.Posts {
		if p.Hole == turn.Hole && p.Lens.ID == turn.Lens.ID {
			return nil
		}
	}
	p, err := r.post(turn.Hole, turn.Lens, end)
	p.Cover = cover
	c.Posts = append(c.Posts, p)
	return err
}

// post finds a lens in a hole, or works it out.
func (r Rink) post(hole string, lens kit.Lens, end int) (Post, error) {
	r.posts.mu.Lock()
	defer r.posts.mu.Unlock()
	at := [2]string{hole, lens.ID}
	if p, ok := r.posts.done[at]; ok {
		return p, nil
	}
	p, err := r.work(hole, lens, end)
	if err == nil {
		r.posts.done[at] = p
	}
	return p, err
}

// work works out a lens in a hole.
func (r Rink) work(hole string, lens kit.Lens, end int) (Post, error) {
	s := r.season
	o, err := s.Arena.Opening(hole)
	if err != nil {
		return Post{}, err
	}
	p := Post{Hole: hole, Place: s.Arena.PlaceOf(o.Hole.Station), End: game.EndName(end), Lens: lens, Sector: r.guards[hole].Sector}
	use, err := fit.Use(lens, unit.Maybe[unit.Length]{}, unit.Maybe[unit.Stop]{}, false, false)
	if err != nil {
		return Post{}, err
	}
	c, err := fit.FromKit(o, lens, s.Kit.BodyOf(lens), use)
	if err != nil {
		return Post{}, err
	}
	limits := c.Limits()
	p.Clean, p.Turns = limits.Pan.Clear, limits.Pan.Usable
	report, err := r.lit.Compute(s.Arena, light.Request{
		Wanted: optics.Wanted{Shutter: unit.Known(light.UsualShutter), Stop: unit.Known(use.Stop)},
		Body:   s.Kit.BodyOf(lens), Lens: unit.Known(lens), Holes: []string{hole},
	})
	if err != nil || !report.Known {
		return p, err
	}
	for _, row := range report.Holes[0].Zones {
		if row.Zone == "neutral" || strings.HasPrefix(row.Zone, "slot-"+p.End) || strings.HasPrefix(row.Zone, "corner-"+p.End) {
			p.Light = append(p.Light, row)
		}
	}
	return p, nil
}
