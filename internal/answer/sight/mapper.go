package sight

import (
	"errors"
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// mostEnds is how many lens ends a map tells apart: a bit each.
const mostEnds = 64

// Mapper maps the reach of holes of one rink with one kit. Make it once: it
// traces each lens once for each shape of hole. It may be used by many goroutines.
type Mapper struct {
	arena  arena.Arena
	tracer tracer // a use for each end of each lens
}

// NewMapper makes a mapper with the lenses that the arena names, or all of the
// kit's, on its own body or the kit's first, each zoom at both ends of its range. A kit
// without body or lens, or with more than 64 such ends in use, is an error.
func NewMapper(a arena.Arena, k kit.Kit) (*Mapper, error) {
	if len(k.Bodies) == 0 {
		return nil, errors.New("kit: a map needs at least one body")
	}
	m := &Mapper{arena: a}
	lenses, err := k.InUse(a.Lenses)
	if err != nil {
		return nil, err
	}
	for _, l := range lenses {
		for _, use := range fit.Ends(l) {
			m.tracer.uses = append(m.tracer.uses, lensUse{l, k.BodyOf(l), use})
		}
	}
	switch n := len(m.tracer.uses); {
	case n == 0:
		return nil, errNoLens
	case n > mostEnds:
		return nil, fmt.Errorf("kit: %d lenses and ends of zooms are in use, a map tells %d apart; name those used in the arena's field lenses", n, mostEnds)
	}
	return m, nil
}

// MindCorners makes the mapper tell also what the whole frame sees, for so many shapes
// of hole at most, in the order met: each takes it about half a second of a core. It
// must be called before the first map.
func (m *Mapper) MindCorners(shapes int) { m.tracer.wholes = shapes }

// errNoLens answers a kit without a lens.
var errNoLens = errors.New("kit: it has no lens")

// sightline answers for one hole what is seen where.
type sightline struct {
	eye    Eye
	ledge  ledge
	traces *traces
	walls  walls
	arena  *arena.Arena
	hole   glass.Hole
}

func (m *Mapper) sightOf(o arena.Opening) (*sightline, error) {
	t, err := m.tracer.trace(o)
	if err != nil {
		return nil, err
	}
	w := wallsOf(m.arena.Rink)
	top := m.arena.Boards.Height.Metres()
	if _, low := o.Window.Get(); low {
		top = math.Inf(-1) // in the boards, below their top
	}
	return &sightline{
		eye: EyeOf(m.arena, o), walls: w, traces: t, arena: &m.arena, hole: o.Hole,
		ledge: ledge{walls: w, top: top},
	}, nil
}

// seen returns a bit for each lens end that can be aimed at a point of the ice at
// a height, both in metres, with T >= 0.5 and over the boards.
func (s *sightline) seen(p geom.Vec2, z float64) uint64 {
	mask := s.aimed(s.eye.toward(p, z))
	if mask != 0 && s.ledge.hides(s.eye, p, z) {
		return 0
	}
	return mask
}

// whole keeps of a mask the lens ends whose whole frame keeps half of its light along
// a direction.
func (s *sightline) whole(mask uint64, u geom.Vec3) uint64 {
	for k, o := range s.traces.wholes {
		if mask>>k&1 == 1 && !o.ContainsDirection(u) {
			mask &^= 1 << k
		}
	}
	return mask
}

// aimed returns a bit for each lens end that can be aimed along a direction in
// the hole frame with T >= 0.5.
func (s *sightline) aimed(u geom.Vec3) uint64 {
	var mask uint64
	for k, o := range s.traces.outlines {
		if o.ContainsDirection(u) {
			mask |= 1 << k
		}
	}
	return mask
}
