package seat_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/measure/unit"
)

func assign(t testing.TB, n *seat.Night) seat.Seating {
	t.Helper()
	s, err := seat.Assign(context.Background(), n, nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Where all are alike and every hole is the same, names decide, whatever the order in
// which they were written down.
func TestEqualSeatingsGoByName(t *testing.T) {
	n := equal(1, 14, 8)[0]
	want := assign(t, &n).Seats
	for k, s := range want {
		if s.Who != fmt.Sprintf("P%02d", k) || s.Hole != fmt.Sprint("H", k) {
			t.Errorf("seat %d: %+v", k, s)
		}
	}
}

// The order of people, of holes and of reservations changes nothing.
func TestOrderChangesNothing(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 20 {
		n := invented(1, 10, 5, 3, 0.1)[0]
		want := byNames(assign(t, &n).Seats)
		people, holes := rng.Perm(len(n.Asks)), rng.Perm(len(n.Holes))
		m := seat.Night{Game: n.Game, Move: n.Move}
		for _, k := range holes {
			m.Holes = append(m.Holes, n.Holes[k])
		}
		for _, i := range people {
			m.Asks = append(m.Asks, n.Asks[i])
		}
		for _, period := range n.Worth {
			var rows [][]float64
			for _, i := range people {
				var row []float64
				for _, k := range holes {
					row = append(row, period[i][k])
				}
				rows = append(rows, row)
			}
			m.Worth = append(m.Worth, rows)
		}
		if got := byNames(assign(t, &m).Seats); got != want {
			t.Fatalf("%s\nwant %s", got, want)
		}
	}
}

func byNames(all []seat.Seat) string {
	var lines []string
	for _, s := range all {
		lines = append(lines, fmt.Sprint(s))
	}
	slices.Sort(lines)
	return strings.Join(lines, "\n")
}

// The second best seating: no other is better, by every seating of small nights, and it
// is another one.
func TestNextIsSecondBest(t *testing.T) {
	for seed := range uint64(40) {
		rng := rand.New(rand.NewPCG(seed, 8))
		n := &seat.Night{Holes: []string{"A", "B"}, Asks: []seat.Ask{{Who: "x"}, {Who: "y"}, {Who: "z"}}, Worth: [][][]float64{nil}}
		for range n.Asks {
			n.Worth[0] = append(n.Worth[0], []float64{rng.Float64(), rng.Float64()})
		}
		s := assign(t, n)
		next, is, err := seat.Next(context.Background(), n, nil, s)
		if err != nil || !is || byNames(next.Seats) == byNames(s.Seats) {
			t.Fatal(err, is, next.Seats, s.Seats)
		}
		var values []float64
		for _, at := range seatings(3, 2) {
			v := 0.0
			for i, h := range at {
				if h >= 0 {
					v += n.Worth[0][i][h] / slices.Max(n.Worth[0][i])
				}
			}
			values = append(values, v)
		}
		slices.Sort(values)
		if want := values[len(values)-2]; math.Abs(next.Proof.Value-want) > 1e-4 {
			t.Errorf("seed %d: %g, second of all %g", seed, next.Proof.Value, want)
		}
	}
}

// A wish: B1's worth to ann is known, and what bo loses by it.
func TestPriceOfAWish(t *testing.T) {
	n := &seat.Night{Holes: []string{"A1", "B1"}, Asks: []seat.Ask{{Who: "ann"}, {Who: "bo"}},
		Worth: [][][]float64{{{0.5, 0.4}, {0.2, 0.8}}}}
	s := assign(t, n)
	p, err := seat.PriceOf(context.Background(), n, nil, s, []seat.Seat{{Period: 1, Hole: "B1", Who: "ann"}})
	if err != nil {
		t.Fatal(err)
	}
	// 1 + 1 nights become 0.4/0.5 + 0.2/0.8; worth 1.3 becomes 0.6.
	if math.Abs(p.Nights-0.95) > 1e-12 || math.Abs(p.Worth-0.7) > 1e-12 {
		t.Errorf("%g nights, %g of worth", p.Nights, p.Worth)
	}
	if len(p.Change) != 2 || p.Change[0].Who != "bo" || math.Abs(p.Change[0].By+0.6) > 1e-12 || p.Change[1].To[0] != "B1" {
		t.Errorf("%+v", p.Change)
	}
	if p, err = seat.PriceOf(context.Background(), n, nil, s, []seat.Seat{{Period: 1, Hole: "A1", Who: "ann"}}); err != nil || p.Nights != 0 || len(p.Change) != 0 {
		t.Errorf("what is so already costs %g, %v, %v", p.Nights, p.Change, err)
	}
}

// Why somebody has no seat.
func TestWhyNoSeat(t *testing.T) {
	n := &seat.Night{Holes: []string{"A1", "B1"}, Kept: []seat.Kept{{Hole: "B1", For: []string{"tv"}}},
		Asks:  []seat.Ask{{Who: "firm", Must: true}, {Who: "kept"}, {Who: "late", Late: true}, {Who: "none"}, {Who: "rest"}, {Who: "tv"}},
		Worth: [][][]float64{{{1, -1}, {-1, 1}, {1, 1}, {-1, -1}, {1, -1}, {-1, 0.1}}}}
	s := assign(t, n)
	want := map[string]seat.Why{"firm": "", "kept": seat.KeptAll, "late": seat.CameLate, "none": seat.NoHole, "rest": seat.MustFirst, "tv": ""}
	for _, o := range s.People {
		if o.Why != want[o.Who] {
			t.Errorf("%s: %q, want %q", o.Who, o.Why, want[o.Who])
		}
	}
}

// Seats that cannot be are refused in words, by name.
func TestBadNights(t *testing.T) {
	sound := func() *seat.Night {
		n := equal(1, 3, 2)[0]
		return &n
	}
	fixed := func(seats ...seat.Seat) func(n *seat.Night) { return func(n *seat.Night) { n.Fixed = seats } }
	for _, c := range []struct {
		spoil func(n *seat.Night)
		says  string
	}{
		{fixed(seat.Seat{Period: 1, Hole: "H0", Who: "P00"}, seat.Seat{Period: 1, Hole: "H0", Who: "P01"}), "hole H0 in period 1 is given to both P00 and P01; it holds one"},
		{fixed(seat.Seat{Period: 1, Hole: "H0", Who: "P00"}, seat.Seat{Period: 1, Hole: "H1", Who: "P00"}), "P00 is given both hole H0 and hole H1 in period 1; keep one"},
		{fixed(seat.Seat{Period: 1, Hole: "H0", Who: "P0O"}), `no person is called "P0O"; did you mean P00?`},
		{fixed(seat.Seat{Period: 1, Hole: "Q7", Who: "P00"}), `no hole is called "Q7"; known: H0 or H1`},
		{fixed(seat.Seat{Period: 2, Hole: "H0", Who: "P00"}), "no period 2; the game has 1 to 1"},
		{func(n *seat.Night) {
			n.Worth[0][0][0] = seat.Impossible
			fixed(seat.Seat{Period: 1, Hole: "H0", Who: "P00"})(n)
		}, "given to P00 by hand, who cannot work it; give another"},
		{func(n *seat.Night) {
			n.Kept = []seat.Kept{{Hole: "H0", For: []string{"P01"}}}
			fixed(seat.Seat{Period: 1, Hole: "H0", Who: "P00"})(n)
		}, "kept for others; take one back"},
		{func(n *seat.Night) { n.Kept = []seat.Kept{{Hole: "H9"}} }, `a hole kept: no hole is called "H9"; known: H0 or H1`},
		{func(n *seat.Night) { n.Asks[1].Who = "P00" }, `"P00" asks twice`},
		{func(n *seat.Night) { n.Holes[1] = "H0" }, `hole "H0" stands here twice`},
		{func(n *seat.Night) { n.Worth = nil }, "0 periods; a game has 1 to 12"},
		{func(n *seat.Night) { n.Worth[0][2][1] = math.NaN() }, "hole H1 is worth NaN to P02"},
		{func(n *seat.Night) { n.Worth[0] = n.Worth[0][:2] }, "says what holes are worth to 2 people; 3 ask"},
		{func(n *seat.Night) { n.Worth[0][1] = n.Worth[0][1][:1] }, "has the worth of 1 holes to P01; there are 2"},
		{func(n *seat.Night) { n.Move = -1 }, "a move costs -1"},
		{func(n *seat.Night) { n.Asks = make([]seat.Ask, seat.MostAsks+1) }, "5001 people ask; a game is seated for no more than 5000"},
		{func(n *seat.Night) { n.Holes = make([]string, seat.MostHoles+1) }, "65 holes; a game is seated at no more than 64"},
	} {
		n := sound()
		c.spoil(n)
		if _, err := seat.Assign(context.Background(), n, nil); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%v; want %q", err, c.says)
		}
	}
}

// A thousand people at one game are seated, and proved.
func TestAThousandPeople(t *testing.T) {
	n := invented(1, 1000, 8, 3, 0.1)[0]
	s := assign(t, &n)
	if len(s.Seats) != 24 || s.Proof.By == seat.NotProved {
		t.Errorf("%d seats, proved by %s", len(s.Seats), s.Proof.By)
	}
}

// Seats that a changed plan touches are listed; nothing else is.
func TestStale(t *testing.T) {
	was := map[string]seat.Standing{"a": {Along: 1, Height: 1.5}, "b": {Along: 50, Height: 1.5}, "c": {Along: 9}, "d": {Along: 20}, "e": {Along: 30}, "f": {Along: 40, Height: 1.5}}
	is := map[string]seat.Standing{"a": {Along: 159.9, Height: 1.5}, "b": {Along: 50.1, Height: 1.5}, "c": {Along: 9, Off: true}, "d": {Along: 20, Refused: true}, "f": {Along: 40, Height: 1.2}}
	var seats []seat.Seat
	for _, h := range []string{"f", "e", "d", "c", "b", "a"} {
		seats = append(seats, seat.Seat{Period: 1, Hole: h, Who: "w"})
	}
	var got []string
	for _, r := range seat.Stale(seats, was, is, 160*unit.Metre, 0.15*unit.Metre) {
		got = append(got, fmt.Sprintf("%s %s %.2f", r.Seat.Hole, r.Why, r.By.Metres()))
	}
	if want := "a moved 1.10; c off 0.00; d refused 0.00; e gone 0.00; f moved 0.30"; strings.Join(got, "; ") != want {
		t.Errorf("%s\nwant %s", strings.Join(got, "; "), want)
	}
}
