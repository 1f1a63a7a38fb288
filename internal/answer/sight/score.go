package sight

import (
	"context"
	"fmt"
	"sync/atomic"

	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// Judgement says what a good view is. The score of a moment from a hole is a
// product of four factors, each in [0, 1]:
//
//	reach    1 when some lens of the kit can be aimed at the subject's face
//	         (T >= 0.5), else 0
//	open     share of the subject's head and trunk that nobody and nothing
//	         hides: persons, goal frame, net, the boards' edge
//	face     1 while the face is turned at most FaceFull away from the lens,
//	         falling with the cosine to 0 at FaceMost
//	size     how well the best fitting lens, held landscape or portrait, fills
//	         the frame with the subject
type Judgement struct {
	FaceFull, FaceMost unit.Angle
	// ShareLeast is the share of the frame's height that a subject must fill
	// to count at all, from 0 to 1.
	ShareLeast float64
	// ShareFull is the share from which a larger subject is no better, up to
	// the full frame; between 0 and 1.
	ShareFull float64
	// NetPass is the share of a view that is left behind one layer of net,
	// from 0 to 1.
	NetPass float64
}

// DefaultJudgement is the shipped judgement; own choice, not measured. A face
// turned by 100 degrees shows no more than an ear; a player who fills a tenth
// of the frame is a dot in print; one layer of net costs a quarter.
func DefaultJudgement() Judgement {
	return Judgement{
		FaceFull: 30 * unit.Degree, FaceMost: 100 * unit.Degree,
		ShareLeast: 0.10, ShareFull: 0.35, NetPass: 0.75,
	}
}

// Check reports the first number that makes no sense.
func (j Judgement) Check() error {
	switch {
	case !(j.FaceFull >= 0 && j.FaceFull < j.FaceMost && j.FaceMost <= 180*unit.Degree):
		return fmt.Errorf("face: full up to %.4g deg, none from %.4g deg: write two angles, the first smaller, from 0 to 180 deg", j.FaceFull.Degrees(), j.FaceMost.Degrees())
	case !(j.ShareLeast >= 0 && j.ShareLeast < j.ShareFull && j.ShareFull <= 1):
		return fmt.Errorf("size: nothing up to %g of the frame, full from %g: write two shares, the first smaller, from 0 to 1", j.ShareLeast, j.ShareFull)
	case !(j.NetPass >= 0 && j.NetPass <= 1):
		return fmt.Errorf("net: %g: write a share from 0 to 1", j.NetPass)
	}
	return nil
}

// Scorer scores moments for the holes of one rink with one kit. It is made
// once and may be used by many goroutines.
type Scorer struct {
	arena    arena.Arena
	judge    Judgement
	settings []lensSetting
	tracer   tracer // a use for each of the settings
}

// NewScorer makes a scorer. The camera is a lens's own body, else the kit's first; the lenses that
// the arena names, or all of the kit's, are at hand, without hoods.
func NewScorer(a arena.Arena, k kit.Kit, j Judgement) (*Scorer, error) {
	if err := j.Check(); err != nil {
		return nil, err
	}
	settings, err := settingsOf(a, k)
	if err != nil {
		return nil, err
	}
	s := &Scorer{arena: a, judge: j, settings: settings}
	for _, l := range settings {
		s.tracer.uses = append(s.tracer.uses, l.lensUse)
	}
	return s, nil
}

// Scores holds a score for each hole and moment, hole by hole.
type Scores struct {
	Holes, Moments int
	Value          []float32 // in [0, 1], without unit; hole i's moments at i*Moments
}

// Row returns hole i's scores, one for each moment, each in [0, 1], without unit.
func (s Scores) Row(i int) []float32 { return s.Value[i*s.Moments : (i+1)*s.Moments] }

// Mean returns hole i's mean score over the moments by their weight, in [0, 1],
// without unit.
func (s Scores) Mean(i int, weight []float32) float64 {
	var sum, all float64
	for m, v := range s.Row(i) {
		sum += float64(v) * float64(weight[m])
		all += float64(weight[m])
	}
	if all == 0 {
		return 0
	}
	return sum / all
}

// blockSize is how many moments are scored for all holes before the next
// ones: their persons (about 70 kB) stay in the core's cache meanwhile.
const blockSize = 256

// Score scores every moment for every hole. The result does not depend on the
// number of cores. done, when not nil, is called now and then with the number
// of moments finished so far, from several goroutines.
//
// Errors: ctx's, or a hole that lies in no pane.
func (s *Scorer) Score(ctx context.Context, holes []glass.Hole, set *play.Set, done func(moments int)) (Scores, error) {
	openings := make([]arena.Opening, len(holes))
	for i, h := range holes {
		var err error
		if openings[i], err = s.arena.OpeningOf(h); err != nil {
			return Scores{}, err
		}
	}
	return s.scoreAll(ctx, openings, set, done)
}

func (s *Scorer) scoreAll(ctx context.Context, openings []arena.Opening, set *play.Set, done func(moments int)) (Scores, error) {
	out := Scores{Holes: len(openings), Moments: set.Len(), Value: make([]float32, len(openings)*set.Len())}
	views, err := s.views(openings)
	if err != nil {
		return Scores{}, err
	}
	blocks := (set.Len() + blockSize - 1) / blockSize
	var finished atomic.Int64
	_, err = cores.With(ctx, blocks, func() *block { return newBlock(s, set) }, func(b *block, k int) {
		from, to := k*blockSize, min((k+1)*blockSize, set.Len())
		b.load(from, to)
		for i := range views {
			b.score(&views[i], out.Row(i)[from:to])
		}
		if n := finished.Add(int64(to - from)); done != nil {
			done(int(n))
		}
	})
	return out, err
}

// view is a hole as the kernel needs it.
type view struct {
	eye  Eye
	aims *traces
}

func (s *Scorer) views(openings []arena.Opening) ([]view, error) {
	out := make([]view, len(openings))
	for i, o := range openings {
		a, err := s.tracer.trace(o)
		if err != nil {
			return nil, err
		}
		out[i] = view{EyeOf(s.arena, o), a}
	}
	return out, nil
}
