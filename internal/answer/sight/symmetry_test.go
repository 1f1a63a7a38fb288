package sight_test

import (
	"math"
	"runtime"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// TestTurnedAndMirroredHolesSeeTheSame: a hole turned by half a turn, or
// mirrored in either axis, sees the turned or mirrored cells.
func TestTurnedAndMirroredHolesSeeTheSame(t *testing.T) {
	a, k := bare(t, "north-american")
	a.Lenses = []string{"70-200", "400-2.8"}
	half := a.Rink.Perimeter() / 2
	rapid.Check(t, func(t *rapid.T) {
		a := a
		station := unit.Length(rapid.Float64Range(0, half.Metres()).Draw(t, "station"))
		height := unit.Length(rapid.Float64Range(1.15, 1.7).Draw(t, "height"))
		one := hole(&a, "one", station, height)
		turned := hole(&a, "turned", station+half, height)
		ends := hole(&a, "ends", 2*half-station, height)
		sides := hole(&a, "sides", half-station, height)
		m, g := mapperAndGrid(t, a, k, 1.3)
		of := func(h glass.Hole) sight.Reach {
			r, err := m.Map(t.Context(), h, g, bothHeights)
			if err != nil {
				t.Fatal(err)
			}
			return r
		}
		want := of(one)
		for name, got := range map[string]sight.Reach{"turned": of(turned), "ends swapped": of(ends), "sides swapped": of(sides)} {
			flipX, flipY := name != "sides swapped", name != "ends swapped"
			differ := 0
			for layer := range want.Layers {
				for row := range g.Rows {
					for column := range g.Columns {
						c, r := column, row
						if flipX {
							c = g.Columns - 1 - column
						}
						if flipY {
							r = g.Rows - 1 - row
						}
						if want.Layers[layer].Seen[g.Index(column, row)] != got.Layers[layer].Seen[g.Index(c, r)] {
							differ++
						}
					}
				}
			}
			if differ > 1 { // a cell on a limit may fall either way by rounding
				t.Fatalf("%s: %d cells differ", name, differ)
			}
			if math.Abs(got.Blind.Ahead-want.Blind.Ahead) > 2e-4 || math.Abs(got.Blind.Mean-want.Blind.Mean) > 1e-3 {
				t.Fatalf("%s: blind strip %+v, want %+v", name, got.Blind, want.Blind)
			}
		}
	})
}

func mapperAndGrid(t interface{ Fatal(...any) }, a arena.Arena, k kit.Kit, step unit.Length) (*sight.Mapper, *sight.Grid) {
	m, err := sight.NewMapper(a, k)
	if err != nil {
		t.Fatal(err)
	}
	g, err := sight.NewGrid(a.Rink, step)
	if err != nil {
		t.Fatal(err)
	}
	return m, g
}

// TestReachDoesNotDependOnTheCores compares one core with many.
func TestReachDoesNotDependOnTheCores(t *testing.T) {
	a, k := bare(t, "international")
	h := hole(&a, "h", 30, 1.4)
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	want := mapped(t, a, k, h, 0.5)
	for _, cores := range []int{2, 5} {
		runtime.GOMAXPROCS(cores)
		got := mapped(t, a, k, h, 0.5)
		for i := range want.Layers {
			if !slices.Equal(got.Layers[i].Seen, want.Layers[i].Seen) || got.Layers[i].Share != want.Layers[i].Share {
				t.Errorf("%d cores: layer %d differs", cores, i)
			}
		}
		for i := range want.Lenses {
			if !slices.Equal(got.Lenses[i].Share, want.Lenses[i].Share) || got.Lenses[i].Blind != want.Lenses[i].Blind {
				t.Errorf("%d cores: lens %s differs", cores, want.Lenses[i].ID)
			}
		}
	}
}

// TestMoreNeverSeesLess: a larger hole, a thinner pane and lower boards see
// every cell that was seen before.
func TestMoreNeverSeesLess(t *testing.T) {
	base, k := bare(t, "north-american")
	base.Lenses = []string{"70-200", "400-2.8"}
	gained := 0
	rapid.Check(t, func(t *rapid.T) {
		station := unit.Length(rapid.Float64Range(0, 80).Draw(t, "station"))
		draw := func(name string, lo, hi float64) unit.Length {
			return unit.Length(rapid.Float64Range(lo, hi).Draw(t, name))
		}
		a := base
		h := hole(&a, "h", station, draw("height", 1.15, 1.6))
		h.Size = unit.Size{W: draw("width", 0.09, 0.2), H: draw("high", 0.09, 0.2)}
		b := base
		more := hole(&b, "h", station, h.Height)
		more.Size = unit.Size{W: h.Size.W + draw("wider", 0, 0.05), H: h.Size.H + draw("higher", 0, 0.05)}
		b.Panes[0].Thickness = unit.Known[unit.Length](0.0127 - draw("thinner", 0, 0.006))
		b.Boards.Height -= draw("lower", 0, 0.1)
		m, g := mapperAndGrid(t, a, k, 1.5)
		n, _ := mapperAndGrid(t, b, k, 1.5)
		less, err := m.Map(t.Context(), h, g, bothHeights)
		if err != nil {
			t.Fatal(err)
		}
		all, err := n.Map(t.Context(), more, g, bothHeights)
		if err != nil {
			t.Fatal(err)
		}
		for i := range less.Layers {
			for j, seen := range less.Layers[i].Seen {
				if seen&^all.Layers[i].Seen[j] != 0 {
					t.Fatalf("layer %d, cell %d: seen by %b, with more room only by %b", i, j, seen, all.Layers[i].Seen[j])
				}
				if seen != all.Layers[i].Seen[j] {
					gained++
				}
			}
		}
	})
	if gained == 0 {
		t.Error("no drawn case gained a cell: the check shows nothing")
	}
}

// TestWedgeHoldsWhatIsSeen: a cell well inside the wedge's outline is seen, one
// well outside is not.
func TestWedgeHoldsWhatIsSeen(t *testing.T) {
	a, k := bare(t, "international")
	a.Lenses = []string{"400-2.8"}
	checked := 0
	for _, station := range []unit.Length{5, 24, 29, 44} {
		r := mapped(t, a, k, hole(&a, "h", station, 1.4), 0.3)
		for _, l := range r.Layers {
			outline := l.Wedge.Polygon()
			for row := range r.Grid.Rows {
				first, last := r.Grid.Run(row)
				for column := first; column < last; column++ {
					p := r.Grid.At(column, row)
					inside, away := inPolygon(outline, p)
					if away < 0.15 { // chords between rays leave the arcs by less
						continue
					}
					checked++
					if seen := l.Seen[r.Grid.Index(column, row)] != 0; seen != inside {
						t.Fatalf("station %v, height %v, cell at %v: seen %v, inside the wedge %v by %v m", station, l.Height, p, seen, inside, away)
					}
				}
			}
		}
	}
	if checked < 10000 {
		t.Errorf("%d cells checked", checked)
	}
}

// inPolygon says by crossings whether a point lies inside an outline, and how
// far from its edge.
func inPolygon(outline []geom.Vec2, p geom.Vec2) (inside bool, away float64) {
	away = math.Inf(1)
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			inside = !inside
		}
		d := b.Sub(a)
		s := 0.0
		if l := d.Dot(d); l > 0 {
			s = min(max(p.Sub(a).Dot(d)/l, 0), 1)
		}
		away = min(away, p.Sub(a.Add(d.Scale(s))).Len())
	}
	return inside, away
}
