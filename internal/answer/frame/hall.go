package frame

import (
	"image/color"
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// The hall's plain measures, in metres: own judgement, they only set the scene.
const (
	outlineStep = 0.75 // along the boards between corners of the drawn outline
	kickHigh    = 0.20
	railHigh    = 0.06
	standsFrom  = 1.6 // behind the boards
	standsLow   = 0.6 // height of the first row
	rowDeep     = 0.85
	rowRise     = 0.42
	rows        = 16
	stanchion   = 0.035
	lap         = 0.03 // neighbouring bands overlap, so that no seam shows between
)

// A post is one corner of the drawn outline of the boards, the n-th.
type post struct {
	at, in geom.Vec2
	n      int
}

// hall is the outline of the boards as seen from one eye: the runs of boards
// that turn their rink face to it.
type hall struct{ runs [][]post }

// outline is the whole of it.
func outline(r rink.Rink) []post {
	n := int(r.Perimeter().Metres()/outlineStep) + 1
	all := make([]post, n)
	for i := range all {
		s := r.Perimeter() * unit.Length(i) / unit.Length(n)
		all[i] = post{r.Point(s), r.Normal(s), i}
	}
	return all
}

func newHall(r rink.Rink, eye geom.Vec2) hall {
	all := outline(r)
	n := len(all)
	faces := func(i int) bool {
		a, b := all[i%n], all[(i+1)%n]
		return a.in.Add(b.in).Dot(eye.Sub(a.at.Add(b.at).Scale(0.5))) > 0
	}
	start := 0
	for start < n && faces(start) {
		start++
	}
	var h hall
	var run []post
	for k := range n {
		i := start + 1 + k
		if faces(i) {
			if run == nil {
				run = append(run, all[i%n])
			}
			run = append(run, all[(i+1)%n])
		} else if run != nil {
			h.runs, run = append(h.runs, run), nil
		}
	}
	if run != nil {
		h.runs = append(h.runs, run)
	}
	return h
}

// ribbon fills the band between two rails that follow the boards: each rail is
// so far behind the boards' face and so high.
func (st stage) ribbon(to *[]shape, h hall, lowOut, lowZ, highOut, highZ float64, paint color.NRGBA) {
	for _, run := range h.runs {
		for from := 0; from < len(run)-1; from += ribbonPosts {
			part := run[from:min(from+ribbonPosts+2, len(run))] // one post more: no seam
			poly := st.room.poly[:0]
			for _, p := range part {
				poly = append(poly, railAt(p, lowOut, lowZ))
			}
			for i := len(part) - 1; i >= 0; i-- {
				poly = append(poly, railAt(part[i], highOut, highZ))
			}
			st.room.poly = poly
			st.add(to, paint, poly...)
		}
	}
}

// ribbonPosts is how many posts one piece of a ribbon spans: short enough that
// a piece is nearly flat and clips cleanly.
const ribbonPosts = 4

func railAt(p post, out, z float64) geom.Vec3 {
	q := p.at.Sub(p.in.Scale(out))
	return geom.Vec3{X: q.X, Y: q.Y, Z: z}
}

// mostSeated is about how many outlines the stands have in one picture.
const mostSeated = 4096

// stands draws the rows behind the boards, the farthest (highest) first.
func (st stage) stands(s *Shot, h hall) []shape {
	out := make([]shape, 0, mostSeated)
	house := s.Lighting.tint(houseKelvin) // falloff exposes them with all that stands still
	for row := rows - 1; row >= 0; row-- {
		near := standsFrom + float64(row)*rowDeep
		z := standsLow + float64(row)*rowRise
		st.ribbon(&out, h, near+rowDeep, z-lap, near+rowDeep, z+rowRise, seatPaints[row%2])
		st.ribbon(&out, h, near, z-lap, near+rowDeep, z, aislePaint)
		st.crowd(&out, h, row, near+0.5*rowDeep, z)
	}
	st.ribbon(&out, h, standsFrom, 0, standsFrom, standsLow, seatPaints[0])
	relight(out, house)
	return out
}

// The roof over the hall, metres: own judgement, plain.
const (
	roofHigh  = 13.0
	trussHigh = 0.9 // the trusses' depth below the roof
	trussStep = 8.0
	lampRows  = 4 // rows of lamps along the rink
	lampLong  = 2.4
	lampWide  = 0.35
	lampStep  = 4.0
	lampBelow = 0.6 // below the roof
)

// roof draws the wall above the stands, the roof and its trusses.
func (st stage) roof(r rink.Rink, h hall) []shape {
	var out []shape
	behind := standsFrom + rows*rowDeep
	d := r.Dimensions()
	lx, ly := d.Length.Metres()/2+behind, d.Width.Metres()/2+behind
	st.add(&out, roofPaint, level(-lx, -ly, lx, ly, roofHigh)...)
	st.ribbon(&out, h, behind, standsLow+rows*rowRise-lap, behind, roofHigh, wallPaint)
	n := math.Floor(lx / trussStep)
	for i := -n; i <= n; i++ {
		x := i * trussStep
		st.add(&out, trussPaint, geom.Vec3{X: x, Y: -ly, Z: roofHigh}, geom.Vec3{X: x, Y: ly, Z: roofHigh},
			geom.Vec3{X: x, Y: ly, Z: roofHigh - trussHigh}, geom.Vec3{X: x, Y: -ly, Z: roofHigh - trussHigh})
	}
	return out
}

// level returns a level rectangle between two corners, metres.
func level(x0, y0, x1, y1, z float64) []geom.Vec3 {
	return []geom.Vec3{{X: x0, Y: y0, Z: z}, {X: x1, Y: y0, Z: z}, {X: x1, Y: y1, Z: z}, {X: x0, Y: y1, Z: z}}
}

// boards draws the boards' rink face.
func (st stage) boards(h hall, high float64) []shape {
	var out []shape
	st.ribbon(&out, h, 0, -lap, 0, high-lap, boardPaint)
	for _, p := range h.panels() {
		st.ribbon(&out, hall{[][]post{p.run}}, 0, panelLow, 0, panelHigh, p.paint)
	}
	st.ribbon(&out, h, 0, -lap, 0, kickHigh, kickPaint)
	st.ribbon(&out, h, 0, high-railHigh, 0, high, railPaint)
	return out
}

// panelShare is how many boards of ten carry a coloured panel (own judgement).
const (
	panelShare          = 5
	panelLow, panelHigh = 0.30, 0.94 // metres above the ice
)

// panel is a piece of the boards under one paint.
type panel struct {
	run   []post
	paint color.NRGBA
}

// panels are the coloured ones on the boards. Which boards carry one, and of what colour,
// follows from their place alone, whoever looks.
func (h hall) panels() (out []panel) {
	for _, run := range h.runs {
		for from := 0; from+ribbonPosts < len(run); from++ {
			die := scramble(uint32(int32(run[from].at.X*4)), uint32(int32(run[from].at.Y*4)))
			whole := run[from].n%ribbonPosts == 0 && run[from+ribbonPosts].n == run[from].n+ribbonPosts
			if whole && die%10 < panelShare {
				out = append(out, panel{run[from : from+ribbonPosts], panelPaints[die>>8%uint32(len(panelPaints))]})
			}
		}
	}
	return out
}

// panes draws the glass that turns its face to the eye: a tint and the
// stanchions between.
func (st stage) panes(s *Shot) []shape {
	a := s.Arena
	back := a.Setback().Value.Metres()
	low := a.Boards.Height.Metres()
	at := func(station unit.Length, z float64) geom.Vec3 {
		return railAt(post{at: a.Rink.Point(station), in: a.Rink.Normal(station)}, back, z)
	}
	var out []shape
	for _, p := range a.Panes {
		mid := p.From + p.Width/2
		if a.Rink.Normal(mid).Dot(st.cam.Eye.XY().Sub(a.Rink.Point(mid))) < 0.5 {
			continue
		}
		high := low + p.Height.Metres()
		st.add(&out, glassPaint, at(p.From, low), at(p.To(), low), at(p.To(), high), at(p.From, high))
		st.add(&out, sheenPaint, at(p.From, low), at(p.To(), low), at(p.To(), low+0.6*(high-low)), at(p.From, low+0.25*(high-low)))
		st.scuffs(&out, p.From, p.Width, low, at)
		st.add(&out, postPaint, at(p.From-stanchion/2, low), at(p.From+stanchion/2, low),
			at(p.From+stanchion/2, high), at(p.From-stanchion/2, high))
		st.add(&out, postPaint, at(p.From, high-0.02), at(p.To(), high-0.02), at(p.To(), high), at(p.From, high))
	}
	return out
}

// Marks that pucks and sticks left on a pane: how many at most, and their size in metres
// (own judgement).
const (
	mostScuffs             = 7
	scuffLow, scuffHigh    = 0.05, 1.3 // above the boards
	scuffLong, scuffThick  = 0.07, 0.012
	scratchLong, scratchUp = 0.5, 0.10
)

// scuffs marks a pane; at is the place of a station and a height. Which marks follows from
// the station alone.
func (st stage) scuffs(to *[]shape, from, wide unit.Length, low float64, at func(unit.Length, float64) geom.Vec3) {
	first := scramble(uint32(from.Millimetres()))
	for k := range first % (mostScuffs + 1) {
		die := scramble(first, k)
		paint, long, thick, up := scuffPaint, scuffLong, scuffThick, 0.3*scuffLong
		if k%3 == 2 {
			paint, long, thick, up = scratchPaint, scratchLong, 0.4*scuffThick, scratchUp
		}
		x := from + wide*unit.Length(0.1+0.7*float64(die%256)/255)
		z := low + scuffLow + (scuffHigh-scuffLow)*float64(die>>8%256)/255
		if die>>16%2 == 0 {
			up = -up
		}
		end := x + unit.Length(long*(0.6+float64(die>>17%128)/160))
		st.add(to, paint, at(x, z), at(end, z+up), at(end, z+up+thick), at(x, z+thick))
	}
}
