package chart_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
)

var update = flag.Bool("update", false, "write the golden drawings anew")

func golden(t *testing.T, name string, d *sheet.Drawing) {
	t.Helper()
	path, got := filepath.Join("testdata", name), sheet.InlineSVG(d)
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs from the golden drawing; look at both, then run go test ./chart -update", name)
	}
}

// node is an element of a drawing read back with the standard library's reader.
type node struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Children []node     `xml:",any"`
}

func (n node) attr(name string) string {
	for _, a := range n.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// find returns all elements below n that a test accepts.
func (n node) find(ok func(node) bool) []node {
	var out []node
	for _, c := range n.Children {
		if ok(c) {
			out = append(out, c)
		}
		out = append(out, c.find(ok)...)
	}
	return out
}

func readSVG(t *testing.T, d *sheet.Drawing) node {
	t.Helper()
	var root node
	if err := xml.NewDecoder(bytes.NewReader(sheet.SVG(d))).Decode(&root); err != nil && !errors.Is(err, io.EOF) {
		t.Fatal(err)
	}
	return root
}

// byData returns the first element with a data attribute of a value and a class.
func byData(t *testing.T, root node, key, value, class string) node {
	t.Helper()
	for _, g := range root.find(func(n node) bool { return n.attr("data-"+key) == value }) {
		for _, n := range g.find(func(n node) bool { return strings.HasPrefix(n.attr("class"), class) }) {
			return n
		}
	}
	t.Fatalf("no %s with data-%s=%q", class, key, value)
	return node{}
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Read back from the file, the marks of the holes have the distances of the
// rink's own points, at the plan's scale: the scale bar and the marks agree.
func TestPlanHolesStandInPlace(t *testing.T) {
	for name, a := range arenas(t) {
		p := chart.Content{Arena: a}
		root := readSVG(t, chart.PlanMap(p, 300))
		ice := number(t, strings.Fields(strings.NewReplacer("M", "", "L", " ", "A", " ").Replace(
			root.find(func(n node) bool { return n.attr("class") == "ice" })[0].attr("d")))[0])
		// The outline starts at station 0, on the red line: x of the sheet's middle.
		if math.Abs(ice-150) > 0.01 {
			t.Errorf("%s: station 0 at x = %g mm, want 150", name, ice)
		}
		if len(a.Holes) < 2 {
			t.Fatalf("%s has %d holes", name, len(a.Holes))
		}
		var scale float64
		for i, h := range a.Holes {
			c := byData(t, root, "hole", h.ID, "hit")
			x := number(t, c.attr("cx")) - 150
			// A mark stands on the glass, a little outside the rink face.
			want := a.Rink.Point(h.Station).X
			out := -a.Rink.Normal(h.Station).X
			if i == 0 {
				scale = x / want
			}
			if slack := 0.02 + 2*math.Abs(out) + 0.03*math.Abs(x); math.Abs(x-scale*want) > slack {
				t.Errorf("%s: hole %s at x = %.2f mm, want %.2f within %.2f", name, h.ID, x, scale*want, slack)
			}
		}
	}
}

// On the strip a hole is as large as it is, at its station and height: all four
// edges are read back from the file and measured against the boards' top edge
// and the row's own ruler.
func TestStripHolesAreTrue(t *testing.T) {
	for name, a := range arenas(t) {
		d := chart.BoardsStrip(chart.Content{Arena: a}, 1000, 4)
		root := readSVG(t, d)
		// Four rows between a margin of 15 mm at the left and 4 at the right would
		// stand at 1:41 or 1:42, where ISO 5455 has 1:50, and on the small rink at 1:37.
		scale := 1000.0 / 50
		if name == "sorrel-flats" {
			scale = 1000.0 / 40
		}
		if fits := (1000.0 - 15 - 4) / (a.Rink.Perimeter().Metres() / 4); fits < scale || fits > 1.25*scale {
			t.Fatalf("%s: a row would stand at 1:%.1f", name, 1000/fits)
		}
		for _, h := range a.Holes {
			xs, ys := corners(t, byData(t, root, "hole", h.ID, "hole-cut").attr("d"))
			into := math.Mod(h.Station.Metres(), a.Rink.Perimeter().Metres()/4)
			for i, want := range []float64{15 + scale*(into-h.Size.W.Metres()/2), 15 + scale*(into+h.Size.W.Metres()/2)} {
				if math.Abs(xs[i]-want) > 0.011 {
					t.Errorf("%s: hole %s edge at x = %.3f mm, want %.3f", name, h.ID, xs[i], want)
				}
			}
			if got, want := ys[1]-ys[0], scale*h.Size.H.Metres(); math.Abs(got-want) > 0.011 {
				t.Errorf("%s: hole %s is %.3f mm high, want %.3f", name, h.ID, got, want)
			}
		}
	}
}

// corners returns the least and greatest x and y of a path of lines and arcs.
func corners(t *testing.T, path string) (xs, ys [2]float64) {
	t.Helper()
	xs, ys = [2]float64{math.Inf(1), math.Inf(-1)}, [2]float64{math.Inf(1), math.Inf(-1)}
	for _, step := range strings.FieldsFunc(path, func(r rune) bool { return strings.ContainsRune("MLZ", r) }) {
		for i, part := range strings.Split(step, "A") {
			f := strings.Fields(part)
			if i > 0 {
				f = f[5:] // past radii, turn and flags
			}
			x, y := number(t, f[0]), number(t, f[1])
			xs, ys = [2]float64{min(xs[0], x), max(xs[1], x)}, [2]float64{min(ys[0], y), max(ys[1], y)}
		}
	}
	return xs, ys
}

func TestGoldenPictures(t *testing.T) {
	p := larkmoor(t)
	golden(t, "larkmoor-plan.svg", chart.PlanMap(p, 277))
	golden(t, "larkmoor-strip.svg", chart.BoardsStrip(p, 277, 4))
	p.Bare, p.Picked = true, "B-end"
	golden(t, "larkmoor-plan-bare.svg", chart.PlanMap(p, 240))
}

func TestPicturesAreTheSameEveryTime(t *testing.T) {
	p := planOf(t, demo(t))
	if !bytes.Equal(sheet.SVG(chart.PlanMap(p, 277)), sheet.SVG(chart.PlanMap(p, 277))) {
		t.Error("two plan maps differ")
	}
	if !bytes.Equal(sheet.SVG(chart.BoardsStrip(p, 400, 4)), sheet.SVG(chart.BoardsStrip(p, 400, 4))) {
		t.Error("two strips differ")
	}
}
