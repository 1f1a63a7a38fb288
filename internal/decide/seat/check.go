package seat

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/form"
)

// Limits of a night. A season has as many nights as the caller likes.
const (
	MostPeriods = 12
	MostHoles   = 64
	MostAsks    = 5000
)

// check reports what is wrong with a night.
func (n *Night) check() error {
	switch {
	case len(n.Worth) == 0 || len(n.Worth) > MostPeriods:
		return fmt.Errorf("%d periods; a game has 1 to %d", len(n.Worth), MostPeriods)
	case len(n.Holes) > MostHoles:
		return fmt.Errorf("%d holes; a game is seated at no more than %d", len(n.Holes), MostHoles)
	case len(n.Asks) > MostAsks:
		return fmt.Errorf("%d people ask; a game is seated for no more than %d", len(n.Asks), MostAsks)
	case !(n.Move >= 0) || math.IsInf(n.Move, 0):
		return fmt.Errorf("a move costs %g; write a number of 0 or more", n.Move)
	}
	for k, h := range n.Holes {
		if h == "" || slices.Contains(n.Holes[:k], h) {
			return fmt.Errorf("hole %s stands here twice, or has no name", form.Quote(h))
		}
	}
	met := map[string]bool{"": true}
	for _, a := range n.Asks {
		if met[a.Who] {
			return fmt.Errorf("%s asks twice, or has no name; keep one request", form.Quote(a.Who))
		}
		met[a.Who] = true
	}
	return errors.Join(n.checkWorth(), n.checkKept(), n.checkFixed())
}

func (n *Night) checkWorth() error {
	for p, period := range n.Worth {
		if len(period) != len(n.Asks) {
			return fmt.Errorf("period %d says what holes are worth to %d people; %d ask", p+1, len(period), len(n.Asks))
		}
		for i, worth := range period {
			if len(worth) != len(n.Holes) {
				return fmt.Errorf("period %d has the worth of %d holes to %s; there are %d", p+1, len(worth), n.Asks[i].Who, len(n.Holes))
			}
			for k, w := range worth {
				if math.IsNaN(w) || math.IsInf(w, 0) {
					return fmt.Errorf("period %d: hole %s is worth %g to %s; write a number", p+1, n.Holes[k], w, n.Asks[i].Who)
				}
			}
		}
	}
	return nil
}

func (n *Night) knownHole(hole string) error { return form.Known("hole", hole, n.Holes) }

func (n *Night) knownWho(who string) error {
	names := make([]string, len(n.Asks))
	for i, a := range n.Asks {
		names[i] = a.Who
	}
	return form.Known("person", who, names)
}

func (n *Night) knownPeriod(period, least int) error {
	if period >= least && period <= len(n.Worth) {
		return nil
	}
	return fmt.Errorf("no period %d; the game has 1 to %d", period, len(n.Worth))
}

func (n *Night) checkKept() error {
	for _, k := range n.Kept {
		if err := errors.Join(n.knownHole(k.Hole), n.knownPeriod(k.Period, 0)); err != nil {
			return fmt.Errorf("a hole kept: %w", err)
		}
	}
	return nil
}

// checkFixed reports seats by hand that cannot be, or not together.
func (n *Night) checkFixed() error {
	for k, s := range n.Fixed {
		if err := errors.Join(n.knownHole(s.Hole), n.knownWho(s.Who), n.knownPeriod(s.Period, 1)); err != nil {
			return fmt.Errorf("a seat given by hand: %w", err)
		}
		if n.closed(s) {
			return fmt.Errorf("hole %s in period %d is given to %s by hand and kept for others; take one back", s.Hole, s.Period, s.Who)
		}
		if n.worthOf(s) < 0 {
			return fmt.Errorf("hole %s in period %d is given to %s by hand, who cannot work it; give another", s.Hole, s.Period, s.Who)
		}
		for _, o := range n.Fixed[:k] {
			switch same := o.Period == s.Period || n.Whole; {
			case same && o.Hole == s.Hole && o.Who != s.Who:
				return fmt.Errorf("hole %s in period %d is given to both %s and %s; it holds one", s.Hole, s.Period, o.Who, s.Who)
			case same && o.Hole != s.Hole && o.Who == s.Who:
				return fmt.Errorf("%s is given both hole %s and hole %s in period %d; keep one", s.Who, o.Hole, s.Hole, s.Period)
			}
		}
	}
	return nil
}

// closed reports whether a hole is kept for others than who sits there.
func (n *Night) closed(s Seat) bool {
	shut := false
	for _, k := range n.Kept {
		if k.Hole == s.Hole && (k.Period == 0 || k.Period == s.Period) {
			if slices.Contains(k.For, s.Who) {
				return false
			}
			shut = true
		}
	}
	return shut
}

// worthOf returns what a seat is worth to who sits there, below zero where it cannot be.
func (n *Night) worthOf(s Seat) float64 {
	i := slices.IndexFunc(n.Asks, func(a Ask) bool { return a.Who == s.Who })
	return n.Worth[s.Period-1][i][slices.Index(n.Holes, s.Hole)]
}
