package glass

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// Cast acrylic's thickness tolerance as tabled by a maker after ISO 7823-1:
// 12 mm +-1.6, 15 mm +-1.9, 20 mm +-2.4.
func TestAcrylicThicknessTolerance(t *testing.T) {
	p, _ := Acrylic.Properties()
	for _, c := range []struct{ t, tol float64 }{{12, 1.6}, {15, 1.9}, {20, 2.4}} {
		got := p.ThicknessTolerance(unit.Length(c.t) * unit.Millimetre).Millimetres()
		if math.Abs(got-c.tol) > 1e-9 {
			t.Errorf("%g mm: +-%.3f, table +-%.1f", c.t, got, c.tol)
		}
	}
}

// A maker's worked example: 1 m of polycarbonate over 55 K grows 3.575 mm.
func TestPolycarbonateExpansion(t *testing.T) {
	p, _ := Polycarbonate.Properties()
	got := (p.Grown(unit.Metre, 55) - unit.Metre).Millimetres()
	if math.Abs(got-3.575) > 1e-9 {
		t.Errorf("grows %.4f mm, printed 3.575", got)
	}
}

// By hand: 1.2 m x 1.8 m of 12.7 mm acrylic is 2.16 x 0.0127 x 1190 = 32.644 kg;
// a hole of 139.7 x 114.3 mm with 12.7 mm corners takes
// (0.0159677 - 0.858407 x 0.00016129) x 0.0127 x 1190 = 0.239228 kg away.
func TestPaneMassByHand(t *testing.T) {
	p := Pane{
		ID: "p", Width: 1.2, Height: 1.8,
		Thickness: unit.Known(12.7 * unit.Millimetre), Material: unit.Known(Acrylic),
	}
	hole := Hole{Size: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}, Corner: unit.Known(unit.Inch / 2)}
	whole, err := p.Mass(nil)
	if err != nil || math.Abs(whole-32.64408) > 1e-5 {
		t.Errorf("mass %.5f kg, %v", whole, err)
	}
	cut, err := p.Mass([]Hole{hole})
	if err != nil || math.Abs(whole-cut-0.239228) > 1e-5 {
		t.Errorf("hole takes %.6f kg, %v", whole-cut, err)
	}
}

func TestMassNeedsTheSurvey(t *testing.T) {
	if _, err := (Pane{ID: "p", Width: 1, Height: 1, Material: unit.Known(Acrylic)}).Mass(nil); err == nil {
		t.Error("a mass without a thickness")
	}
	if _, err := (Pane{ID: "p", Width: 1, Height: 1, Thickness: unit.Known(unit.Inch), Material: unit.Known(Material("ice"))}).Mass(nil); err == nil {
		t.Error("a mass of an unknown material")
	}
}

func TestEveryMaterialHasProperties(t *testing.T) {
	if len(Materials()) != 4 {
		t.Fatalf("%d materials", len(Materials()))
	}
	for _, m := range Materials() {
		p, ok := m.Properties()
		if !ok || p.Index < 1.4 || p.Density < 1000 || p.Expansion <= 0 || p.ThicknessTolerance(12*unit.Millimetre) <= 0 {
			t.Errorf("%s: %+v", m, p)
		}
		if made := m == Tempered || m == Laminated; p.CutInPlace == made {
			t.Errorf("%s: may be cut: %v", m, p.CutInPlace)
		}
	}
}
