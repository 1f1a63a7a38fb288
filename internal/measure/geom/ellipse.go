package geom

import "math"

// Ellipse is the image of the unit disc under q = Centre + M w, the columns of
// M being A and B.
type Ellipse struct{ Centre, A, B Vec2 }

// Area returns the ellipse's area.
func (e Ellipse) Area() float64 { return math.Pi * math.Abs(e.A.Cross(e.B)) }

// Reach returns the ellipse's half extents along the axes.
func (e Ellipse) Reach() Vec2 {
	return Vec2{math.Sqrt(e.A.X*e.A.X + e.B.X*e.B.X), math.Sqrt(e.A.Y*e.A.Y + e.B.Y*e.B.Y)}
}

// lens is an ellipse with what clipping needs: the map from the plane to the unit disc.
type lens struct {
	centre         Vec2
	xx, xy, yx, yy float64 // inverse of M
	det            float64 // of M, above 0
}

func (e Ellipse) lens() (lens, bool) {
	a, b := e.A, e.B
	det := a.Cross(b)
	if det < 0 {
		a, b, det = b, a, -det
	}
	if !(det > 0) {
		return lens{}, false
	}
	return lens{
		centre: e.Centre, det: det,
		xx: b.Y / det, xy: -b.X / det,
		yx: -a.Y / det, yy: a.X / det,
	}, true
}

// disc maps a point of the plane to the disc's plane.
func (l *lens) disc(q Vec2) Vec2 {
	x, y := q.X-l.centre.X, q.Y-l.centre.Y
	return Vec2{l.xx*x + l.xy*y, l.yx*x + l.yy*y}
}

// corner is a point of the disc's plane.
type corner struct {
	at   Vec2
	over float64 // |at|^2 - 1: below 0 inside the disc
}

func (l *lens) corner(q Vec2) corner {
	w := l.disc(q)
	return corner{w, w.X*w.X + w.Y*w.Y - 1}
}

// plane maps a vector of the disc's plane to the plane.
func (l *lens) plane(w Vec2) Vec2 {
	return Vec2{(l.yy*w.X - l.xy*w.Y) * l.det, (l.xx*w.Y - l.yx*w.X) * l.det}
}
