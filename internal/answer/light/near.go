package light

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
)

// nearby finds readings by nearness without asking all of them: they lie in the
// squares of a grid, some perSquare in each, and are met ring by ring of squares
// about a place.
//
//	2 2 2 2 2
//	2 1 1 1 2     what lies in ring r + 1 is farther from the
//	2 1 0 1 2     place than r sides of a square
//	2 1 1 1 2
//	2 2 2 2 2
type nearby struct {
	corner        geom.Vec2
	side          float64 // of a square, metres
	columns, rows int
	in            [][]int // the readings of each square, row by row
}

// perSquare is how many readings a square holds on average. Own choice.
const perSquare = 2.0

// nearbyOf sorts readings into squares; they have a spread above 0.
func nearbyOf(points []Point) nearby {
	lo, hi := points[0].At, points[0].At
	for _, p := range points {
		lo = geom.Vec2{X: min(lo.X, p.At.X), Y: min(lo.Y, p.At.Y)}
		hi = geom.Vec2{X: max(hi.X, p.At.X), Y: max(hi.Y, p.At.Y)}
	}
	size, n := hi.Sub(lo), float64(len(points))
	// Readings in one line lie in squares side by side; others cover an area.
	side := max(math.Sqrt(size.X*size.Y*perSquare/n), max(size.X, size.Y)*perSquare/n)
	near := nearby{corner: lo, side: side, columns: int(size.X/side) + 1, rows: int(size.Y/side) + 1}
	near.in = make([][]int, near.columns*near.rows)
	for i, p := range points {
		x, y := near.square(p.At)
		near.in[y*near.columns+x] = append(near.in[y*near.columns+x], i)
	}
	return near
}

// square returns the square in which a place lies, the nearest for one outside.
func (n nearby) square(at geom.Vec2) (x, y int) {
	on := at.Sub(n.corner).Scale(1 / n.side)
	return min(max(int(on.X), 0), n.columns-1), min(max(int(on.Y), 0), n.rows-1)
}

// ring visits the readings in the squares of ring r about a square; it reports
// whether any of its squares lies on the grid.
func (n nearby) ring(x, y, r int, visit func(reading int)) bool {
	met := false
	for row := max(y-r, 0); row <= min(y+r, n.rows-1); row++ {
		step := 1
		if r > 0 && row != y-r && row != y+r {
			step = 2 * r // the ring's two ends in this row
		}
		for column := x - r; column <= x+r; column += step {
			if column < 0 || column >= n.columns {
				continue
			}
			met = true
			for _, i := range n.in[row*n.columns+column] {
				visit(i)
			}
		}
	}
	return met
}
