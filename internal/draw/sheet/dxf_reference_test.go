package sheet_test

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
)

// The reader is ezdxf (package python3-ezdxf), which also audits the file.

// dxfRead is what testdata/ref/read_dxf.py prints.
type dxfRead struct {
	Version  string
	Units    int
	Errors   []string
	Fixes    []string
	Layers   []string
	Entities []dxfEntity
}

type dxfEntity struct {
	Kind, Layer, Text, Linetype string
	Closed                      bool
	Points                      [][3]float64 // x, y, bulge
	Center                      []float64
	Radius, Start, End          float64
	Insert                      []float64
	Height, Rotation            float64
}

// readDXF reads files in one run of the reader: to start it takes longer than to read.
func readDXF(t *testing.T, files ...[]byte) (all []dxfRead) {
	t.Helper()
	args := []string{"testdata/ref/read_dxf.py"}
	for _, data := range files {
		args = append(args, written(t, "s.dxf", data))
	}
	out := run(t, "python3-ezdxf", "/usr/bin/python3", args...)
	if err := json.Unmarshal([]byte(out), &all); err != nil || len(all) != len(files) {
		t.Fatalf("%v in %s", err, out)
	}
	return all
}

func (r dxfRead) on(layer, kind string) []dxfEntity {
	var out []dxfEntity
	for _, e := range r.Entities {
		if e.Layer == layer && e.Kind == kind {
			out = append(out, e)
		}
	}
	return out
}

func TestEzdxfAuditsDXF(t *testing.T) {
	drawings := map[string]*sheet.Drawing{"sample": sample(), "parts": parts(), "empty": sheet.New("e", 10, 10, nil)}
	for release, of := range map[string]struct {
		write func(*sheet.Drawing) []byte
		units int // release 12 has none
	}{"AC1015": {sheet.DXF, 4}, "AC1009": {sheet.DXF12, 0}} {
		var names []string
		var files [][]byte
		for name, d := range drawings {
			names, files = append(names, name), append(files, of.write(d))
		}
		for i, r := range readDXF(t, files...) {
			if len(r.Errors)+len(r.Fixes) > 0 {
				t.Errorf("%s: errors %v, fixes %v", names[i], r.Errors, r.Fixes)
			}
			if r.Version != release || r.Units != of.units {
				t.Errorf("%s: version %s, $INSUNITS %d; want %s and %d", names[i], r.Version, r.Units, release, of.units)
			}
		}
	}
	if !bytes.Equal(sheet.DXF(sample()), sheet.DXF(sample())) {
		t.Error("two writings differ")
	}
}

// Release 12 holds the same outlines as release 2000 at the same places, from the
// drawing's datum; what has no length is in neither.
func TestEzdxfReadsBothReleasesAlike(t *testing.T) {
	d := sample()
	d.Datum = sheet.Pt(20, 120-91.2)
	d.Add("CUT", "cut", sheet.RoundRect(sheet.Rect{X: 20, Y: 15, W: 40, H: 40}, 20)) // whose sides have no length
	d.Add("DATUM", "cut", sheet.Line{A: sheet.Pt(5, 5), B: sheet.Pt(5, 5)})
	both := readDXF(t, sheet.DXF(d), sheet.DXF12(d))
	new, old := both[0], both[1]
	if len(new.Entities) != len(old.Entities) {
		t.Fatalf("%d entities in one release, %d in the other", len(new.Entities), len(old.Entities))
	}
	for i, e := range new.Entities {
		o := old.Entities[i]
		if e.Layer != o.Layer || e.Closed != o.Closed || len(e.Points) != len(o.Points) || e.Kind != o.Kind && e.Kind != "LW"+o.Kind {
			t.Fatalf("%+v in one release, %+v in the other", e, o)
		}
		for k, p := range e.Points {
			if p != o.Points[k] {
				t.Errorf("%v and %v", p, o.Points[k])
			}
			if next := e.Points[(k+1)%len(e.Points)]; math.Hypot(p[0]-next[0], p[1]-next[1]) < 1e-3 {
				t.Errorf("%s on %s has a piece of no length at %v", e.Kind, e.Layer, p)
			}
		}
	}
	if first := new.on("CUT", "LWPOLYLINE")[0]; math.Abs(first.Points[6][0]) > 1e-5 || math.Abs(first.Points[5][1]) > 1e-5 {
		t.Errorf("the outline starts at %v, not at the datum", first.Points)
	}
}

// Every outline on CUT is closed, at its place to 0.01 mm, y up; a circle is one.
func TestEzdxfMeasuresTheCut(t *testing.T) {
	r := readDXF(t, sheet.DXF(sample()))[0]
	cuts := r.on("CUT", "LWPOLYLINE")
	circles := r.on("CUT", "CIRCLE")
	if n := len(r.on("CUT", "LINE")) + len(r.on("CUT", "ARC")); n != 0 || len(cuts) != 1 || len(circles) != 1 {
		t.Fatalf("CUT holds %d polylines, %d circles and %d other things, want 1, 1 and 0", len(cuts), len(circles), n)
	}
	for _, c := range cuts {
		if !c.Closed {
			t.Errorf("open outline on CUT: %+v", c)
		}
	}
	const h = 120.0 // the sheet's height
	b := math.Tan(math.Pi / 8)
	want := [][3]float64{
		{32.7, h - 15, 0}, {147, h - 15, -b}, {159.7, h - 27.7, 0}, {159.7, h - 78.5, -b},
		{147, h - 91.2, 0}, {32.7, h - 91.2, -b}, {20, h - 78.5, 0}, {20, h - 27.7, -b},
	}
	if len(cuts[0].Points) != len(want) {
		t.Fatalf("outline has %d corners", len(cuts[0].Points))
	}
	for i, p := range cuts[0].Points {
		for k := range p {
			if math.Abs(p[k]-want[i][k]) > 1e-5 {
				t.Errorf("corner %d: %v, want %v", i, p, want[i])
			}
		}
	}
	if circles[0].Radius != 10 {
		t.Errorf("circle: %+v", circles[0])
	}
}

func TestEzdxfReadsTheRest(t *testing.T) {
	r := readDXF(t, sheet.DXF(sample()))[0]
	arcs := r.on("ENGRAVE", "ARC")
	if len(arcs) != 1 || math.Abs(arcs[0].Start-30) > 1e-6 || math.Abs(arcs[0].End-150) > 1e-6 || arcs[0].Radius != 20 {
		t.Errorf("arc: %+v", arcs)
	}
	if c := r.on("ENGRAVE", "CIRCLE"); len(c) != 1 || c[0].Radius != 5 || c[0].Center[0] != 150 || c[0].Center[1] != 70 {
		t.Errorf("circle: %+v", c)
	}
	if l := r.on("DATUM", "LINE"); len(l) != 1 || l[0].Linetype == "" {
		t.Errorf("datum line: %+v", l)
	}
	var texts []string
	for _, e := range r.on("TEXT", "TEXT") {
		texts = append(texts, e.Text)
		if e.Text == "Turned up" && math.Abs(e.Rotation-90) > 1e-6 {
			t.Errorf("turned text at %g degrees", e.Rotation)
		}
	}
	if !slices.Contains(texts, "4½ in × 5½ in, Ø 12.7 ±0.2") {
		t.Errorf("texts: %q", texts)
	}
	inset := r.on("INSET", "CIRCLE")
	if len(inset) != 1 || inset[0].Radius != 10 || inset[0].Center[0] != 165+12.5 || inset[0].Center[1] != 120-25 {
		t.Errorf("circle in a group of half scale: %+v", inset)
	}
}
