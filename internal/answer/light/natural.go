package light

import (
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/geom"
)

// How many times the readings' spread S the starting cell reaches out. Nearly
// all cells end within near, where rounding leaves their sides right to 1e-13 m;
// cut from a wider box they are right to its size times 1e-16. A place at
// distance flat inside the hull has a cell as long as S^2/(8 flat): within wide
// for all surveys up to 80 m.
const (
	near = 4
	wide = 1e7
)

// corner is a corner of a cell, with the reading whose bisector is the side
// from it to the next corner (none: a side of the starting box).
type corner struct {
	at   geom.Vec2
	side int
}

const none = -1

// cell is the region nearer to a place than to any reading: a convex polygon.
type cell struct {
	corners, spare []corner
	reach          float64 // of the farthest corner, metres
}

// start makes the cell a square of half side h about q.
func (c *cell) start(q geom.Vec2, h float64) {
	c.corners = append(c.corners[:0],
		corner{geom.Vec2{X: q.X - h, Y: q.Y - h}, none}, corner{geom.Vec2{X: q.X + h, Y: q.Y - h}, none},
		corner{geom.Vec2{X: q.X + h, Y: q.Y + h}, none}, corner{geom.Vec2{X: q.X - h, Y: q.Y + h}, none})
	c.reach = h * math.Sqrt2
}

// cut keeps what is nearer to q than to the reading at p.
func (c *cell) cut(q, p geom.Vec2, reading int) {
	toward := p.Sub(q)
	limit := toward.Dot(toward) / 2
	if limit >= math.Sqrt(2*limit)*c.reach { // the bisector passes beyond every corner
		return
	}
	beyond := func(v geom.Vec2) float64 { return v.Sub(q).Dot(toward) - limit }
	out := c.spare[:0]
	for i, a := range c.corners {
		b := c.corners[(i+1)%len(c.corners)]
		da, db := beyond(a.at), beyond(b.at)
		if da <= 0 {
			out = append(out, a)
		}
		if (da <= 0) != (db <= 0) {
			side := a.side
			if da <= 0 {
				side = reading // the cell leaves here along the bisector
			}
			out = append(out, corner{a.at.Add(b.at.Sub(a.at).Scale(da / (da - db))), side})
		}
	}
	c.corners, c.spare = out, c.corners
	c.reach = 0
	for _, v := range out {
		c.reach = max(c.reach, v.at.Sub(q).Len())
	}
}

// around cuts the cell of a place out of a box of half side h by the readings
// about it, nearest rings first, until none that is left could cut it. It reports
// whether readings bound the cell on all sides, and which reading lies at the very
// place (none: no one does).
func (f *Field) around(q geom.Vec2, h float64, c *cell) (bounded bool, at int) {
	c.start(q, h)
	at = none
	x, y := f.near.square(q)
	for r, more := 0, true; more && at == none && float64(r-1)*f.near.side < 2*c.reach; r++ {
		more = f.near.ring(x, y, r, func(i int) {
			if p := f.points[i].At; p.Sub(q).Len() < flat {
				at = i
			} else {
				c.cut(q, p, i)
			}
		})
	}
	return !slices.ContainsFunc(c.corners, func(v corner) bool { return v.side == none }), at
}

// natural interpolates at a place strictly inside the hull: each neighbour
// weighs the length of the side that its bisector has in the cell, over its
// distance. c is room to work in.
func (f *Field) natural(q geom.Vec2, c *cell) float64 {
	bounded, at := f.around(q, near*f.spread, c)
	if at != none {
		return float64(f.points[at].Lux)
	}
	if !bounded {
		f.around(q, wide*f.spread, c)
	}
	var sum, weights float64
	for i, a := range c.corners {
		if a.side == none {
			continue
		}
		b := c.corners[(i+1)%len(c.corners)]
		w := b.at.Sub(a.at).Len() / f.points[a.side].At.Sub(q).Len()
		sum += w * float64(f.points[a.side].Lux)
		weights += w
	}
	if weights == 0 {
		return against(f.hull, q).lux
	}
	return sum / weights
}
