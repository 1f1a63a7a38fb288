package plan

import (
	"errors"
	"fmt"
	"slices"
	"sync"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Live answers at once what a change to a plan does: for a hole under
// somebody's hand. It works out what follows from the change alone, and keeps
// the rest from question to question, as much as a few arenas need.
//
//	changed                 kept
//	findings, verdict       boards where a hole may stand  } as long as only
//	the picked hole's       traced lens limits             } holes change
//	wedge, light            limits of each lens in each shape of hole met
//
// The answers are the same as those of [Maker.Make]. It may be used by many at once.
type Live struct {
	maker  Maker
	mu     sync.Mutex
	ground []*ground // newest use first
	limits map[fit.Case]fit.Limits
	losses map[fit.Case][]fit.LossRow
}

// NewLive returns a Live with nothing kept yet.
func NewLive(m Maker) *Live {
	return &Live{maker: m, limits: map[fit.Case]fit.Limits{}, losses: map[fit.Case][]fit.LossRow{}}
}

// Question is what a page wants to know besides the findings.
type Question struct {
	Hole  string      // the hole picked; "" for none
	Lens  string      // id of the lens in it; "" for the first in use that fits
	Focal unit.Length // an end of its range; 0 for the short end
	All   bool        // the limits of every lens in use, not only of the one picked
}

// Now is the answer: how the arena stands with the change.
type Now struct {
	Proof
	// Boards where a standard hole may stand, and where the survey lacks a number to say.
	Permitted, Undecided []rules.Interval
	Holes                []SurveyedHole // every hole, those turned off included
	Picked               *Picked        // nil when none is picked, or it is turned off
}

// Picked is the picked hole with the lens in it.
type Picked struct {
	SurveyedHole
	Fits   []LensFit // the lens picked; every lens in use when asked for all
	Lens   int       // which of Fits is picked
	Wedges []Wedge   // of the lens picked where it fits, and of all in use
	Light  []light.Row
	Loss   []fit.LossRow // of the lens picked, by pan
}

// Fit returns the fit of the lens that is picked.
func (p Picked) Fit() LensFit { return p.Fits[p.Lens] }

// Wedge is the outline of the ice that is seen at puck height.
type Wedge struct {
	Lens  string      // "" for any lens in use
	Focal unit.Length // 0 for any lens
	sight.Wedge
}

// ErrAsked marks an answer to a question about a hole or lens that is not there.
var ErrAsked = errors.New("the question cannot be answered")

// Try answers a question about an arena document. Errors are those of
// [arena.Document.Check], and ErrAsked.
func (l *Live) Try(doc *arena.Document, q Question) (Now, error) {
	a, _, err := l.maker.Arena(doc)
	if err != nil {
		return Now{}, err
	}
	g, err := l.groundOf(a)
	if err != nil {
		return Now{}, err
	}
	now := Now{Proof: l.maker.prove(doc, a), Permitted: g.permitted, Undecided: g.undecided, Holes: []SurveyedHole{}}
	for _, h := range a.Holes {
		now.Holes = append(now.Holes, now.mark(a, h))
	}
	if q.Hole == "" {
		return now, nil
	}
	at := slices.IndexFunc(now.Holes, func(m SurveyedHole) bool { return m.ID == q.Hole })
	if at < 0 {
		return Now{}, fmt.Errorf("%w: the arena has no hole %.40q", ErrAsked, q.Hole)
	}
	if now.Holes[at].State != glass.Off {
		now.Picked, err = l.pick(a, g, now.Holes[at], q)
	}
	return now, err
}

// pick works out the picked hole's part.
func (l *Live) pick(a arena.Arena, g *ground, m SurveyedHole, q Question) (*Picked, error) {
	rows, err := openings(m.Opening, g.lenses, l.maker.Kit)
	if err != nil {
		return nil, err
	}
	out := &Picked{SurveyedHole: m, Fits: rows}
	if out.Lens, err = q.pick(rows); err != nil {
		return nil, err
	}
	if !q.All {
		out.Fits, out.Lens = rows[out.Lens:out.Lens+1], 0
	}
	for i := range out.Fits {
		if f := &out.Fits[i]; f.Fits {
			f.Limits = l.limitsOf(f.Case)
		}
	}
	mine := out.Fit()
	if mine.Fits {
		out.Loss = l.lossOf(mine.Case)
	}
	if out.Wedges, err = g.wedges(m.Hole, mine); err != nil {
		return nil, err
	}
	out.Light, err = lightOf(g.lit, a, l.maker.Kit, m.ID, unit.Known(mine))
	return out, err
}

// pick returns which of the lens ends in use is asked for: the first that fits
// when none is named, and the first of all when none does.
func (q Question) pick(rows []LensFit) (int, error) {
	at := slices.IndexFunc(rows, func(f LensFit) bool {
		if q.Lens == "" {
			return f.Fits
		}
		return q.Lens == f.Lens.ID && (q.Focal == 0 || q.Focal == f.Focal)
	})
	switch {
	case at >= 0:
		return at, nil
	case q.Lens == "":
		return 0, nil
	}
	return 0, fmt.Errorf("%w: no lens %.40q at %g mm is in use at this arena", ErrAsked, q.Lens, q.Focal.Millimetres())
}
