package resect

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/arena"
)

// How the fit hardens: the first rounds forgive what lies far off.
var hardening = [...]float64{100, 20, 5} // px

// Limits of what counts as fitting.
const (
	mostNoise   = 0.004 // of the frame's width: more left over, a standard deviation, is no fit
	wellFitted  = 0.001 // likewise: less needs no second look
	mostApart   = 1.0   // metres between the places that frames of one hole tell by themselves
	finalists   = 3     // starts that are fitted to the end
	forgiven    = 8     // standard deviations off a robust fit: left out at first
	leastSigma  = 0.02  // px: nobody marks more finely
	sigmaRounds = 4
	mostLeftOut = 4 // of so many marks one may be left out
)

// Solve answers where the hole is that frames were taken through. What the marks cannot
// tell is a [*Fault]; a context that ends first is its error, within some milliseconds.
func Solve(ctx context.Context, a arena.Arena, frames []Frame) (Answer, error) {
	if len(frames) == 0 || len(frames) > MostFrames {
		return Answer{}, &Fault{Cause: BadFrame, Text: fmt.Sprintf("give marks of one frame, or of up to %d of one hole", MostFrames)}
	}
	known := Landmarks(a)
	m := &model{boards: boards{a.Rink, a.Setback().Value.Metres()}, frames: frames, sigma: 1, gone: func() bool { return ctx.Err() != nil }}
	for _, f := range frames {
		at, err := f.places(known)
		if err != nil {
			return Answer{}, err
		}
		m.at = append(m.at, at)
	}
	x, others, err := m.solve()
	var out Answer
	if err == nil {
		out = m.answer(a, known, x, others)
	}
	if gone := context.Cause(ctx); gone != nil { // what was broken off says nothing
		return Answer{}, fmt.Errorf("the marks were not solved: %w", gone)
	}
	return out, err
}

// solve finds the numbers that fit best, and of a single frame other places that fit as well.
func (m *model) solve() (x []float64, others [][]float64, err error) {
	for i, f := range m.frames {
		one := m.single(f, m.at[i])
		found, fits := one.best()
		if !fits {
			return nil, nil, one.cause()
		}
		x = append(x, found[0]...)
		m.used, m.sigma = append(m.used, one.used...), one.sigma
		if others = nil; len(m.frames) == 1 {
			others = one.rivals(found[0], found[1:])
		}
		if away := m.rink.Apart(metres(x[atStation]), metres(found[0][atStation])).Metres(); math.Abs(away) > mostApart {
			return nil, nil, f.fault(NotTogether, "this frame was taken %.1f m along the boards from the first, through another hole; solve it by itself", math.Abs(away))
		}
	}
	if len(m.frames) > 1 {
		m.together(x)
		x = append(x, x[atStation], x[atHeight])
		if !m.settle(x) {
			return nil, nil, m.cause()
		}
	}
	m.choose()
	return x, others, nil
}

// single is the model of one frame.
func (m *model) single(f Frame, at []geom.Vec3) *model {
	return &model{boards: m.boards, frames: []Frame{f}, at: [][]geom.Vec3{at}, sigma: 1, gone: m.gone}
}

// together writes the stations of all frames so that they count from the same turn of
// the boards.
func (m *model) together(x []float64) {
	for i := range m.frames {
		s := &x[i*numbers+atStation]
		*s = x[atStation] + m.rink.Apart(metres(x[atStation]), metres(*s)).Metres()
	}
}

// best returns the settled fit of a single frame and behind it the others that the direct
// starts led to; fits is false when none fits.
func (m *model) best() (found [][]float64, fits bool) {
	for _, n := range [...]int{finalists, mostStarts} {
		found = m.alone(n)
		fits = len(found) > 0 && m.settle(found[0])
		if fits && m.sigma < wellFitted*float64(m.frames[0].Pixels[0]) {
			break
		}
	}
	return found, fits
}

// alone returns robust fits of a single frame from the direct starts, the best first;
// so many of them are fitted to the end.
func (m *model) alone(finalists int) [][]float64 {
	m.choose()
	m.all()
	m.sigma = 1
	type found struct {
		x    []float64
		loss float64
	}
	var list []found
	for _, s := range m.starts(m.frames[0], m.at[0]) {
		if m.gone() || math.IsInf(s.miss, 1) {
			continue
		}
		x := s.x
		m.robust = hardening[0]
		list = append(list, found{x[:], m.fit(x[:])})
	}
	better := func(a, b found) int { return cmp.Compare(a.loss, b.loss) }
	slices.SortStableFunc(list, better)
	list = list[:min(len(list), finalists)]
	for i := range list {
		for _, m.robust = range hardening[1:] {
			list[i].loss = m.fit(list[i].x)
		}
	}
	slices.SortStableFunc(list, better)
	var out [][]float64
	for _, f := range list {
		out = append(out, f.x)
	}
	m.robust = 0
	return out
}

// all uses every mark.
func (m *model) all() {
	m.used = nil
	for _, f := range m.frames {
		m.used = append(m.used, slices.Repeat([]bool{true}, len(f.Marks))...)
	}
}

// settle fits by least squares the marks that belong together, finds their errors'
// size, and says whether that is a fit at all.
func (m *model) settle(x []float64) bool {
	m.choose()
	if len(m.frames) == 1 { // those of several frames have been sorted one by one
		m.forgive(x)
	}
	for range sigmaRounds {
		m.fit(x)
		m.sort(x)
		left := m.left(x)
		if left.dof < 0.5 {
			m.sigma = 1
			continue
		}
		m.sigma = max(left.sigma, leastSigma)
	}
	m.fit(x)
	return m.sigma < mostNoise*float64(m.frames[0].Pixels[0]) && math.Abs(x[atPan]) < math.Pi/2 && m.enough()
}

// enough reports whether every frame is left with marks that tell a camera, and with most
// of its marks: any four or five fit some camera, if the others are left out.
func (m *model) enough() bool {
	in := make([][]geom.Vec3, len(m.frames))
	for n, used := range m.used {
		if i, k := m.mark(n); used {
			in[i] = append(in[i], m.at[i][k])
		}
	}
	for i, f := range m.frames {
		n := len(f.Marks)
		if len(in[i]) < max(LeastMarks, n-max(1, n/mostLeftOut)) || onOneLine(in[i]) {
			return false
		}
	}
	return true
}

// rivals returns other fits that the marks cannot tell from the best.
func (m *model) rivals(best []float64, rest [][]float64) (out [][]float64) {
	left := m.left(best)
	least := m.fit(slices.Clone(best))
	place := func(x []float64) geom.Vec3 { return m.mount(x[atStation], x[atHeight]).Origin }
	for _, x := range rest {
		x = slices.Clone(x)
		worse := m.fit(x) - least
		if worse < left.radius2(1) && place(x).Sub(place(best)).Len() > mostApart {
			out = append(out, x)
		}
	}
	return out
}

// cause says why a single frame's marks, or several frames', do not fit. A picture turned
// over one way is one turned over the other way and upside down: the camera that stands
// upright tells which it was.
func (m *model) cause() error {
	f := m.frames[0]
	fits := func(f Frame) (fits, upright bool) {
		one := m.single(f, m.at[0])
		found, fits := one.best()
		return fits, fits && math.Cos(found[0][atRoll]) > 0
	}
	unknown := f
	unknown.Focal = Focal{}
	if _, upright := fits(f.mirrored(true)); upright {
		return f.fault(Mirrored, "the marks fit when left and right are changed over: the picture is mirrored, or bench and box are")
	}
	if _, upright := fits(f.mirrored(false)); upright {
		return f.fault(Mirrored, "the marks fit when y is counted from below: count it down from the picture's upper edge")
	}
	if is, _ := fits(unknown); is && f.Focal.length > 0 {
		return f.fault(WrongFocal, "the marks do not fit a focal length of %.0f mm, but do fit another: check it and the sensor's size, or leave it out", f.Focal.length.Millimetres())
	}
	return f.fault(NoFit, "no camera behind the boards sees these places so; check each mark's landmark, the picture's size and the rink's markings")
}
