package glass

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Properties is what the program takes of a material.
type Properties struct {
	// Index is the refractive index at the yellow helium line (587.6 nm), without unit.
	Index float64
	// Density is in kg/m3.
	Density float64
	// Expansion is the linear thermal expansion per kelvin (1/K), near room temperature.
	Expansion float64
	// CutInPlace reports whether a finished pane may be cut at all, in a shop
	// or where it stands. Tempered and laminated glass is ordered made: never cut.
	CutInPlace bool
	// ThicknessBase and ThicknessShare give the tolerance of the thickness t,
	// plus or minus ThicknessBase + ThicknessShare t: a length and a factor without unit.
	ThicknessBase  unit.Length
	ThicknessShare float64 // factor without unit
}

// Properties returns the material's properties; ok is false for a material
// that is not in Materials.
//
// Sources. Index: refractiveindex.info database (acrylic and polycarbonate
// after Sultanova 2009, soda-lime glass). Expansion: table of the Unified
// Facilities Guide Specifications (acrylic 7.2e-5, polycarbonate 6.5e-5,
// soda-lime glass 0.9e-5 per kelvin; acrylic's rises with temperature).
// Density: makers' sheets (acrylic 1190, polycarbonate 1200); glass 2500 from
// memory. Thickness: cast acrylic ISO 7823-1, +-(0.4 mm + 0.1 t); polycarbonate
// 5 % and glass 0.3 mm from memory, laminated twice the single ply's.
func (m Material) Properties() (p Properties, ok bool) {
	const mm = unit.Millimetre
	switch m {
	case Acrylic:
		return Properties{Index: 1.4906, Density: 1190, Expansion: 7.2e-5, CutInPlace: true, ThicknessBase: 0.4 * mm, ThicknessShare: 0.1}, true
	case Polycarbonate:
		return Properties{Index: 1.5848, Density: 1200, Expansion: 6.5e-5, CutInPlace: true, ThicknessShare: 0.05}, true
	case Tempered:
		return Properties{Index: 1.5234, Density: 2500, Expansion: 0.9e-5, ThicknessBase: 0.3 * mm}, true
	case Laminated:
		return Properties{Index: 1.5234, Density: 2500, Expansion: 0.9e-5, ThicknessBase: 0.6 * mm}, true
	}
	return Properties{}, false
}

// ThicknessTolerance returns by how much a sheet of the nominal thickness may
// be thinner or thicker.
func (p Properties) ThicknessTolerance(t unit.Length) unit.Length {
	return p.ThicknessBase + unit.Length(p.ThicknessShare)*t
}

// Grown returns a length l after a change of temperature in kelvin, positive
// for warmer: l (1 + a dT). First order; exact enough within 100 K.
func (p Properties) Grown(l unit.Length, kelvin float64) unit.Length {
	return l * unit.Length(1+p.Expansion*kelvin)
}

// Mass returns the mass in kg of a flat sheet of an area in square metres
// and a thickness.
func (p Properties) Mass(areaM2 float64, thick unit.Length) float64 {
	return p.Density * areaM2 * thick.Metres()
}

// Area returns the area of the hole in square metres: the rectangle less its
// four rounded corners, (4 - pi) r^2; an unknown radius counts 0.
func (h Hole) Area() float64 {
	r := h.Corner.Or(0).Metres()
	return h.Size.W.Metres()*h.Size.H.Metres() - (4-math.Pi)*r*r
}

// Mass returns the pane's mass in kg, less the given holes cut in it. The error
// names what the survey lacks.
func (p Pane) Mass(holes []Hole) (float64, error) {
	m, okM := p.Material.Get()
	t, okT := p.Thickness.Get()
	if !okM || !okT {
		return 0, fmt.Errorf("pane %s: its mass needs material and thickness; record both", p.ID)
	}
	props, ok := m.Properties()
	if !ok {
		return 0, fmt.Errorf("pane %s: unknown material %q", p.ID, string(m))
	}
	area := p.Width.Metres() * p.Height.Metres()
	for _, h := range holes {
		area -= h.Area()
	}
	return props.Mass(area, t), nil
}
