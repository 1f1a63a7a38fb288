package play

import (
	"context"
	"errors"
	"math/rand/v2"

	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/survey/rink"
)

// MaxMoments is the most moments a set may hold: about 290 MB.
const MaxMoments = 1_000_000

// Errors of [Sample] and [Around].
var (
	errCount    = errors.New("moments: write a number from 1 to 1000000")
	errNoEvents = errors.New("moments: no events to build them round")
)

// ErrSmall says that a rink is too small for sixteen people and two goals.
var ErrSmall = errors.New("the rink is too small to hold a game: the sampler needs at least 20 m by 10 m")

// The least rink that sixteen people and two goals fit in with room to play.
const leastLength, leastWidth = 20.0, 10.0

// Sample draws n moments on a rink. The same seed gives the same moments to
// the last bit, whatever the number of cores: moment i has a stream of its own.
//
// Errors: n outside 1..MaxMoments, assumptions that [Assumptions.Check]
// refuses, a rink under 20 m by 10 m; ctx's, in whose time the moments are made.
func Sample(ctx context.Context, r rink.Rink, a Assumptions, seed uint64, n int) (*Set, error) {
	lay := LayoutOf(r)
	if !a.Game.CrossIce {
		return build(ctx, lay, a, seed, n, func(s *scene, _ int) { s.draw() })
	}
	zone := acrossOf(lay)
	set, err := build(ctx, zone.small, a, seed, n, func(s *scene, _ int) { s.draw(); s.m = zone.turned(s.m) })
	if err == nil {
		set.Layout = Field(r, a.Game)
	}
	return set, err
}

// runLength is how many moments one core makes at a time.
const runLength = 256

// build fills a set in parallel; fill writes moment i into the scene.
func build(ctx context.Context, lay Layout, a Assumptions, seed uint64, n int, fill func(s *scene, i int)) (*Set, error) {
	if n < 1 || n > MaxMoments {
		return nil, errCount
	}
	if err := a.Check(); err != nil {
		return nil, err
	}
	if 2*lay.HalfLength < leastLength || 2*lay.HalfWidth < leastWidth {
		return nil, ErrSmall
	}
	set := NewSet(lay, n)
	set.crew = a.Game.crew()
	err := cores.EachUntil(ctx, "making moments", (n+runLength-1)/runLength, func(run int) {
		src := rand.NewPCG(0, 0)
		rng := rand.New(src)
		for i := run * runLength; i < min(n, (run+1)*runLength); i++ {
			src.Seed(seed, mix(uint64(i)))
			s := scene{lay: lay, ass: &a, rng: rng}
			fill(&s, i)
			set.Put(i, s.m)
		}
	})
	if err != nil {
		return nil, err
	}
	return set, nil
}

// mix spreads neighbouring indices over all 64 bits, so that their streams
// differ: the finaliser of the SplitMix64 generator (Steele, Lea, Flood 2014).
func mix(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// draw makes one moment from the assumptions alone.
func (s *scene) draw() {
	phase, period, team := s.ass.phase(s.rng.Float64()), 1+s.rng.IntN(3), s.team()
	s.begin(phase, period, team, s.ass.Game.Ends.Attacks(team, period))
	s.play(nil)
	s.absent()
}

func (s *scene) team() int {
	if s.chance(s.ass.HomeShare) {
		return 0
	}
	return 1
}

// begin sets what a moment is about; end is the one attacked, +1 or -1.
func (s *scene) begin(p Phase, period, team, end int) {
	s.m.Phase, s.m.Period, s.m.Team, s.m.End = p, period, team, end
	s.m.Weight = s.ass.Weight[p]
	if team == 0 {
		s.m.Weight *= s.ass.HomeWeight
	}
	s.bank = s.ass.Game.banks(s.lay)[team]
	s.benchSide = s.bank.side * float64(s.m.End)
}

// play places puck and people; a given puck place (attack's frame) replaces
// the phase's own.
func (s *scene) play(at *Puck) {
	switch s.m.Phase {
	case Rush:
		s.rush(at)
	case ZonePlay:
		s.zonePlay(at)
	case NetFront:
		s.netFront(at)
	case FaceOff:
		s.faceOff(at)
	case Celebration:
		s.celebration(at)
	default:
		s.bench(at)
	}
	if s.m.End < 0 {
		s.turn()
	}
}
