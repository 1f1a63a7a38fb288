package seat_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/measure/unit"
)

// invented makes a season of nights at which all like the same holes, seven tenths of it.
func invented(games, people, holes, periods int, move float64) (out []seat.Night) {
	rng := rand.New(rand.NewPCG(uint64(games), 3))
	for g := range games {
		n := seat.Night{Game: fmt.Sprint("game ", g), Move: move}
		for k := range holes {
			n.Holes = append(n.Holes, fmt.Sprint("H", k))
		}
		for i := range people {
			n.Asks = append(n.Asks, seat.Ask{Who: fmt.Sprintf("P%02d", i)})
		}
		common := make([]float64, holes)
		for k := range common {
			common[k] = rng.Float64()
		}
		for range periods {
			var period [][]float64
			for range people {
				var row []float64
				for k := range holes {
					row = append(row, 0.7*common[k]+0.3*rng.Float64())
				}
				period = append(period, row)
			}
			n.Worth = append(n.Worth, period)
		}
		out = append(out, n)
	}
	return out
}

// equal makes a season of nights at which every hole is worth 1 to everybody.
func equal(games, people, holes int) []seat.Night {
	out := invented(games, people, holes, 1, 0)
	for _, n := range out {
		for _, row := range n.Worth[0] {
			for k := range row {
				row[k] = 1
			}
		}
	}
	return out
}

func run(t testing.TB, nights []seat.Night, rule seat.Rule, seed uint64) seat.Season {
	t.Helper()
	s, err := seat.Run(context.Background(), nights, rule, seed)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Two who want the same seat take turns, the first by name beginning.
func TestTwoEqualPeopleTakeTurns(t *testing.T) {
	s := run(t, equal(6, 2, 1), seat.Level, 0)
	for g, n := range s.Nights {
		if want := fmt.Sprintf("P%02d", g%2); len(n.Seats) != 1 || n.Seats[0].Who != want {
			t.Errorf("game %d: %v; want %s", g, n.Seats, want)
		}
	}
	if x := s.Spread(); x.Least != 0.5 || x.Most != 0.5 || x.Deviation != 0 {
		t.Errorf("spread %+v", x)
	}
}

// Of n equal people at m equal holes each has m / n of all nights, within one night.
func TestEqualPeopleHaveEqualShares(t *testing.T) {
	const games, people, holes = 60, 7, 3
	s := run(t, equal(games, people, holes), seat.Level, 0)
	for _, a := range s.Ledger.Accounts() {
		if math.Abs(a.Had-games*float64(holes)/people) > 1 {
			t.Errorf("%s had %g of %d nights", a.Who, a.Had, games)
		}
	}
}

// The lottery of equals: a mean share of m / n, and shares whose variance over people is
// (m/n)(1 - m/n) / G on average, here over 40 seasons.
func TestLotteryOfEquals(t *testing.T) {
	const games, people, holes, seasons = 50, 8, 3, 40
	nights := equal(games, people, holes)
	sum := 0.0
	for seed := range uint64(seasons) {
		x := run(t, nights, seat.Lottery, seed).Spread()
		if math.Abs(x.Mean-float64(holes)/people) > 1e-12 {
			t.Fatalf("mean share %g", x.Mean)
		}
		sum += x.Deviation * x.Deviation
	}
	p := float64(holes) / people
	want := p * (1 - p) / games
	// The mean of 40 sample variances of 8 shares: about sqrt(2 / (7 x 40)) = 8.5 % off.
	if got := sum / seasons; math.Abs(got/want-1) > 3*0.085 {
		t.Errorf("variance of shares %g, expected %g", got, want)
	}
}

// First come, first served among equals: the first m have all, the others nothing.
func TestFirstComeHasAll(t *testing.T) {
	s := run(t, equal(10, 5, 2), seat.FirstCome, 0)
	for i, a := range s.Ledger.Accounts() {
		if want := map[bool]float64{true: 1}[i < 2]; a.Share() != unit.Known(want) {
			t.Errorf("%s has a share of %v, want %g", a.Who, a.Share(), want)
		}
	}
}

// A season of people with other tastes is nearly level, nearly as high as any rule
// could be, and every night of it is proved.
func TestSeasonIsLevel(t *testing.T) {
	nights := invented(60, 9, 5, 3, 0.05)
	s := run(t, nights, seat.Level, 0)
	ceiling, err := s.Ceiling(context.Background(), nights)
	if err != nil {
		t.Fatal(err)
	}
	x := s.Spread()
	if x.Most-x.Least > 0.03 || x.Least > ceiling || x.Least < 0.9*ceiling || s.Proved[seat.NotProved] > 0 {
		t.Errorf("from %g to %g, ceiling %g, proved %v", x.Least, x.Most, ceiling, s.Proved)
	}
	for _, other := range []seat.Rule{seat.FirstCome, seat.Lottery} {
		if y := run(t, nights, other, 1).Spread(); y.Least >= x.Least || y.Most-y.Least <= x.Most-x.Least {
			t.Errorf("%s: from %g to %g; level: from %g to %g", other, y.Least, y.Most, x.Least, x.Most)
		}
	}
}

// The ceiling is never below what the best season in hindsight gives the worst off,
// found by trying every season of four nights.
func TestCeilingHolds(t *testing.T) {
	for games := range 4 {
		nights := invented(games+1, 3, 2, 1, 0)
		s := run(t, nights, seat.Level, 0)
		ceiling, err := s.Ceiling(context.Background(), nights)
		if err != nil {
			t.Fatal(err)
		}
		all := seatings(3, 2)
		best := 0.0
		var try func(g int, had []float64)
		try = func(g int, had []float64) {
			if g == len(nights) {
				best = max(best, slices.Min(had)/float64(g))
				return
			}
			for _, at := range all {
				now := slices.Clone(had)
				for i, h := range at {
					if h >= 0 {
						now[i] += nights[g].Worth[0][i][h] / slices.Max(nights[g].Worth[0][i])
					}
				}
				try(g+1, now)
			}
		}
		try(0, make([]float64, 3))
		if ceiling < best-1e-9 || s.Spread().Least > best+1e-9 {
			t.Errorf("%d games: level %g, best in hindsight %g, ceiling %g", games+1, s.Spread().Least, best, ceiling)
		}
	}
}

// What is entered of who came late, and of who did not come.
func TestEntering(t *testing.T) {
	n := equal(1, 4, 2)[0]
	n.Asks[1].NoShow, n.Asks[2].NoShow, n.Asks[3].Late = true, true, true
	s, err := seat.Assign(context.Background(), &n, nil)
	if err != nil {
		t.Fatal(err)
	}
	if s.People[3].Why != seat.CameLate || s.People[2].Why != seat.Others {
		t.Fatalf("%+v", s.People)
	}
	var l seat.Ledger
	l.Enter(&n, s)
	want := []seat.Account{
		{Who: "P00", Asked: 1, Had: 1, Games: 1, Seated: 1},
		{Who: "P01", Asked: 1, Had: 1, Games: 1, Seated: 1, Missed: 1},
		{Who: "P03", Games: 1, Late: 1},
	}
	if got := l.Accounts(); !slices.Equal(got, want) {
		t.Errorf("%+v\nwant %+v", got, want)
	}
	if l.Level() != 1 || l.Owed("P00") != 0 || !want[2].Share().IsZero() {
		t.Errorf("level %g, owed %g", l.Level(), l.Owed("P00"))
	}
}

// A season that is stopped says so.
func TestRunEndsWithItsContext(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := seat.Run(ctx, equal(3, 3, 2), seat.Level, 0); err == nil {
		t.Error("a stopped season was seated")
	}
}

// The season of the issue: 1,312 games, 14 people, 8 holes, three periods with moves.
func BenchmarkSeason(b *testing.B) {
	nights := invented(1312, 14, 8, 3, 0.1)
	for b.Loop() {
		s, err := seat.Run(context.Background(), nights, seat.Level, 1)
		if err != nil || s.Proved[seat.NotProved] > 0 {
			b.Fatal(err, s.Proved)
		}
	}
}

// A game is seated alone as it is in its season, where the ledger before it is known.
func TestOneGameAlone(t *testing.T) {
	nights := invented(5, 7, 3, 3, 0.1)
	wish := []seat.Seat{{Period: 2, Hole: "H1", Who: "P03"}}
	all, err := seat.Solve(context.Background(), nights, seat.Question{Only: "game 4", Wish: wish})
	if err != nil {
		t.Fatal(err)
	}
	before := run(t, nights[:4], seat.Level, 0).Ledger
	one, err := seat.One(context.Background(), &nights[4], &before, wish)
	if err != nil {
		t.Fatal(err)
	}
	season := run(t, nights, seat.Level, 0)
	if a, _ := all.Night(); !slices.Equal(a.Seats, season.Nights[4].Seats) || !slices.Equal(a.Seats, one.Season.Nights[0].Seats) || all.Price.Nights != one.Price.Nights {
		t.Errorf("%+v\nalone %+v\nin its season %+v", a.Seats, one.Season.Nights[0].Seats, season.Nights[4].Seats)
	}
	if !slices.Equal(season.Ledger.Accounts(), one.Season.Ledger.Accounts()) || before.Accounts()[0].Games != 4 {
		t.Errorf("ledger %+v\nalone %+v", season.Ledger.Accounts(), one.Season.Ledger.Accounts())
	}
}

// Who always has the hole that all want is ahead of the level, and the others pay.
func TestUnfairWish(t *testing.T) {
	nights := invented(40, 6, 3, 1, 0)
	for i := range nights { // one hole that everybody likes best
		for _, row := range nights[i].Worth[0] {
			row[0] = 1
		}
	}
	a, err := seat.Solve(context.Background(), nights, seat.Question{Compare: true, Wish: []seat.Seat{{Period: 1, Hole: "H0", Who: "P02"}}})
	if err != nil {
		t.Fatal(err)
	}
	wish := a.Compare[2]
	if x, y := a.Season.Spread(), wish.Spread(); wish.Rule != seat.WithWish || y.BestOff != "P02" || y.Most != 1 || y.Least >= x.Least {
		t.Errorf("%+v\nwith the wish %+v", x, y)
	}
}

// One change of a night with its second best and the price of a wish, as the desk asks.
func BenchmarkOneChange(b *testing.B) {
	nights := invented(1, 14, 8, 3, 0.1)
	wish := []seat.Seat{{Period: 1, Hole: "H0", Who: "P05"}, {Period: 2, Hole: "H0", Who: "P05"}, {Period: 3, Hole: "H0", Who: "P05"}}
	for b.Loop() {
		if _, err := seat.One(context.Background(), &nights[0], nil, wish); err != nil {
			b.Fatal(err)
		}
	}
}
