package frame

import (
	"image/color"

	"example.org/rinkpane/internal/measure/geom"
)

// People who sit in the stands, metres: own judgement, they only set the scene.
const (
	seatsEmpty = 4    // of ten
	lapHigh    = 0.30 // where a seated body begins, above its row
	neckHigh   = 0.78
	crownHigh  = 1.02
	bodyHalf   = 0.23
	headHalf   = 0.10
	leastShape = 4.0 // pixels across that a body needs to be more than a block
)

// crowd seats people in a row, so far behind the boards' face and so high: one to a corner of the
// drawn outline and one between. Who sits where follows from the row and the place
// alone.
func (st stage) crowd(to *[]shape, h hall, row int, out, z float64) {
	for _, run := range h.runs {
		for i := range 2*len(run) - 1 {
			p := run[i/2]
			if i%2 == 1 {
				q := run[i/2+1]
				p = post{at: p.at.Add(q.at).Scale(0.5), in: p.in.Add(q.in).Unit()}
			}
			// Seats are told apart by where they stand, not by what is seen of the run.
			die := scramble(uint32(row), uint32(int32(p.at.X*8)), uint32(int32(p.at.Y*8)))
			at := railAt(p, out, z)
			if die%10 < seatsEmpty || st.cam.misses(at, crownHigh) {
				continue
			}
			side := geom.Vec3{X: p.in.Y, Y: -p.in.X}
			tiny := st.screen.w*bodyHalf < leastShape*st.cam.TanX*st.cam.View(at).Z // on the screen
			block := func(half, low, high float64, paint color.NRGBA) {
				a, b := at.Sub(side.Scale(half)), at.Add(side.Scale(half))
				up := func(v geom.Vec3, dz float64) geom.Vec3 { return v.Add(geom.Vec3{Z: dz}) }
				if tiny {
					st.add(to, paint, up(a, low), up(b, low), up(b, high), up(a, high))
					return
				}
				narrow := side.Scale(0.3 * half) // shoulders and crowns are narrower
				st.add(to, paint, up(a, low), up(b, low), up(b, high-0.3*half), up(b.Sub(narrow), high), up(a.Add(narrow), high), up(a, high-0.3*half))
			}
			lean := float64(die>>8%5) * 0.03
			block(bodyHalf, lapHigh, neckHigh+lean, crowdPaints[die>>12%uint32(len(crowdPaints))])
			if tiny {
				continue
			}
			block(headHalf, neckHigh+lean, crownHigh+lean, facePaint)
		}
	}
}

// scramble mixes numbers to one that has no pattern to the eye (multipliers of Knuth's and
// of the golden ratio, shifted and folded).
func scramble(v ...uint32) uint32 {
	h := uint32(2166136261)
	for _, x := range v {
		h = (h ^ x) * 2654435761
		h ^= h >> 15
	}
	h *= 2246822519
	return h ^ h>>13
}
