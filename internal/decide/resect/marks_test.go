package resect_test

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// net is a picture of the near goal from hole B1 at 70 mm, its marks off by 1 px: the
// goal's posts, the goal line, a circle's edge and edges of panes.
func net(t testing.TB) (picture, resect.Frame) {
	a := demo(t)
	p := take(t, a, "B1", 70*unit.Millimetre, geom.Vec3{X: a.Rink.GoalX(), Z: 0.5})
	f := p.frame(resect.FocalExactly(p.shot.Focal), p.chosen(rand.New(rand.NewPCG(5, 6)), 9, 1))
	f.Name = "one.jpg"
	return p, f
}

func at(f resect.Frame, landmark string) int {
	return slices.IndexFunc(f.Marks, func(m resect.Pin) bool { return m.Landmark == landmark })
}

func TestMarksThatTellNoCamera(t *testing.T) {
	_, good := net(t)
	change := func(do func(*resect.Frame)) resect.Frame {
		f := good
		f.Marks = slices.Clone(good.Marks)
		do(&f)
		return f
	}
	for _, c := range []struct {
		name  string
		frame resect.Frame
		cause resect.Cause
		says  string
	}{
		{"three marks", change(func(f *resect.Frame) { f.Marks = f.Marks[:3] }), resect.TooFew, "3 marks"},
		{"unknown name", change(func(f *resect.Frame) { f.Marks[0].Landmark = "B:post-bench:fot" }), resect.Unknown, "did you mean B:post-bench:foot?"},
		{"no such kind", change(func(f *resect.Frame) { f.Marks[0].Landmark = "moon" }), resect.Unknown, "A:goal-line:box"},
		{"marked twice", change(func(f *resect.Frame) { f.Marks[1].Landmark = f.Marks[0].Landmark }), resect.Twice, "marked twice"},
		{"two in one place", change(func(f *resect.Frame) { f.Marks[1].X, f.Marks[1].Y = f.Marks[0].X, f.Marks[0].Y }), resect.Twice, "in one place"},
		{"off the picture", change(func(f *resect.Frame) { f.Marks[0].X = -3 }), resect.Outside, "off the picture"},
		{"no number", change(func(f *resect.Frame) { f.Marks[0].Y = math.NaN() }), resect.Outside, "off the picture"},
		{"no pixels", change(func(f *resect.Frame) { f.Pixels = [2]int{} }), resect.BadFrame, "6000 x 4000"},
		{"no sensor", change(func(f *resect.Frame) { f.Sensor = 0 }), resect.BadFrame, "36 x 24 mm"},
		{"one line", change(func(f *resect.Frame) {
			f.Marks = nil
			for i, n := range []string{"B:goal-line:bench", "B:post-bench:foot", "B:post-box:foot", "B:goal-line:box"} {
				f.Marks = append(f.Marks, resect.Pin{Landmark: n, X: 1000 + 1000*float64(i), Y: 2000})
			}
		}), resect.OneLine, "one line"},
		{"left for right", change(func(f *resect.Frame) {
			for i := range f.Marks {
				f.Marks[i].X = float64(f.Pixels[0]) - f.Marks[i].X
			}
		}), resect.Mirrored, "mirrored"},
		{"y from below", change(func(f *resect.Frame) {
			for i := range f.Marks {
				f.Marks[i].Y = float64(f.Pixels[1]) - f.Marks[i].Y
			}
		}), resect.Mirrored, "counted from below"},
		{"half the focal length", change(func(f *resect.Frame) { f.Focal = resect.FocalExactly(35 * unit.Millimetre) }), resect.WrongFocal, "35 mm"},
		{"marks at random", change(func(f *resect.Frame) {
			r := rand.New(rand.NewPCG(7, 8))
			for i := range f.Marks {
				f.Marks[i].X, f.Marks[i].Y = 6000*r.Float64(), 4000*r.Float64()
			}
		}), resect.NoFit, "no camera behind the boards"},
	} {
		_, err := resect.Solve(context.Background(), demo(t), []resect.Frame{c.frame})
		var fault *resect.Fault
		if !errors.As(err, &fault) || fault.Cause != c.cause || !strings.Contains(err.Error(), c.says) || fault.Frame != "one.jpg" {
			t.Errorf("%s: %v, want cause %s that says %q", c.name, err, c.cause, c.says)
		}
	}
	if _, err := resect.Solve(context.Background(), demo(t), nil); err == nil {
		t.Error("no frame has an answer")
	}
}

// TestAWrongLandmarkIsFound marks one post's foot as the other's: it is left out, named
// as what it is, and the answer is that of the others.
func TestAWrongLandmarkIsFound(t *testing.T) {
	a := demo(t)
	_, f := net(t)
	feet := [2]int{at(f, "B:post-bench:foot"), at(f, "B:post-box:top")}
	if feet[0] < 0 || feet[1] < 0 {
		t.Fatalf("marks %v", f.Marks)
	}
	for _, wrong := range []struct {
		i       int
		as, was string
	}{{feet[0], "B:spot-bench", "B:post-bench:foot"}, {feet[1], "B:goal-line:bench", "B:post-box:top"}} {
		g := f
		g.Marks = slices.Clone(f.Marks)
		g.Marks[wrong.i].Landmark = wrong.as
		got, err := resect.Solve(context.Background(), a, []resect.Frame{g})
		if err != nil {
			t.Errorf("%s: %v", wrong.as, err)
			continue
		}
		for i, m := range got.Frames[0].Marks {
			if m.Used != (i != wrong.i) {
				t.Errorf("%s: used %v, %.1f px off", m.Landmark, m.Used, m.Px)
			}
			if i == wrong.i && (m.Like != wrong.was || m.Px < 50) {
				t.Errorf("%s is like %q, %.1f px off, want %s", m.Landmark, m.Like, m.Px, wrong.was)
			}
		}
		g.Marks = slices.Delete(g.Marks, wrong.i, wrong.i+1)
		others, err := resect.Solve(context.Background(), a, []resect.Frame{g})
		if d := off(a, got.Site, others.Site); err != nil || math.Hypot(d.Station.Metres(), d.Height.Metres()) > 1e-4 {
			t.Errorf("%s: %v from where the others place it, %v", wrong.as, d, err)
		}
	}
}

// TestTheNearestHoleIsNamed, and how far it is from where the frame was taken.
func TestTheNearestHoleIsNamed(t *testing.T) {
	a := demo(t)
	_, f := net(t)
	got, err := resect.Solve(context.Background(), a, []resect.Frame{f})
	if err != nil {
		t.Fatal(err)
	}
	h, ok := got.Near.Get()
	if !ok || h.ID != "B1" || math.Abs(got.Off.Station.Metres()) > 0.1 {
		t.Errorf("hole %q, %v; off %v", h.ID, ok, got.Off)
	}
	a.Holes = nil
	if got, err = resect.Solve(context.Background(), a, []resect.Frame{f}); err != nil || !got.Near.IsZero() {
		t.Errorf("%v, %v: an arena without holes has one", got.Near, err)
	}
}

// TestTheMarkAdvisedHelps sets every mark that could be advised: the one that is makes the
// ellipse about as small as was said, and no other makes it much smaller. They differ a
// little from what was said, since each changes the estimate of the marks' errors, too.
func TestTheMarkAdvisedHelps(t *testing.T) {
	a := demo(t)
	p := take(t, a, "B1", 70*unit.Millimetre, geom.Vec3{X: a.Rink.GoalX(), Z: 0.5})
	r := rand.New(rand.NewPCG(9, 9))
	marks := p.chosen(r, 6, 1)
	with := func(more ...resect.Pin) resect.Answer {
		t.Helper()
		got, err := resect.Solve(context.Background(), a, []resect.Frame{p.frame(resect.FocalExactly(p.shot.Focal), append(slices.Clone(marks), more...))})
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	before := with()
	if before.Help == nil {
		t.Fatal("no mark is advised")
	}
	after := map[string]float64{}
	best := ""
	for _, m := range p.marks {
		if slices.ContainsFunc(marks, func(o resect.Pin) bool { return o.Landmark == m.Landmark }) {
			continue
		}
		after[m.Landmark] = with(m).Ellipse.Major.Metres()
		if best == "" || after[m.Landmark] < after[best] {
			best = m.Landmark
		}
		if m.Landmark == before.Help.Landmark && math.Hypot(m.X-before.Help.Seen[0], m.Y-before.Help.Seen[1]) > 20 {
			t.Errorf("%s is expected at %v, and lies at %.1f, %.1f", m.Landmark, before.Help.Seen, m.X, m.Y)
		}
	}
	said, got := before.Help.Major.Metres(), after[before.Help.Landmark]
	t.Logf("%d marks tried: %s %.4f m, the best %s %.4f m", len(after), before.Help.Landmark, got, best, after[best])
	if len(after) < 10 || after[best] < 0.9*got {
		t.Errorf("of %d marks %s makes it %.4f m, the one advised %.4f m", len(after), best, after[best], got)
	}
	if got >= before.Ellipse.Major.Metres() || got/said < 0.5 || got/said > 2 {
		t.Errorf("%s: from %.4f to %.4f m, said %.4f m", before.Help.Landmark, before.Ellipse.Major.Metres(), got, said)
	}
}

// TestASolveEndsWithItsContext: whoever waits no longer is told so, and soon.
func TestASolveEndsWithItsContext(t *testing.T) {
	a := demo(t)
	_, f := net(t)
	why := errors.New("the page was left")
	ctx, stop := context.WithCancelCause(t.Context())
	stop(why)
	if _, err := resect.Solve(ctx, a, []resect.Frame{f}); !errors.Is(err, why) {
		t.Errorf("%v, expected %v", err, why)
	}
	// The most that is taken, and nothing fits: seconds of work, of which no step is long.
	r := rand.New(rand.NewPCG(5, 6))
	f.Marks, f.Focal = nil, resect.Focal{}
	for _, l := range resect.Landmarks(a) {
		if len(f.Marks) < resect.MostMarks {
			f.Marks = append(f.Marks, resect.Pin{Landmark: l.Name, X: 6000 * r.Float64(), Y: 4000 * r.Float64()})
		}
	}
	ctx, stopLate := context.WithTimeout(t.Context(), 50*time.Millisecond)
	defer stopLate()
	if _, err := resect.Solve(ctx, a, slices.Repeat([]resect.Frame{f}, resect.MostFrames)); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("%v, expected that the time is over", err)
	}
}

// TestFramesOfOneHoleTogether takes three frames: together they know more than each, and
// one of another hole is told apart.
func TestFramesOfOneHoleTogether(t *testing.T) {
	a := demo(t)
	r := rand.New(rand.NewPCG(11, 12))
	var frames []resect.Frame
	var alone []resect.Answer
	for _, x := range []float64{a.Rink.GoalX(), a.Rink.GoalX() - 6, 10} {
		p := take(t, a, "B1", 70*unit.Millimetre, geom.Vec3{X: x, Z: 0.5})
		f := p.frame(resect.Focal{}, p.chosen(r, 10, 1))
		frames = append(frames, f)
		got, err := resect.Solve(context.Background(), a, frames[len(frames)-1:])
		if err != nil {
			t.Fatal(err)
		}
		alone = append(alone, got)
	}
	got, err := resect.Solve(context.Background(), a, frames)
	if err != nil {
		t.Fatal(err)
	}
	h, _ := a.Hole("B1")
	d := resect.Site{Station: a.Rink.Apart(h.Station, got.Station), Height: got.Height - h.Height}
	if len(got.Frames) != 3 || !holds(got.Ellipse, d) {
		t.Errorf("%d frames, off by %v, ellipse %v", len(got.Frames), d, got.Ellipse)
	}
	wide := 0.0
	for _, one := range alone {
		wide = max(wide, one.Ellipse.Major.Metres())
	}
	if got.Ellipse.Major.Metres() >= wide {
		t.Errorf("together %.3f m, alone up to %.3f m", got.Ellipse.Major.Metres(), wide)
	}
	other := take(t, a, "B4", 70*unit.Millimetre, geom.Vec3{X: a.Rink.GoalX(), Z: 0.5})
	var fault *resect.Fault
	_, err = resect.Solve(context.Background(), a, append(frames, other.frame(resect.Focal{}, other.chosen(r, 10, 1))))
	if !errors.As(err, &fault) || fault.Cause != resect.NotTogether {
		t.Errorf("a frame of another hole: %v", err)
	}
}

// TestPortraitAndRoll turns the camera: a rolled picture comes out rolled, in the same place.
func TestPortraitAndRoll(t *testing.T) {
	a := demo(t)
	p, f := net(t)
	f.Marks = p.some(rand.New(rand.NewPCG(1, 1)), 99, 0)
	turned := f
	turned.Pixels, turned.Sensor, turned.Marks = [2]int{f.Pixels[1], f.Pixels[0]}, f.Sensor*unit.Length(f.Pixels[1])/unit.Length(f.Pixels[0]), nil
	for _, m := range f.Marks { // the camera's right side turned up: what was right is below
		turned.Marks = append(turned.Marks, resect.Pin{Landmark: m.Landmark, X: m.Y, Y: float64(f.Pixels[0]) - m.X})
	}
	got, err := resect.Solve(context.Background(), a, []resect.Frame{turned})
	if err != nil {
		t.Fatal(err)
	}
	d := off(a, got.Site, p.place)
	if roll := got.Frames[0].Roll.Degrees(); math.Abs(math.Abs(roll)-90) > 0.01 || math.Hypot(d.Station.Metres(), d.Height.Metres()) > 0.001 {
		t.Errorf("roll %.3f deg, off by %v", roll, d)
	}
}

func BenchmarkSolve(b *testing.B) {
	a := demo(b)
	_, f := net(b)
	for _, c := range []struct {
		name  string
		focal resect.Focal
	}{{"focal known", f.Focal}, {"focal unknown", resect.Focal{}}} {
		f.Focal = c.focal
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := resect.Solve(context.Background(), a, []resect.Frame{f}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
