package sheet

// Op is a step of a path.
type Op uint8

// The steps of a path.
const (
	MoveTo  Op = iota // to P
	LineTo            // straight to P
	ArcTo             // along an arc with Bulge to P
	CubicTo           // along a cubic Bézier curve with controls C1, C2 to P
	ClosePath
)

// Step is one step of a path, in millimetres.
type Step struct {
	Op     Op
	P      Point
	C1, C2 Point   // CubicTo
	Bulge  float64 // ArcTo: as in Vertex
}

// Path is a free outline of one or more parts. Inside is by the even-odd rule,
// so that a part within another is a hole in it.
type Path struct{ Steps []Step }

// MoveTo starts a new part at p.
func (p *Path) MoveTo(q Point) { p.Steps = append(p.Steps, Step{Op: MoveTo, P: q}) }

// LineTo goes straight to q.
func (p *Path) LineTo(q Point) { p.Steps = append(p.Steps, Step{Op: LineTo, P: q}) }

// ArcTo goes to q along an arc with a bulge, see [Vertex]; bulge 0 is a straight line.
func (p *Path) ArcTo(q Point, bulge float64) {
	if bulge == 0 {
		p.LineTo(q)
		return
	}
	p.Steps = append(p.Steps, Step{Op: ArcTo, P: q, Bulge: bulge})
}

// CubicTo goes to q along a cubic Bézier curve with the control points c1 and c2.
func (p *Path) CubicTo(c1, c2, q Point) {
	p.Steps = append(p.Steps, Step{Op: CubicTo, P: q, C1: c1, C2: c2})
}

// Close goes straight back to the start of the part.
func (p *Path) Close() { p.Steps = append(p.Steps, Step{Op: ClosePath}) }

// Add appends a polyline as a further part, for shapes with holes in them.
func (p *Path) Add(l Polyline) { p.Steps = append(p.Steps, l.path().Steps...) }

// outlined is a shape that can be drawn as a path.
type outlined interface{ path() Path }

func (p Path) path() Path { return p }

func (l Line) path() Path {
	return Path{[]Step{{Op: MoveTo, P: l.A}, {Op: LineTo, P: l.B}}}
}

func (l Polyline) path() Path {
	var p Path
	n := len(l.Vertices)
	if n == 0 {
		return p
	}
	p.Steps = make([]Step, 0, n+2)
	p.MoveTo(l.Vertices[0].Point)
	for i := 1; i < n; i++ {
		p.ArcTo(l.Vertices[i].Point, l.Vertices[i-1].Bulge)
	}
	if l.Closed {
		if b := l.Vertices[n-1].Bulge; b != 0 {
			p.ArcTo(l.Vertices[0].Point, b)
		}
		p.Close()
	}
	return p
}

func (c Circle) path() Path {
	l, r := Point{c.C.X - c.R, c.C.Y}, Point{c.C.X + c.R, c.C.Y}
	var p Path
	p.MoveTo(r)
	p.ArcTo(l, 1)
	p.ArcTo(r, 1)
	p.Close()
	return p
}

func (a Arc) path() Path {
	var p Path
	p.MoveTo(a.C.Polar(a.R, a.From))
	for _, s := range splitSweep(a.Sweep) {
		a.From += s
		p.ArcTo(a.C.Polar(a.R, a.From), bulge(s))
	}
	return p
}

// polylines returns the path's parts as polylines with true arcs; Bézier curves
// become straight lines within tol millimetres.
func (p Path) polylines(tol float64) []Polyline {
	var out []Polyline
	var cur Polyline
	flush := func() {
		if n := len(cur.Vertices); n > 1 {
			first, last := cur.Vertices[0].Point, cur.Vertices[n-1].Point
			if cur.Closed && first.Dist(last) < 1e-9 {
				cur.Vertices = cur.Vertices[:n-1]
			}
			out = append(out, cur)
		}
		cur = Polyline{}
	}
	for _, s := range p.Steps {
		switch s.Op {
		case MoveTo:
			flush()
		case ArcTo:
			if n := len(cur.Vertices); n > 0 {
				cur.Vertices[n-1].Bulge = s.Bulge
			}
		case CubicTo:
			if n := len(cur.Vertices); n > 0 {
				pts := flatCubic(nil, cur.Vertices[n-1].Point, s, tol)
				for _, q := range pts[:len(pts)-1] {
					cur.Vertices = append(cur.Vertices, Vertex{Point: q})
				}
			}
		case ClosePath:
			if len(cur.Vertices) == 0 {
				continue
			}
			s.P = cur.Vertices[0].Point
			cur.Closed = true
			flush()
		}
		cur.Vertices = append(cur.Vertices, Vertex{Point: s.P})
	}
	flush()
	return out
}
