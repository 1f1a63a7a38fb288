package sight

import (
	"context"
	"math"
	"math/bits"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Reach is what one hole sees of the ice.
type Reach struct {
	Hole    string
	Eye     Eye
	Grid    *Grid
	Lenses  []LensReach        // in the kit's order, a zoom at both ends of its range
	Layers  []Layer            // one for each height asked for
	Blind   Blind              // of the best lens at each place: unseen by all
	Assumed []arena.Assumption // what stood in for lengths that the survey lacks
}

// LensReach is what one lens, wide open at one focal length, sees through the hole.
type LensReach struct {
	ID    string
	Focal unit.Length
	Stop  unit.Stop
	Fits  bool      // its nose can enter the hole
	Share []float64 // of the ice at each layer's height, from 0 to 1
	Whole []float64 // the same with the whole frame within a stop; none unless [Mapper.MindCorners]
	Blind Blind
}

// WholeAt returns the share of a layer that the whole frame sees.
func (l LensReach) WholeAt(layer int) unit.Maybe[float64] {
	if layer >= len(l.Whole) {
		return unit.Maybe[float64]{}
	}
	return unit.Known(l.Whole[layer])
}

// Layer is the map at one height.
type Layer struct {
	Height unit.Length
	Share  float64             // of the ice that some lens can be aimed at with half of its light at the frame's centre, from 0 to 1
	Whole  unit.Maybe[float64] // the same at the frame's corners too; unknown unless [Mapper.MindCorners]
	Wedge  Wedge               // the outline of what some lens can be aimed at
	Seen   []uint64            // for each cell of the grid a bit for each of the Lenses; see [Grid.Index]
}

// Count returns how many of the Lenses can be aimed at a cell.
func (l *Layer) Count(index int) int { return bits.OnesCount64(l.Seen[index]) }

// Map is [Mapper.MapOpening] of a hole, which need not be one of the arena's.
func (m *Mapper) Map(ctx context.Context, h glass.Hole, g *Grid, heights []unit.Length) (Reach, error) {
	o, err := m.arena.OpeningOf(h)
	if err != nil {
		return Reach{}, err
	}
	return m.MapOpening(ctx, o, g, heights)
}

// MapOpening maps the reach of an opening on a grid at some heights. The result
// does not depend on the number of cores. Errors: ctx's, and an opening or lens
// that package fit refuses.
func (m *Mapper) MapOpening(ctx context.Context, o arena.Opening, g *Grid, heights []unit.Length) (Reach, error) {
	s, err := m.sightOf(o)
	if err != nil {
		return Reach{}, err
	}
	out := Reach{Hole: o.Hole.ID, Eye: s.eye, Grid: g, Assumed: arena.Assumed(append(fit.Facts(o), o.Setback)...)}
	for _, z := range heights {
		out.Layers = append(out.Layers, Layer{Height: z, Seen: make([]uint64, g.Columns*g.Rows)})
	}
	seen, err := s.sweep(ctx, g, out.Layers)
	if err != nil {
		return Reach{}, err
	}
	out.Lenses = m.lensReaches(s, g, seen)
	for i := range out.Layers {
		out.Layers[i].Share = share(seen.some[i], g)
		if s.traces.wholes != nil {
			out.Layers[i].Whole = unit.Known(share(seen.someWhole[i], g))
		}
		out.Layers[i].Wedge = s.wedge(out.Layers[i].Height.Metres(), ^uint64(0))
	}
	out.Blind = s.blind(^uint64(0))
	return out, nil
}

func (m *Mapper) lensReaches(s *sightline, g *Grid, seen tally) []LensReach {
	out := make([]LensReach, len(m.tracer.uses))
	for k, e := range m.tracer.uses {
		r := LensReach{ID: e.lens.ID, Focal: e.Focal, Stop: e.Stop, Fits: s.traces.fits[k], Blind: s.blind(1 << k)}
		for i := range seen.some {
			r.Share = append(r.Share, share(seen.each[i][k], g))
			if s.traces.wholes != nil {
				r.Whole = append(r.Whole, share(seen.eachWhole[i][k], g))
			}
		}
		out[k] = r
	}
	return out
}

func share(cells int64, g *Grid) float64 { return float64(cells) / float64(max(g.Cells(), 1)) }

// tally counts cells by layer: those that some lens sees, and each lens's.
type tally struct {
	some, someWhole []int64
	each, eachWhole [][mostEnds]int64
}

func newTally(layers int) tally {
	return tally{make([]int64, layers), make([]int64, layers), make([][mostEnds]int64, layers), make([][mostEnds]int64, layers)}
}

// sweep classifies every cell, the rows shared over the cores.
func (s *sightline) sweep(ctx context.Context, g *Grid, layers []Layer) (tally, error) {
	fresh := func() tally { return newTally(len(layers)) }
	tallies, err := cores.With(ctx, g.Rows, fresh, func(own tally, row int) { s.sweepRow(g, row, layers, own) })
	total := fresh()
	for _, own := range tallies {
		for i := range own.some {
			total.some[i] += own.some[i]
			total.someWhole[i] += own.someWhole[i]
			for k := range own.each[i] {
				total.each[i][k] += own.each[i][k]
				total.eachWhole[i][k] += own.eachWhole[i][k]
			}
		}
	}
	return total, err
}

// sweepRow classifies the cells of one row. Where the sight line crosses the
// boards' rink face is the same at every height. It allocates nothing.
func (s *sightline) sweepRow(g *Grid, row int, layers []Layer, count tally) {
	first, last := g.Run(row)
	for column := first; column < last; column++ {
		p := g.At(column, row)
		u := s.eye.toward(p, 0)
		crossing := -1.0
		for i := range layers {
			z := layers[i].Height.Metres()
			u.Y = z - s.eye.Z
			mask := s.aimed(u)
			if mask == 0 {
				continue
			}
			if crossing < 0 {
				crossing = s.walls.entry(s.eye.At, p)
			}
			if s.ledge.cuts(s.eye, crossing, z) {
				continue
			}
			layers[i].Seen[g.Index(column, row)] = mask
			count.some[i]++
			for left := mask; left != 0; left &= left - 1 {
				count.each[i][bits.TrailingZeros64(left)]++
			}
			if s.traces.wholes == nil {
				continue
			}
			whole := s.whole(mask, u)
			if whole != 0 {
				count.someWhole[i]++
			}
			for left := whole; left != 0; left &= left - 1 {
				count.eachWhole[i][bits.TrailingZeros64(left)]++
			}
		}
	}
}

// Parts returns for every cell of the grid, row by row from the bench side, the
// share of the lenses in use that can be aimed at it, from 0 to 1; NaN off the ice.
func (r *Reach) Parts(layer int) []float64 {
	l := &r.Layers[layer]
	out := make([]float64, len(l.Seen))
	for row := range r.Grid.Rows {
		first, last := r.Grid.Run(row)
		for column := range r.Grid.Columns {
			i := r.Grid.Index(column, row)
			out[i] = math.NaN()
			if column >= first && column < last {
				out[i] = float64(l.Count(i)) / float64(len(r.Lenses))
			}
		}
	}
	return out
}

// HoleParts returns for every cell of the grid, in the order of [Reach.Parts], the
// share of holes from which some lens in use can be aimed at it, from 0 to 1; NaN off the ice.
func HoleParts(reaches []Reach, layer int) []float64 {
	out := make([]float64, reaches[0].Grid.Columns*reaches[0].Grid.Rows)
	for i := range reaches {
		for j, v := range reaches[i].Parts(layer) {
			switch {
			case math.IsNaN(v):
				out[j] = v
			case v > 0:
				out[j] += 1 / float64(len(reaches))
			}
		}
	}
	return out
}
