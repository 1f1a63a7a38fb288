package night

import (
	"cmp"
	"fmt"
	"math"
	"net/http"
	"slices"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/cores"
)

// picked is one person at a game: every hole with what it is worth to them, and what it
// would cost the others.
type picked struct {
	game.Ask
	ByHand bool
	Card   string // the link of their card; ""
	Rows   []wishRow
}

// wishRow is a hole for somebody, for the whole game.
type wishRow struct {
	Hole  string
	Why   string  // what it is worth, or why it cannot be
	Can   bool    // it may be asked for
	Has   bool    // they have it in every period
	Value float64 // by period, added up
	Price string  // what it would cost, and whom
}

// pick tells what each hole would be to somebody who asks for the game. The prices are the
// exact ones: each is a seating of its own, with the wish fixed.
func (p *gamePage) pick(r *http.Request, who string) (*picked, error) {
	k := slices.IndexFunc(p.asks, func(a game.Ask) bool { return a.ID == who })
	if k < 0 {
		return nil, shell.Refuse(http.StatusNotFound, "They do not ask for this game.", "Look at the game again.")
	}
	out := &picked{Ask: p.asks[k], ByHand: p.People[k].ByHand, Card: p.People[k].Card, Rows: make([]wishRow, len(p.Season.Holes))}
	err := cores.Try(len(out.Rows), func(i int) (err error) {
		out.Rows[i], err = p.wish(r, p.asks[k], p.Season.Holes[i])
		return err
	})
	slices.SortStableFunc(out.Rows, func(a, b wishRow) int { return cmp.Compare(b.Value, a.Value) })
	return out, err
}

// wish tells one hole.
func (p *gamePage) wish(r *http.Request, a game.Ask, hole string) (wishRow, error) {
	row := wishRow{Hole: hole, Has: true}
	var wish []seat.Seat
	var barred string
	var shares []string
	for _, period := range p.Periods {
		w := p.Season.Worth(p.night.Table, p.Game, a, period, hole)
		if !w.Barred.IsZero() {
			barred = w.Barred.In(p.Units())
			continue
		}
		row.Value += w.Value
		shares = append(shares, shareOf(w))
		if row.Why == "" {
			row.Why = shell.Sentence(w.Why().In(p.Units()))
		}
		one := seat.Seat{Period: period, Hole: hole, Who: a.ID}
		row.Has = row.Has && slices.Contains(p.night.Seating.Seats, one)
		wish = append(wish, one)
	}
	if len(wish) == 0 {
		row.Why, row.Has = shell.Sentence(barred), false
		return row, nil
	}
	if len(slices.Compact(slices.Clone(shares))) > 1 {
		row.Why += " Period by period: " + strings.Join(shares, ", ") + "."
	}
	if row.Has {
		return row, nil
	}
	n := p.night.Night // without what hands gave them: the wish takes its place
	n.Fixed = slices.DeleteFunc(slices.Clone(n.Fixed), func(f seat.Seat) bool { return f.Who == a.ID })
	price, err := seat.PriceOf(r.Context(), &n, p.night.Before, p.night.Seating, wish)
	if err != nil && r.Context().Err() == nil {
		row.Price = shell.Sentence(err.Error())
		return row, nil
	}
	row.Can, row.Price = true, p.priceWords(a, price)
	return row, err
}

// shareOf is the share that a worth's sentence tells.
func shareOf(w game.Worth) string {
	if math.IsNaN(w.Goals) {
		return percent(w.Seen)
	}
	return percent(w.Goals)
}

// priceWords says what a wish costs all together, and what it means for the others.
func (p *gamePage) priceWords(a game.Ask, price seat.Price) string {
	out := fmt.Sprintf("costs all together %.2f of a night", max(0, price.Nights))
	for _, c := range price.Change {
		if c.Who != a.ID {
			out += "; " + p.Who(c.Who) + ": " + holesWords(c.From) + " becomes " + holesWords(c.To)
		}
	}
	return shell.Sentence(out)
}
