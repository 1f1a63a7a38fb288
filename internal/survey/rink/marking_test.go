package rink

import (
	"math"
	"testing"
)

func TestLinesOfTheBooks(t *testing.T) {
	for _, c := range []struct {
		name  string
		unit  float64
		x     [5]float64 // middles from centre ice
		width [5]float64
	}{
		// 75 ft end at the neutral-zone edge of a line 12 in wide: its middle is 25.5 ft out.
		{NorthAmerican, 0.3048, [5]float64{-89, -25.5, 0, 25.5, 89}, [5]float64{1.0 / 6, 1, 1, 1, 1.0 / 6}},
		// 22.86 m run to the middle.
		{International, 1, [5]float64{-26, -7.14, 0, 7.14, 26}, [5]float64{0.05, 0.3, 0.3, 0.3, 0.05}},
	} {
		r := standard(t, c.name)
		lines := r.Lines()
		if len(lines) != 5 {
			t.Fatalf("%s: %d lines", c.name, len(lines))
		}
		for i, l := range lines {
			near(t, "line", l.From.X/c.unit, c.x[i], 1e-12)
			near(t, "width", l.Width/c.unit, c.width[i], 1e-12)
			near(t, "across", l.To.Y+l.From.Y, 0, 0)
			near(t, "boards", l.To.Y, r.HalfWidth(l.To.X), 0)
		}
	}
}

func TestLineEdges(t *testing.T) {
	d := international()
	for edge, want := range map[LineEdge]float64{LineMiddle: 7.14, LineFarEdge: 7.29, LineNearEdge: 6.99} {
		d.Markings.BlueLineTo = edge
		r, err := New(d)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "middle", r.Lines()[3].From.X, want, 1e-12)
		neutral, end := r.BlueX()
		near(t, "edges", end-neutral, 0.3, 1e-12)
		s, _ := r.Landmark(BBench, BlueLine)
		near(t, "landmark stays at the book's figure", r.Point(s).X, 7.14, 1e-12)
	}
}

// Goal 6 x 4 ft on a line 11 ft from the boards; the crease's arc, of radius
// 6 ft, meets its sides, 8 ft apart, sqrt(36-16) = 4.472 ft before the line.
func TestGoalAndCrease(t *testing.T) {
	r := standard(t, NorthAmerican)
	const ft = 0.3048
	goals, creases := r.Goals(), r.Creases()
	if len(goals) != 2 || len(creases) != 2 {
		t.Fatalf("%d goals, %d creases", len(goals), len(creases))
	}
	for i, side := range []float64{-1, 1} {
		g := goals[i]
		near(t, "post", g.Posts[1].X, side*89*ft, 1e-12)
		near(t, "width", g.Posts[1].Y-g.Posts[0].Y, 6*ft, 1e-12)
		near(t, "width to the posts' middles", g.PostMiddles()[1].Y-g.PostMiddles()[0].Y, 6*ft+2.375*0.0254, 1e-12)
		near(t, "height", g.Height, 4*ft, 1e-12)
		near(t, "back", (g.Back[0].X-g.Posts[0].X)*side, 44*0.0254, 1e-12)
		near(t, "out", g.Out, -side, 0)
		outline := creases[i].Outline(64)
		near(t, "starts on the line", outline[0].X, side*89*ft, 1e-12)
		near(t, "side", outline[1].X, side*(89-math.Sqrt(20))*ft, 1e-12)
		near(t, "side", outline[1].Y, -4*ft, 1e-12)
		near(t, "middle", outline[1+32].X, side*83*ft, 1e-12)
	}
	whole := standard(t, International).Creases()[0].Outline(2)
	near(t, "half circle ends on the line", whole[0].X, -26, 1e-9)
	near(t, "half circle is as wide as its radius", whole[2].Y, 1.83, 1e-12)
}

func TestBareRinkHasNoMarkings(t *testing.T) {
	r, err := New(Dimensions{Length: 40, Width: 20, CornerRadius: 5})
	if err != nil {
		t.Fatal(err)
	}
	if r.Marked() || len(r.Lines())+len(r.Spots())+len(r.Goals())+len(r.Creases()) > 0 {
		t.Error("a bare rink has markings")
	}
	if places := r.LandmarkPlaces(); len(places) > 0 {
		t.Errorf("%+v", places)
	}
}

// The outline's polygon has the ice's area, short by its chords alone: per
// corner r^2/2 (pi/2 - n sin(pi/2n)).
func TestOutline(t *testing.T) {
	r := standard(t, NorthAmerican)
	const steps = 32
	pts, area := r.Outline(steps), 0.0
	for i, p := range pts {
		area += p.Cross(pts[(i+1)%len(pts)]) / 2
	}
	rad := r.Dimensions().CornerRadius.Metres()
	short := 4 * rad * rad / 2 * (math.Pi/2 - steps*math.Sin(math.Pi/2/steps))
	near(t, "area", area, r.Area()-short, 1e-9)
	if len(pts) != 1+4*(steps+1) {
		t.Errorf("%d points", len(pts))
	}
}
