package learn

import (
	"math"

	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/measure/unit"
)

// sketch is the wall as one stands behind the glass, the place found in the middle:
// centimetres, to the right toward rising stations, and down.
type sketch struct {
	Half, HalfHigh float64 // of what is seen
	Major, Minor   float64 // half axes of the ellipse
	Turn           float64 // of its longer one, degrees clockwise
	Hole           *box    // the plan's, nil for none
	Bar            float64 // a length to compare with
	BarWords       string
}

// box is an outline, its upper left corner first.
type box struct{ X, Y, W, H, MidX, MidY float64 }

// leastHalf is what is seen at least to each side, centimetres.
const leastHalf = 12.0

func sketched(r resect.Answer, sys unit.System) sketch {
	s := sketch{Major: cm(r.Ellipse.Major), Minor: cm(r.Ellipse.Minor), Turn: -r.Ellipse.Angle.Degrees(), Half: leastHalf}
	s.Half = max(s.Half, 1.1*s.Major)
	if h, ok := r.Near.Get(); ok {
		x, y, w, high := -cm(r.Off.Station), cm(r.Off.Height), cm(h.Size.W), cm(h.Size.H)
		s.Hole = &box{x - w/2, y - high/2, w, high, x, y}
		s.Half = max(s.Half, 1.1*(math.Abs(x)+w/2), 1.8*1.1*(math.Abs(y)+high/2))
	}
	s.HalfHigh = max(s.Half/1.8, 1.1*s.Major*math.Abs(math.Sin(r.Ellipse.Angle.Radians())))
	step := unit.Centimetre
	if sys == unit.Imperial {
		step = unit.Inch
	}
	for _, n := range []float64{1, 2, 5, 10, 20, 50, 100, 200, 500} {
		if l := unit.Length(n) * step; cm(l) < s.Half || n == 1 {
			s.Bar, s.BarWords = cm(l), l.Format(sys)
		}
	}
	return s
}

// Left, Top, Wide and High are the drawing's box; BarX and BarY where the bar begins.
func (s sketch) Left() float64  { return -s.Half }
func (s sketch) Top() float64   { return -s.HalfHigh }
func (s sketch) Wide() float64  { return 2 * s.Half }
func (s sketch) High() float64  { return 2 * s.HalfHigh }
func (s sketch) BarX() float64  { return -0.95 * s.Half }
func (s sketch) BarY() float64  { return 0.9 * s.HalfHigh }
func (s sketch) BarTo() float64 { return s.BarX() + s.Bar }
func (s sketch) Cross() float64 { return s.Half / 20 }

func cm(l unit.Length) float64 { return math.Round(1000*l.Metres()) / 10 }
