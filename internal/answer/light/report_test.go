package light

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

func demo(t interface{ Fatal(...any) }) arena.Arena {
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func compute(t *testing.T, a arena.Arena, q Request) Report {
	t.Helper()
	r, err := Compute(a, q)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func zoom(t *testing.T) (kit.Lens, kit.Body) {
	t.Helper()
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	l, okL := k.Lens("70-200")
	b, okB := k.Body("full-24")
	if !okL || !okB {
		t.Fatal("the kit lacks 70-200 or full-24")
	}
	return l, b
}

func TestDemoArena(t *testing.T) {
	a := demo(t)
	lens, body := zoom(t)
	r := compute(t, a, Request{Wanted: Usual(), Lens: unit.Known(lens), Body: body})
	if !r.Known || r.Readings != len(a.Light.Readings) || len(r.Holes) != len(a.Working()) || len(r.Zones) != 9 {
		t.Fatalf("known %v, %d readings, %d holes, %d zones", r.Known, r.Readings, len(r.Holes), len(r.Zones))
	}
	rows := 0
	for _, h := range r.Holes {
		for _, z := range h.Zones {
			rows++
			if !(z.Low <= z.Median && z.Median <= z.High && z.Dark.ISO >= z.ISO && z.ISO >= z.Bright.ISO) {
				t.Errorf("%s %s: %+v", h.Hole, z.Zone, z)
			}
			// The exposure that the formula gives by hand.
			if want := 2.8 * 2.8 * 250 / (z.Median.Lux() * 0.001); math.Abs(float64(z.ISO)/want-1) > 1e-12 {
				t.Errorf("%s %s: ISO %v, want %v", h.Hole, z.Zone, z.ISO, want)
			}
			if z.Depth == nil || z.Depth.Near >= z.Distance || z.Depth.Focal < 0.07 || z.Depth.Focal > 0.2 {
				t.Errorf("%s %s: depth %+v at %v m", h.Hole, z.Zone, z.Depth, z.Distance)
			}
			if z.PastStop || !z.OffFlicker {
				t.Errorf("%s %s: f/2.8 past the widest stop %v, 1/1000 s off flicker %v", h.Hole, z.Zone, z.PastStop, z.OffFlicker)
			}
		}
	}
	if rows < 9 {
		t.Fatalf("%d rows", rows)
	}
}

// Turned by half a turn, the light that was at end A is at end B.
func TestHalfTurnSwapsTheEnds(t *testing.T) {
	a := demo(t)
	before := compute(t, a, Request{Wanted: Usual()})
	a.Light.Readings = slices.Clone(a.Light.Readings)
	for i := range a.Light.Readings {
		a.Light.Readings[i].At = a.Light.Readings[i].At.Scale(-1)
	}
	after := compute(t, a, Request{Wanted: Usual()})
	swap := strings.NewReplacer("A", "B", "B", "A", "bench", "box", "box", "bench")
	met := 0
	for _, z := range before.Zones {
		for _, w := range after.Zones {
			if w.Zone != swap.Replace(z.Zone) {
				continue
			}
			met++
			if math.Abs(float64(w.Median-z.Median)) > 1e-6 || math.Abs(float64(w.Low-z.Low)) > 1e-6 {
				t.Errorf("%s %v lx became %s %v lx", z.Zone, z.Median, w.Zone, w.Median)
			}
		}
	}
	if met != 9 {
		t.Errorf("compared %d zones", met)
	}
}

func TestNoReadingsIsSaid(t *testing.T) {
	a := demo(t)
	a.Light = arena.Light{}
	r := compute(t, a, Request{Wanted: Usual()})
	if r.Known || len(r.Notes) == 0 || r.Ice != nil || known(r.Mains) {
		t.Errorf("%+v", r)
	}
	// A light given by hand stands in for the survey.
	r = compute(t, a, Request{Wanted: Usual(), Uniform: unit.Known(unit.Illuminance(1000)), Mains: unit.Known(60.0)})
	if !r.Known || r.Ice == nil || r.Ice.Low != 1000 || r.Ice.Extrapolated != 0 || math.Abs(float64(r.Holes[0].Zones[0].ISO)-1960) > 1e-9 {
		t.Errorf("%+v", r)
	}
}

func TestMarksPastKit(t *testing.T) {
	a := demo(t)
	lens, body := zoom(t)
	body.ISOMax = 400
	w := optics.Wanted{Shutter: unit.Known(unit.Shutter(1.0 / 120)), Stop: unit.Known(unit.Stop(2))}
	r := compute(t, a, Request{Wanted: w, Lens: unit.Known(lens), Body: body, Mains: unit.Known(60.0), Holes: []string{"B1"}})
	if len(r.Holes) != 1 {
		t.Fatalf("%d holes", len(r.Holes))
	}
	for _, z := range r.Holes[0].Zones {
		if !z.PastStop || z.OffFlicker || z.OverISO {
			t.Errorf("%s: past stop %v, off flicker %v, ISO %v over 400 %v", z.Zone, z.PastStop, z.OffFlicker, z.ISO, z.OverISO)
		}
	}
	body.ISOMax = 50
	if z := compute(t, a, Request{Wanted: w, Body: body}).Holes[0].Zones[0]; !z.OverISO {
		t.Errorf("ISO %v not over 50", z.ISO)
	}
	if _, err := Compute(a, Request{Wanted: Usual(), Holes: []string{"Z9"}}); err == nil || !strings.Contains(err.Error(), `"Z9"`) {
		t.Error(err)
	}
}

// A frame 3 m high at 15 m on 24 mm: f = 15000 x 0.008/1.008 = 119.05 mm.
func TestFraming(t *testing.T) {
	f := Framing(optics.FullFrame, 0.07, 0.2, 15)
	if math.Abs(f.Millimetres()-119.0476) > 1e-4 {
		t.Error(f)
	}
	if f := Framing(optics.FullFrame, 0.07, 0.2, 60); f != 0.2 {
		t.Error(f)
	}
	if f := Framing(optics.FullFrame, 0.07, 0.2, 2); f != 0.07 {
		t.Error(f)
	}
}
