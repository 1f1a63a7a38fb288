package glass

import (
	"math"
	"reflect"
	"regexp"
	"strings"
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
func TestMassByHand(t *testing.T) {
	p, _ := Acrylic.Properties()
	hole := Hole{Size: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}, Corner: unit.Known(unit.Inch / 2)}
	thick := 12.7 * unit.Millimetre
	if whole := p.Mass(1.2*1.8, thick); math.Abs(whole-32.64408) > 1e-5 {
		t.Errorf("mass %.5f kg", whole)
	}
	if out := p.Mass(hole.Area(), thick); math.Abs(out-0.239228) > 1e-5 {
		t.Errorf("hole takes %.6f kg", out)
	}
}

// What the table does not know is refused: it is neither plastic nor glass.
func TestUnknownMaterialsAreRefused(t *testing.T) {
	for m, words := range map[Material]string{"ice": `unknown material "ice"; write acrylic, `, "": "not recorded; write acrylic, ", "Acrylic": "unknown material"} {
		if _, err := m.Properties(); err == nil || !strings.Contains(err.Error(), words) {
			t.Errorf("%q: %v, want %q", m, err, words)
		}
	}
}

func TestEveryMaterialHasARow(t *testing.T) {
	slug := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	seen := map[string]bool{}
	for _, p := range Table() {
		m, name := p.Name, string(p.Name)
		got, err := m.Properties()
		if err != nil || !reflect.DeepEqual(got, p) {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
		if name == "" || name != strings.ToLower(strings.TrimSpace(name)) || seen[name] || seen[p.Slug] || !slug.MatchString(p.Slug) {
			t.Errorf("%q, slug %q: names are small letters, each once, and a slug is one word", name, p.Slug)
		}
		seen[name], seen[p.Slug] = true, true
		if p.Index < 1.3 || p.Density < 800 || p.Expansion <= 0 || p.ThicknessTolerance(12*unit.Millimetre) <= 0 || p.Source == "" {
			t.Errorf("%s: %+v", name, p)
		}
		if !(p.HazeNew > 0 && p.HazeNew < p.HazeWorn && p.HazeWorn < 0.5) {
			t.Errorf("%s: haze %g new, %g worn", name, p.HazeNew, p.HazeWorn)
		}
		if p.Family != Plastic && p.Family != Mineral || p.Cuttable() == p.MadeToOrder() {
			t.Errorf("%s: family %q", name, p.Family)
		}
		if !p.Trade.Edge.Asked() || !p.Trade.Apart.Asked() || !p.Trade.Fillet.Asked() || (p.Trade.Share > 0) != (p.Trade.ShareSource != "") {
			t.Errorf("%s: the trade asks %+v", name, p.Trade)
		}
		if p.Family == Mineral && p.Cuttable() {
			t.Errorf("%s: glass that may be cut needs a look at every sentence about glass", name)
		}
	}
	for m, made := range map[Material]bool{Acrylic: false, Polycarbonate: false, Tempered: true, Laminated: true} {
		if p, err := m.Properties(); err != nil || p.MadeToOrder() != made {
			t.Errorf("%s: ordered made: %v, %v", m, p.MadeToOrder(), err)
		}
	}
}
