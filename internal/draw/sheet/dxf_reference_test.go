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

func readDXF(t *testing.T, data []byte) dxfRead {
	t.Helper()
	out := tool(t, "python3-ezdxf", "s.dxf", data, "/usr/bin/python3", "testdata/ref/read_dxf.py", "FILE")
	var r dxfRead
	if err := json.Unmarshal([]byte(out), &r); err != nil {
		t.Fatalf("%v in %s", err, out)
	}
	return r
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
	for name, d := range map[string]*sheet.Drawing{"sample": sample(), "parts": parts(), "empty": sheet.New("e", 10, 10, nil)} {
		r := readDXF(t, sheet.DXF(d))
		if len(r.Errors)+len(r.Fixes) > 0 {
			t.Errorf("%s: errors %v, fixes %v", name, r.Errors, r.Fixes)
		}
		if r.Version != "AC1015" || r.Units != 4 {
			t.Errorf("%s: version %s, $INSUNITS %d; want AC1015 and 4 (mm)", name, r.Version, r.Units)
		}
	}
	if !bytes.Equal(sheet.DXF(sample()), sheet.DXF(sample())) {
		t.Error("two writings differ")
	}
}

// Every outline on CUT is one closed polyline, at its place to 0.01 mm, y up.
func TestEzdxfMeasuresTheCut(t *testing.T) {
	r := readDXF(t, sheet.DXF(sample()))
	cuts := r.on("CUT", "LWPOLYLINE")
	if n := len(r.on("CUT", "CIRCLE")) + len(r.on("CUT", "LINE")) + len(r.on("CUT", "ARC")); n != 0 || len(cuts) != 2 {
		t.Fatalf("CUT holds %d polylines and %d other things, want 2 and 0", len(cuts), n)
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
	// The circle's two half turns: radius = chord x (1 + b^2) / (4 b), b = 1.
	circle := cuts[1].Points
	if len(circle) != 2 || math.Abs(circle[0][0]-circle[1][0]) != 20 || circle[0][2] != 1 || circle[1][2] != 1 {
		t.Errorf("circle: %v", circle)
	}
}

func TestEzdxfReadsTheRest(t *testing.T) {
	r := readDXF(t, sheet.DXF(sample()))
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
