package resect

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/geom"
)

// Cause is why marks tell no camera.
type Cause string

// The causes.
const (
	BadFrame    Cause = "bad-frame"        // pixels or sensor that no camera has
	TooFew      Cause = "too-few"          // fewer marks than tell a camera
	Unknown     Cause = "unknown-landmark" // the rink has no such place
	Twice       Cause = "marked-twice"     // one landmark, or one place of the frame, twice
	Outside     Cause = "outside-frame"    // a mark off the picture
	OneLine     Cause = "one-line"         // all landmarks on one line
	Mirrored    Cause = "mirrored"         // the picture, or how marks are counted, is turned over
	WrongFocal  Cause = "wrong-focal"      // the marks fit, with another focal length
	NoFit       Cause = "no-fit"           // no camera behind the boards sees the marks so
	NotTogether Cause = "not-together"     // frames of more than one hole
)

// Fault says why there is no answer, and what would do.
type Fault struct {
	Cause Cause
	Frame string // "" with a single frame that has no name
	Text  string
}

// Error names the frame and the cure.
func (f *Fault) Error() string {
	if f.Frame == "" {
		return f.Text
	}
	return f.Frame + ": " + f.Text
}

func (f Frame) fault(c Cause, form string, args ...any) *Fault {
	return &Fault{c, f.Name, fmt.Sprintf(form, args...)}
}

// Bounds of what is taken.
const (
	LeastMarks  = 4   // in a frame: fewer tell no camera
	MostMarks   = 200 // in a frame
	MostFrames  = 20  // of one hole together
	mostPixels  = 100_000
	lineShare   = 1e-3 // of the landmarks' extent: how far off a line they lie at least
	samePlacePx = 0.5  // two marks nearer than this are one
)

// places returns the landmarks of a frame's marks, or what is wrong with the marks.
func (f Frame) places(known []Landmark) ([]geom.Vec3, error) {
	switch {
	case f.Pixels[0] < 1 || f.Pixels[1] < 1 || f.Pixels[0] > mostPixels || f.Pixels[1] > mostPixels:
		return nil, f.fault(BadFrame, "a picture of %d x %d pixels; give its size, as 6000 x 4000", f.Pixels[0], f.Pixels[1])
	case !(f.Sensor > 0):
		return nil, f.fault(BadFrame, "the sensor's size is not known; give it, as 36 x 24 mm")
	case len(f.Marks) < LeastMarks:
		return nil, f.fault(TooFew, "%d marks tell no camera; mark %d places at least, better six", len(f.Marks), LeastMarks)
	case len(f.Marks) > MostMarks:
		return nil, f.fault(BadFrame, "%d marks; %d at most are taken", len(f.Marks), MostMarks)
	}
	at := make([]geom.Vec3, len(f.Marks))
	for i, m := range f.Marks {
		k := slices.IndexFunc(known, func(l Landmark) bool { return l.Name == m.Landmark })
		if k < 0 {
			return nil, f.fault(Unknown, "landmark %s: this rink has none of that name; %s", form.Quote(m.Landmark), meant(m.Landmark, known))
		}
		at[i] = known[k].At
		if !(m.X >= 0 && m.Y >= 0 && m.X <= float64(f.Pixels[0]) && m.Y <= float64(f.Pixels[1])) {
			return nil, f.fault(Outside, "%s is marked at %.1f, %.1f: off the picture of %d x %d pixels", m.Landmark, m.X, m.Y, f.Pixels[0], f.Pixels[1])
		}
		for _, before := range f.Marks[:i] {
			if before.Landmark == m.Landmark {
				return nil, f.fault(Twice, "%s is marked twice; keep one", m.Landmark)
			}
			if math.Hypot(before.X-m.X, before.Y-m.Y) < samePlacePx {
				return nil, f.fault(Twice, "%s and %s are marked in one place", before.Landmark, m.Landmark)
			}
		}
	}
	if onOneLine(at) {
		return nil, f.fault(OneLine, "all marks lie on one line of the rink, from which a camera cannot be told; mark something beside it")
	}
	return at, nil
}

// meant offers the nearest name, or the kinds of names there are.
func meant(name string, known []Landmark) string {
	names := make([]string, len(known))
	for i, l := range known {
		names[i] = l.Name
	}
	if near := form.Nearest(name, names); near != "" {
		return "did you mean " + near + "?"
	}
	if len(known) == 0 {
		return "its markings are not surveyed"
	}
	return "write one as B:post-bench:foot, A:goal-line:box, B:spot-bench, A:neutral-box or centre-spot"
}

// onOneLine reports whether places lie on a line: the second singular value of their
// offsets is next to nothing beside the first.
func onOneLine(at []geom.Vec3) bool {
	var mid geom.Vec3
	for _, p := range at {
		mid = mid.Add(p.Scale(1 / float64(len(at))))
	}
	rows := mat.NewDense(len(at), 3, nil)
	for i, p := range at {
		v := p.Sub(mid)
		rows.SetRow(i, []float64{v.X, v.Y, v.Z})
	}
	var svd mat.SVD
	if !svd.Factorize(rows, mat.SVDNone) {
		return true
	}
	s := svd.Values(nil)
	return s[1] <= lineShare*s[0]
}
