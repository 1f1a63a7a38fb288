package glass

import (
	"math"
	"testing"
)

// Refractive index at the helium d line, from the refractiveindex.info database
// (CC0): acrylic and polycarbonate after Sultanova 2009, soda-lime glass.
func TestIndexOfTheDatabase(t *testing.T) {
	published := map[Material]float64{Acrylic: 1.4906, Polycarbonate: 1.5848, Tempered: 1.5234, Laminated: 1.5234}
	if len(published) != len(Materials()) {
		t.Fatalf("%d published, %d materials", len(published), len(Materials()))
	}
	for m, n := range published {
		if p, _ := m.Properties(); math.Abs(p.Index-n) > 5e-5 {
			t.Errorf("%s: %g, published %g", m, p.Index, n)
		}
	}
}

// Acrylic's expansion is tabled in both scales: 4.0e-5 per degree F is 7.2e-5 per K.
func TestAcrylicExpansionInBothScales(t *testing.T) {
	if p, _ := Acrylic.Properties(); math.Abs(p.Expansion-4.0e-5*9/5) > 1e-12 {
		t.Errorf("%g per K", p.Expansion)
	}
}
