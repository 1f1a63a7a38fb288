package cut

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// dxfFacts is what testdata/ref/measure.py finds in a DXF.
type dxfFacts struct {
	Errors   int          `json:"errors"`
	InsUnits int          `json:"insunits"`
	Version  string       `json:"version"`
	Cut      []dxfOutline `json:"cut"`
	CutOther int          `json:"cut_other"`
	Circles  [][3]float64 `json:"cut_circles"`
	Datum    []dxfOutline `json:"datum"`
	Pilots   [][3]float64 `json:"pilots"`
	Text     []string     `json:"text"`
	Glue     []dxfOutline `json:"glue"`
	Layers   []string     `json:"layers"`
	Bars     [][2]float64 `json:"bars"` // lines on TEXT: along and up
	None     int          `json:"none"` // lines of no length
	Drawn    [4]float64   `json:"drawn"`
	Head     [4]float64   `json:"head"`
}

type dxfOutline struct {
	Closed bool       `json:"closed"`
	Box    [4]float64 `json:"box"`
	Radii  []float64  `json:"radii"`
	None   int        `json:"none"` // pieces of no length
}

func (o dxfOutline) w() float64 { return o.Box[2] - o.Box[0] }
func (o dxfOutline) h() float64 { return o.Box[3] - o.Box[1] }

// measure reads drawings for a machine in both releases and returns what the newer
// one of each holds; the older holds the same.
func measure(t *testing.T, drawings ...*sheet.Drawing) []dxfFacts {
	t.Helper()
	var files [][]byte
	for _, d := range drawings {
		files = append(files, sheet.DXF(d), sheet.DXF12(d))
	}
	all, out := measureFiles(t, files...), []dxfFacts(nil)
	for i, d := range drawings {
		f, old := all[2*i], all[2*i+1]
		f.isSound(t, d)
		old.isSound(t, d)
		if f.Version != "AC1015" || f.InsUnits != 4 || old.Version != "AC1009" {
			t.Errorf("%s: versions %s and %s, $INSUNITS %d", d.Title, f.Version, old.Version, f.InsUnits)
		}
		if got, want := fmt.Sprint(old.Cut, old.Datum, old.Glue, old.Pilots, old.Layers, old.Drawn), fmt.Sprint(f.Cut, f.Datum, f.Glue, f.Pilots, f.Layers, f.Drawn); got != want {
			t.Errorf("%s: release 12 has %s, 2000 has %s", d.Title, got, want)
		}
		out = append(out, f)
	}
	return out
}

// measureFiles reads files with ezdxf, all in one run of it: to start it takes longer
// than to read.
func measureFiles(t *testing.T, files ...[]byte) (all []dxfFacts) {
	t.Helper()
	args := []string{"testdata/ref/measure.py"}
	for _, data := range files {
		args = append(args, keep(t, "drawing.dxf", data))
	}
	if err := json.Unmarshal(tool(t, debianPython, args...), &all); err != nil || len(all) != len(files) {
		t.Fatal(len(all), err)
	}
	return all
}

// isSound holds what is true of every drawing for a machine.
func (f dxfFacts) isSound(t *testing.T, d *sheet.Drawing) {
	t.Helper()
	if f.Errors != 0 || f.CutOther != 0 || f.None != 0 {
		t.Errorf("%s: %d audit errors, %d other things on CUT, %d lines of no length", d.Title, f.Errors, f.CutOther, f.None)
	}
	for _, l := range f.Layers {
		if !slices.Contains([]string{"CUT", "DRILL", "ENGRAVE", "DATUM", "TEXT", statusLayer}, l) {
			t.Errorf("%s: layer %s", d.Title, l)
		}
	}
	if f.Drawn[0] < f.Head[0] || f.Drawn[1] < f.Head[1] || f.Drawn[2] > f.Head[2] || f.Drawn[3] > f.Head[3] {
		t.Errorf("%s: drawn %v, the header states %v", d.Title, f.Drawn, f.Head)
	}
	if all := strings.Join(f.Text, " "); !strings.Contains(all, "in millimetres") || !strings.Contains(all, "both bars 100 mm") || !strings.Contains(all, "DATUM 0, 0") {
		t.Errorf("%s: texts %q", d.Title, all)
	}
	for _, want := range [][2]float64{{100, 0}, {0, 100}} {
		if !slices.ContainsFunc(f.Bars, func(b [2]float64) bool { return math.Hypot(b[0]-want[0], b[1]-want[1]) < 1e-6 }) {
			t.Errorf("%s: no scale bar of %v mm among %v", d.Title, want, f.Bars)
		}
	}
	for _, c := range f.Cut {
		if !c.Closed || c.None > 0 {
			t.Errorf("%s: an outline on CUT is open, or has pieces of no length: %+v", d.Title, c)
		}
	}
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.01 {
		t.Errorf("%s: %.4f mm, want %.4f", what, got, want)
	}
}

// TestPaneInDXF reads the pane's DXF back with ezdxf and measures the hole's
// size, radius and place from the pane's edges.
func TestPaneInDXF(t *testing.T) {
	var orders []ShopOrder
	var jobs []Job
	var panes []*sheet.Drawing
	for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
		for _, id := range []string{"flat", "bent", "order"} {
			p := shopPlan(t, sys)
			j := jobOf(t, p, id, DefaultOptions())
			orders, jobs, panes = append(orders, p), append(jobs, j), append(panes, p.PaneOutline(j))
		}
	}
	for i, f := range measure(t, panes...) {
		p, j, id := orders[i], jobs[i], jobs[i].Hole.ID
		if len(f.Cut) != 1 || len(f.Datum) != 1 || len(f.Cut[0].Radii) != 4 {
			t.Fatalf("%s: %+v", id, f)
		}
		hole, pane := f.Cut[0], f.Datum[0]
		near(t, id+" width", hole.w(), j.Hole.Size.W.Millimetres())
		near(t, id+" height", hole.h(), j.Hole.Size.H.Millimetres())
		near(t, id+" from the left", (hole.Box[0]+hole.Box[2])/2, j.front(j.Face.Left).Millimetres())
		near(t, id+" above the boards", (hole.Box[1]+hole.Box[3])/2, j.Face.Up.Millimetres())
		near(t, id+" datum's x", pane.Box[0], 0)
		near(t, id+" datum's y", pane.Box[1], 0)
		near(t, id+" pane's width", pane.Box[2], j.front(j.Face.Width).Millimetres())
		near(t, id+" pane's height", pane.Box[3], j.Face.Height.Millimetres())
		for _, r := range hole.Radii {
			near(t, id+" radius", r, j.Corner.Millimetres())
		}
		pilots := 4
		if j.Route == Order {
			pilots = 0
		}
		if len(f.Pilots) != pilots {
			t.Errorf("%s: %d pilot holes, want %d", id, len(f.Pilots), pilots)
		}
		all := strings.Join(f.Text, "\n")
		if never := strings.Contains(all, "NEVER CUT"); never != (j.Route == Order) || !strings.Contains(all, p.Stamp()) {
			t.Errorf("%s: texts %q", id, f.Text)
		}
	}
}

// TestCoverInDXF measures plug, flange with its tab, and the cord's hole.
func TestCoverInDXF(t *testing.T) {
	p := shopPlan(t, unit.Imperial)
	j := jobOf(t, p, "flat", DefaultOptions())
	both := measure(t, p.PlugOutline(j), p.FlangeOutline(j))
	f, g := both[0], both[1]
	if len(f.Cut) != 1 || len(g.Cut) != 1 || len(g.Pilots) != 1 || len(g.Glue) != 1 {
		t.Fatalf("plug %+v, flange %+v", f, g)
	}
	plug, flange, cord, glue := f.Cut[0], g.Cut[0], g.Pilots[0], g.Glue[0]
	near(t, "plug's width", plug.w(), 138)
	near(t, "plug's height", plug.h(), 113)
	near(t, "flange's width", flange.w(), 180)
	near(t, "flange's height with the tab", flange.h(), 155+30)
	near(t, "cord's hole", 2*cord[2], 8)
	near(t, "cord's hole in the middle", 2*cord[0], flange.Box[0]+flange.Box[2])
	if cord[1]-cord[2] < flange.Box[1]+4 || cord[1]+cord[2] > flange.Box[1]+30 {
		t.Errorf("cord's hole %v not in the tab of %v", cord, flange.Box)
	}
	near(t, "glued plug's width", glue.w(), 138)
	near(t, "glued plug's foot above the flange's", glue.Box[1]-flange.Box[1], 30+21)
	for i, v := range append(plug.Box[:2:2], flange.Box[:2]...) {
		near(t, fmt.Sprint("datum ", i), v, 0)
	}
	round, _ := oddPlan(t, unit.Metric, oddHole{114, 114, 57, 1200, 1800, 600, 430, 12})
	j = jobOf(t, round, round.Arena.Holes[0].ID, DefaultOptions())
	if c := measure(t, round.PaneOutline(j))[0]; len(c.Cut) != 0 || len(c.Circles) != 1 {
		t.Errorf("a round hole: %+v", c)
	}
}

// TestHoldInDXF measures the pieces of both holds: each outline closed on CUT, screw holes
// as circles on DRILL.
func TestHoldInDXF(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	for hold, want := range map[Hold]struct{ sizes, screws [][2]float64 }{
		Button: {[][2]float64{{50, 20}, {30, 24}}, [][2]float64{{15, 10}, {75, 12}}},
		Strap:  {[][2]float64{{60, 30}, {28, 5}}, [][2]float64{{8, 15}, {52, 15}}},
	} {
		o := DefaultOptions()
		o.Hold = hold
		f := measure(t, p.HoldOutline(jobOf(t, p, "flat", o)))[0]
		if len(f.Cut) != len(want.sizes) || len(f.Pilots) != len(want.screws) {
			t.Fatalf("%s: %+v", hold, f)
		}
		for i, c := range f.Cut {
			near(t, fmt.Sprint(hold, " width ", i), c.w(), want.sizes[i][0])
			near(t, fmt.Sprint(hold, " height ", i), c.h(), want.sizes[i][1])
			near(t, fmt.Sprint(hold, " screw across ", i), f.Pilots[i][0], want.screws[i][0])
			near(t, fmt.Sprint(hold, " screw up ", i), f.Pilots[i][1], want.screws[i][1])
			near(t, fmt.Sprint(hold, " screw dia. ", i), 2*f.Pilots[i][2], 5.5)
		}
	}
}

// TestPaneWithSeveralHolesInDXF: what is to be made of a pane is on CUT together, what
// exists or may not be made on DATUM, whichever hole is asked for.
func TestPaneWithSeveralHolesInDXF(t *testing.T) {
	p := twinPlan(t)
	d := p.PaneOutline(jobOf(t, p, "flat", DefaultOptions()))
	f := measure(t, d)[0]
	if len(f.Cut) != 2 || len(f.Pilots) != 8 || len(f.Datum) != 3 {
		t.Fatalf("%d outlines to cut, %d pilot holes, %d on DATUM; want 2, 8 and the pane with two holes", len(f.Cut), len(f.Pilots), len(f.Datum))
	}
	near(t, "first hole's middle", (f.Cut[0].Box[0]+f.Cut[0].Box[2])/2, 650)
	near(t, "second hole's middle", (f.Cut[1].Box[0]+f.Cut[1].Box[2])/2, 1000)
	if other := p.PaneOutline(jobOf(t, p, "there", DefaultOptions())); string(sheet.DXF(other)) != string(sheet.DXF(d)) {
		t.Error("the pane's file by another of its holes is another")
	}
}

// TestOneFileForEachThickness reads of each part's file from which sheet it is cut: one
// thickness a file, and the material.
func TestOneFileForEachThickness(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	j := jobOf(t, p, "flat", DefaultOptions())
	facts := measure(t, p.PlugOutline(j), p.FlangeOutline(j), p.HoldOutline(j))
	for i, want := range []string{"sheet 10 mm (0.394 in)", "sheet 6 mm (0.236 in)", "sheet 6 mm (0.236 in)"} {
		all := strings.Join(facts[i].Text, " ")
		thick := strings.Count(all, "sheet ")
		if got := strings.Count(all, want); got == 0 || got != thick || !strings.Contains(all, "polycarbonate") {
			t.Errorf("part %d: %d of %d thicknesses are %q: %s", i, got, thick, want, all)
		}
	}
}

// TestPatchInDXF measures a low window's clear patch.
func TestPatchInDXF(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	job, err := p.WindowJob(p.Arena.Windows[0], builtInKit(t))
	clear, ok := job.Clear.Get()
	if err != nil || !ok {
		t.Fatal(job, err)
	}
	f := measure(t, p.WindowOutline(job))[0]
	if len(f.Cut) != 1 {
		t.Fatalf("%d outlines on CUT", len(f.Cut))
	}
	want := clear.Size
	near(t, "patch's width", f.Cut[0].w(), want.W.Millimetres())
	near(t, "patch's height", f.Cut[0].h(), want.H.Millimetres())
}
