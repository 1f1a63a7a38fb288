package league

import (
	"context"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
)

// Season is what is asked about a season.
type Season struct {
	Games  Document
	Beside []Document // the files that it names, each called as it is there
	Rules  []Document // in force together
	Drawn  int        // a season of so many games drawn from its own; 0: its own
	Seed   uint64     // of what is drawn
}

// Open reads the documents. Errors name the document, the line and the field.
func (q Season) Open() (game.Season, error) {
	sets, err := inForce(q.Rules)
	if err != nil {
		return game.Season{}, err
	}
	s, err := game.Read(q.Games.Name, strings.NewReader(q.Games.Text), q.beside)
	if err != nil {
		return s, err
	}
	return s.Under(sets), nil
}

func (q Season) beside(path string) (io.ReadCloser, error) {
	i := slices.IndexFunc(q.Beside, func(d Document) bool { return d.Name == path })
	if i < 0 {
		return nil, fs.ErrNotExist
	}
	return io.NopCloser(strings.NewReader(q.Beside[i].Text)), nil
}

// Played is what a season comes to when its games are seated one after another, each with
// the ledger of those before.
type Played struct {
	Name, Arena   string
	Games         int     // that are played
	Requests, Met int     // for a game by one person; those with a seat
	Asked, Had    float64 // nights by the ledger, without unit
	Value         float64 // what all seats are worth less the moves, in the unit of package game's worth
	Proved        int     // games whose seating is proved the best
	Even          seat.Spread
	Short         []Short
	NotKept       int // holes that rules keep for cameras and that are not to be had, by game and period
}

// Short is how many requests have no seat for one reason.
type Short struct {
	Why      seat.Why
	Requests int
	First    string // the first such game
}

// Share is what all together had of what they asked for, in [0, 1]; 0 where nobody asked.
func (p Played) Share() float64 {
	if p.Asked <= 0 {
		return 0
	}
	return p.Had / p.Asked
}

// Play seats the season's games. Progress is told by [cores.Tell]. Errors are those of
// Open and of [seat.Solve].
func (q Season) Play(ctx context.Context) (Played, error) {
	s, err := q.Open()
	if err != nil {
		return Played{}, err
	}
	table, err := s.Score(ctx)
	if err != nil {
		return Played{}, err
	}
	nights := s.Nights(table)
	if q.Drawn > 0 && len(nights) > 0 {
		nights = seat.Drawn(nights, q.Drawn, q.Seed)
	}
	a, err := seat.Solve(ctx, nights, seat.Question{})
	if err != nil {
		return Played{}, fmt.Errorf("%s: %w", q.Games.Name, err)
	}
	out := Played{Name: s.Name, Arena: s.Arena.Name, Games: len(a.Season.Nights), Even: a.Season.Spread()}
	for _, account := range a.Season.Ledger.Accounts() {
		out.Asked, out.Had = out.Asked+account.Asked, out.Had+account.Had
	}
	for _, n := range a.Season.Nights {
		out.night(n)
	}
	return out, nil
}

// night adds a game up.
func (p *Played) night(n seat.Seating) {
	p.Value += n.Value
	if n.Proof.By != seat.NotProved {
		p.Proved++
	}
	for _, u := range n.Unkept {
		p.NotKept += u.Lacks
	}
	p.Requests += len(n.People)
	for _, o := range n.People {
		if o.Why == "" {
			p.Met++
			continue
		}
		i := slices.IndexFunc(p.Short, func(s Short) bool { return s.Why == o.Why })
		if i < 0 {
			i, p.Short = len(p.Short), append(p.Short, Short{Why: o.Why, First: n.Game})
		}
		p.Short[i].Requests++
	}
}
