package seat

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"example.org/rinkpane/internal/measure/cores"
)

// Rule is by what rule a season's nights are seated.
type Rule string

// The rules: the house's own, and two to hold it against.
const (
	Level     Rule = "level"      // the best night, each weighed by how far behind they are
	FirstCome Rule = "first come" // in the order of requests, each takes the best that is left
	Lottery   Rule = "lottery"    // the same in an order drawn anew for every game
	WithWish  Rule = "with wish"  // the level rule, round seats that somebody always has
)

// Season is a row of nights seated one after another by one rule.
type Season struct {
	Rule   Rule
	Nights []Seating
	Ledger Ledger
	Course []Spread // after each night
	// Proved counts how nights were proved, by the level rule only.
	Proved map[Proved]int
	// mean is each one's weight over the nights they asked for, added up.
	mean map[string]float64
}

// Run seats a season from its first night to its last. The seed is for the lottery.
func Run(ctx context.Context, nights []Night, rule Rule, seed uint64) (Season, error) {
	s := Season{Rule: rule, Proved: map[Proved]int{}, mean: map[string]float64{}}
	draw := rand.New(rand.NewPCG(seed, uint64(len(nights))))
	for i := range nights {
		n := &nights[i]
		r, err := enter(n)
		if err != nil {
			return s, inGame(n, err)
		}
		var night Seating
		switch rule {
		case Level, WithWish:
			night = r.assign(ctx, s.Ledger.weights(n))
			s.Proved[night.Proof.By]++
		case FirstCome:
			night = r.queue(arrival(n))
		default:
			night = r.queue(draw.Perm(len(n.Asks)))
		}
		if ctx.Err() != nil {
			return s, ctx.Err()
		}
		for _, o := range night.People {
			s.mean[o.Who] += o.Weight
		}
		s.Ledger.Enter(n, night)
		s.Nights = append(s.Nights, night)
		s.Course = append(s.Course, s.Spread())
		cores.Tell(ctx, "seating games by "+string(rule), float64(i+1)/float64(len(nights)))
	}
	return s, nil
}

// arrival returns the requests in the order in which they came.
func arrival(n *Night) []int {
	out := make([]int, len(n.Asks))
	for i := range out {
		out[i] = i
	}
	slices.SortStableFunc(out, func(a, b int) int { return n.Asks[a].Asked.Compare(n.Asks[b].Asked) })
	return out
}

// Spread is how even a season was: the shares of what each could have had, of all
// who asked for a night or more.
type Spread struct {
	Least, Most   float64 // shares, in [0, 1]
	Mean          float64 // share, in [0, 1]
	Deviation     float64 // standard deviation of the shares
	WorstOff      string  // who has the least; of equals the first by name
	BestOff       string
	Nights, Games int // nights had by all, rounded down; games
}

// Spread measures the season.
func (s Season) Spread() Spread {
	out := Spread{Least: math.Inf(1), Most: math.Inf(-1), Games: len(s.Nights)}
	var n, sum, squares, nights float64
	for _, a := range s.Ledger.Accounts() {
		x, asked := a.Share().Get()
		if !asked {
			continue
		}
		n, sum, squares, nights = n+1, sum+x, squares+x*x, nights+a.Had
		if x < out.Least {
			out.Least, out.WorstOff = x, a.Who
		}
		if x > out.Most {
			out.Most, out.BestOff = x, a.Who
		}
	}
	if n == 0 {
		return Spread{Games: len(s.Nights)}
	}
	out.Mean, out.Nights = sum/n, int(nights)
	out.Deviation = math.Sqrt(max(0, squares/n-out.Mean*out.Mean))
	return out
}

// Drawn returns so many nights drawn from others with the caller's seed, each with
// the order of its requests as it was: a season to try a rule on.
func Drawn(nights []Night, games int, seed uint64) []Night {
	draw := rand.New(rand.NewPCG(seed, uint64(games)))
	out := make([]Night, 0, games)
	for range games {
		out = append(out, nights[draw.IntN(len(nights))])
	}
	return out
}
