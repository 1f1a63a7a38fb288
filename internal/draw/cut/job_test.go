package cut

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

func TestRoutesFollowTheMaterial(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	for id, want := range map[string]Route{"flat": Shop, "bent": Shop, "order": Order, "bare": Shop} {
		if j := jobOf(t, p, id, DefaultOptions()); j.Route != want {
			t.Errorf("hole %s: route %s, want %s", id, j.Route, want)
		}
	}
	o := DefaultOptions()
	o.Route = Site
	if j := jobOf(t, p, "flat", o); j.Route != Site || !strings.Contains(strings.Join(j.Steps(), " "), "No one on the ice") {
		t.Errorf("route %s, steps %q", j.Route, j.Steps())
	}
	// Plastic may be ordered made, too; what is said of glass is not said of it.
	o.Route = Order
	if j := jobOf(t, p, "flat", o); j.Route != Order || strings.Contains(strings.Join(j.Steps(), " "), "NEVER") || !strings.Contains(j.Steps()[0], "comes made with its hole") {
		t.Errorf("route %s, steps %q", j.Route, j.Steps())
	} else {
		sheets, err := p.Template(j, Full)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range append(p.Sheets(j, sheet.Paper{Name: "a4", W: 210, H: 297}), p.PaneOutline(j), sheets[0]) {
			for _, w := range wordsOf(d) {
				if strings.Contains(w.text, "NEVER") || strings.Contains(w.text, "distances for tempered") {
					t.Errorf("%s: %q is said of acrylic", d.Title, w.text)
				}
			}
		}
	}
	if j := jobOf(t, p, "order", DefaultOptions()); !strings.HasPrefix(j.Steps()[0], "NEVER CUT") {
		t.Errorf("steps %q", j.Steps())
	}
}

// A corner too round for a bit is routed, not drilled; glass is never drilled.
func TestPilotHolesOnlyWhereOneDrills(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	for _, c := range []struct {
		id      string
		high, r float64
		dia     float64
		words   string
	}{
		{"flat", 115, 13, 26, "four pilot holes"}, {"flat", 115, 25.4, 50.8, "four pilot holes"},
		{"flat", 115, 57, 0, "one starting hole"}, {"order", 120, 20, 0, "NEVER CUT"},
		{"flat", 66, 16.5, 33, "four pilot holes"}, {"flat", 66, 17, 0, "one starting hole"}, // they would run into one another
	} {
		h, _ := p.Arena.Hole(c.id)
		h.Size.H = unit.Length(c.high) * unit.Millimetre
		h.Corner = unit.Known(unit.Length(c.r) * unit.Millimetre)
		j, err := p.Job(h, DefaultOptions())
		if err != nil {
			t.Fatal(err)
		}
		if got := j.Pilot().Millimetres(); math.Abs(got-c.dia) > 1e-9 || !strings.Contains(strings.Join(j.Steps(), " "), c.words) {
			t.Errorf("%s, R %g: pilot %g mm, steps %q", c.id, c.r, got, j.Steps())
		}
	}
}

func TestWhatMayNotBeMadeIsRefused(t *testing.T) {
	const mm = unit.Millimetre
	for _, c := range []struct {
		name, hole string
		change     func(*ShopOrder, *glass.Hole, *Options)
		words      string
	}{
		{"tempered on site", "order", func(_ *ShopOrder, _ *glass.Hole, o *Options) { o.Route = Site }, "never cut"},
		{"tempered in the shop", "order", func(_ *ShopOrder, _ *glass.Hole, o *Options) { o.Route = Shop }, "never cut"},
		{"near the left edge", "flat", func(_ *ShopOrder, h *glass.Hole, _ *Options) { h.Station = 4.1 }, "rim to the left edge is 30 mm, at least 140 mm"},
		{"near the right edge", "flat", func(_ *ShopOrder, h *glass.Hole, _ *Options) { h.Station = 5.1 }, "rim to the right edge"},
		{"near the boards", "flat", func(_ *ShopOrder, h *glass.Hole, _ *Options) { h.Height = 1.15 }, "rim to the bottom edge at the boards"},
		{"near the top", "flat", func(_ *ShopOrder, h *glass.Hole, _ *Options) { h.Height = 2.8 }, "rim to the top edge"},
		{"sharp corner", "flat", func(_ *ShopOrder, h *glass.Hole, _ *Options) { h.Corner = unit.Known(3 * mm) }, "corner radius is 3 mm, at least 7.5 mm"},
		{"corner too round", "flat", func(_ *ShopOrder, h *glass.Hole, _ *Options) { h.Corner = unit.Known(70 * mm) }, "more than half of the smaller side"},
		{"no rounding", "flat", func(_ *ShopOrder, h *glass.Hole, _ *Options) { h.Rounding = unit.Known(0 * mm) }, "edges are not rounded"},
		{"rounding too deep", "flat", func(_ *ShopOrder, h *glass.Hole, _ *Options) { h.Rounding = unit.Known(8 * mm) }, "more than the pane's thickness"},
		{"glass fillet", "edge", func(*ShopOrder, *glass.Hole, *Options) {}, "corner radius is 5 mm, at least 15 mm"},
		{"glass too wide", "order", func(_ *ShopOrder, h *glass.Hole, _ *Options) { h.Size.W = 0.6 }, "hole's width is 600 mm, at most 500 mm"},
		{"glass near the corner", "order", func(_ *ShopOrder, h *glass.Hole, _ *Options) { h.Station, h.Height = 70.105, 1.165 }, "rim to the nearest corner"},
		{"no material", "flat", func(p *ShopOrder, _ *glass.Hole, _ *Options) {
			p.Arena.Panes[0].Material = unit.Maybe[glass.Material]{}
		}, "material of pane P1 is not recorded"},
		{"no thickness", "flat", func(p *ShopOrder, _ *glass.Hole, _ *Options) { p.Arena.Panes[0].Thickness = unit.Maybe[unit.Length]{} }, "thickness of pane P1 is not recorded"},
		{"no pane", "flat", func(_ *ShopOrder, h *glass.Hole, _ *Options) { h.Pane, h.Station = "P99", 100 }, "hole flat lies in no pane of the arena"},
		{"jamming cover", "flat", func(_ *ShopOrder, _ *glass.Hole, o *Options) { o.Cover.Clearance = 0.1 * mm }, "the cover jams"},
	} {
		p, o := shopPlan(t, unit.Metric), DefaultOptions()
		h, _ := p.Arena.Hole(c.hole)
		c.change(&p, &h, &o)
		_, err := p.Job(h, o)
		var no *Refusal
		if !errors.As(err, &no) || no.Hole != c.hole || !strings.Contains(err.Error(), c.words) {
			t.Errorf("%s: %v, want a refusal with %q", c.name, err, c.words)
		}
	}
}

// A second hole in the pane: it may not meet the first, nor come nearer than a
// neighbour may; turned off it counts for nothing.
func TestNeighboursInAPane(t *testing.T) {
	const mm = unit.Millimetre
	for _, c := range []struct {
		name, hole string
		along, up  unit.Length // of the neighbour's centre from the hole's
		state      glass.State
		words      string // of the refusal; "" for a drawing
	}{
		{"the same place", "flat", 0, 0, glass.Cut, "rim to the rim of hole twin is 0 mm, at least 115 mm"},
		{"overlapping", "flat", 50 * mm, 20 * mm, glass.Planned, "rim to the rim of hole twin is 0 mm"},
		{"too near beside", "flat", 240 * mm, 0, glass.Planned, "rim to the rim of hole twin is 100 mm, at least 115 mm (short by 15 mm)"},
		{"far enough beside", "flat", 255 * mm, 0, glass.Planned, ""},
		{"too near above", "flat", 0, 221 * mm, glass.Planned, "rim to the rim of hole twin is 106 mm"},
		{"turned off", "flat", 0, 0, glass.Off, ""},
		{"in glass too near", "order", 174 * mm, 0, glass.Planned, "rim to the rim of hole twin is 24 mm, at least 25.4 mm"},
		{"in glass far enough", "order", 176 * mm, 0, glass.Planned, ""},
	} {
		p := shopPlan(t, unit.Metric)
		h, _ := p.Arena.Hole(c.hole)
		twin := h
		twin.ID, twin.Station, twin.Height, twin.State = "twin", h.Station+c.along, h.Height+c.up, c.state
		p.Arena.Holes = append(slices.Clone(p.Arena.Holes), twin)
		j, err := p.Job(h, DefaultOptions())
		switch {
		case c.words != "" && (err == nil || !strings.Contains(err.Error(), c.words)):
			t.Errorf("%s: %v, want a refusal with %q", c.name, err, c.words)
		case c.words == "" && err != nil:
			t.Errorf("%s: %v, want a drawing", c.name, err)
		case c.words == "" && c.state != glass.Off && len(j.Neighbours) != 1:
			t.Errorf("%s: neighbours %v", c.name, j.Neighbours)
		}
	}
}

// What the plan does not say is taken from common practice and said.
func TestAssumptionsAreSaid(t *testing.T) {
	j := jobOf(t, shopPlan(t, unit.Metric), "bare", DefaultOptions())
	all := joined(j.Assumed, unit.Metric)
	for _, w := range []string{"corner radius of hole bare is not recorded: 12.7 mm is taken", "edge rounding of hole bare is not recorded: 3.2 mm is taken", "cover: not in the plan", "cover's material acrylic"} {
		if !strings.Contains(all, w) {
			t.Errorf("assumptions %q lack %q", all, w)
		}
	}
	if j := jobOf(t, shopPlan(t, unit.Metric), "flat", DefaultOptions()); len(j.Assumed) != 0 {
		t.Errorf("a full plan assumes %q", j.Assumed)
	}
}

// Pane of 1200 x 1800 mm, 15 mm acrylic: 1.2 x 1.8 x 0.015 x 1190 = 38.556 kg.
func TestMassByHand(t *testing.T) {
	j := jobOf(t, shopPlan(t, unit.Metric), "flat", DefaultOptions())
	hole := (0.14*0.115 - (4-math.Pi)*0.013*0.013) * 0.015 * 1190
	if math.Abs(j.Whole-38.556) > 1e-9 || math.Abs(j.Whole-j.Mass-hole) > 1e-9 {
		t.Errorf("mass %.6f kg, drilled %.6f", j.Whole, j.Mass)
	}
}

// On the shooting side of a curved pane lengths are longer by t/R: the template,
// which lies there, says those. 702.5 mm x (1 + 15/8530) = 703.7 mm.
func TestTemplateIsForTheShootingSide(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	j := jobOf(t, p, "bent", DefaultOptions())
	sheets, err := p.Template(j, "a4")
	if err != nil {
		t.Fatal(err)
	}
	all := ""
	for _, w := range wordsOf(sheets[0]) {
		all += w.text + "\n"
	}
	for _, w := range []string{"703.7 mm (27 23/32 in) from the left edge", "502.6 mm (19 25/32 in) from the right edge"} {
		if !strings.Contains(all, w) {
			t.Errorf("the template lacks %q:\n%s", w, all)
		}
	}
}
