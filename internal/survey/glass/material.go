package glass

import (
	"fmt"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// Material is what a pane is made of, by its name in files; "" is not said.
// [Material.Properties] tells whether there is such a material at all.
type Material string

// The materials, as written in files. Each is a row of the table below, and
// nothing else has to know that it is there.
const (
	Acrylic       Material = "acrylic"
	Polycarbonate Material = "polycarbonate"
	Tempered      Material = "tempered"
	Laminated     Material = "laminated"
)

// Family says what a material has in common with others: how it is worked,
// and how drawings tell it from the rest.
type Family string

// The families.
const (
	Plastic Family = "plastic"
	Mineral Family = "glass" // the word that people put behind the material's name: "tempered glass"
)

// Properties is a row of the table: all that the program takes of a material.
type Properties struct {
	Name   Material
	Slug   string // in names of styles and files: small letters, digits and hyphens
	Family Family
	// NeverCut says why a finished pane is neither cut nor drilled, so that it
	// is ordered made; "" for one that may be cut, in a shop or where it stands.
	NeverCut string
	Trade    Trade
	// Index is the refractive index at the yellow helium line (587.6 nm), without unit.
	Index float64
	// HazeNew and HazeWorn are the shares of the light passed that a new and a
	// worn pane scatters (ASTM D1003), without unit. A pane's own haze is measured
	// with a meter of that standard.
	HazeNew, HazeWorn float64
	// Density is in kg/m3.
	Density float64
	// Expansion is the linear thermal expansion per kelvin (1/K), near room temperature.
	Expansion float64
	// ThicknessBase and ThicknessShare give the tolerance of the thickness t,
	// plus or minus ThicknessBase + ThicknessShare t: a length and a factor without unit.
	ThicknessBase  unit.Length
	ThicknessShare float64 // factor without unit
	Source         string  // of the numbers
}

// table has the materials in the order in which they are listed to people.
func table() []Properties {
	const (
		mm    = unit.Millimetre
		index = "index: refractiveindex.info database"
		grows = "expansion: table of the Unified Facilities Guide Specifications"
		haze  = "haze: new as in makers' sheets, worn as UN Regulation 43 lets abraded panes go, both from memory"
	)
	return []Properties{
		{
			Name: Acrylic, Slug: "acrylic", Family: Plastic, Trade: plastics(),
			Index: 1.4906, Density: 1190, Expansion: 7.2e-5, ThicknessBase: 0.4 * mm, ThicknessShare: 0.1,
			HazeNew: 0.005, HazeWorn: 0.10,
			Source: index + " (Sultanova 2009); density: makers' sheets; " + grows + ", rising with temperature; thickness: ISO 7823-1, cast sheet; " + haze,
		},
		{
			Name: Polycarbonate, Slug: "polycarbonate", Family: Plastic, Trade: plastics(),
			Index: 1.5848, Density: 1200, Expansion: 6.5e-5, ThicknessShare: 0.05,
			HazeNew: 0.01, HazeWorn: 0.10,
			Source: index + " (Sultanova 2009); density: makers' sheets; " + grows + "; thickness: from memory; " + haze,
		},
		{
			Name: Tempered, Slug: "tempered", Family: Mineral, Trade: madeToOrder(),
			NeverCut: "tempered glass breaks when it is cut or drilled; holes and edges are worked before tempering",
			Index:    1.5234, Density: 2500, Expansion: 0.9e-5, ThicknessBase: 0.3 * mm,
			HazeNew: 0.003, HazeWorn: 0.02,
			Source: index + " (soda-lime glass); " + grows + "; density and thickness: from memory; " + haze,
		},
		{
			Name: Laminated, Slug: "laminated", Family: Mineral, Trade: madeToOrder(),
			NeverCut: "laminated glass breaks when it is cut or drilled; holes and edges are worked before laminating",
			Index:    1.5234, Density: 2500, Expansion: 0.9e-5, ThicknessBase: 0.6 * mm,
			HazeNew: 0.005, HazeWorn: 0.02,
			Source: index + " (soda-lime glass); " + grows + "; density and thickness (twice a single ply's): from memory; " + haze,
		},
	}
}

// Table returns a row for each material, in the order in which they are listed.
func Table() []Properties { return table() }

// Materials lists the names of the materials.
func Materials() []Material {
	var out []Material
	for _, p := range table() {
		out = append(out, p.Name)
	}
	return out
}

// Properties returns the material's row. A material that is not in the table,
// and one that is not said, is an error that lists those known: nothing is
// taken for glass, or for plastic, because it is nothing else.
func (m Material) Properties() (Properties, error) {
	for _, p := range table() {
		if p.Name == m {
			return p, nil
		}
	}
	if m == "" {
		return Properties{}, fmt.Errorf("the material is not recorded; write %s", form.Choices(Names(nil)))
	}
	return Properties{}, fmt.Errorf("unknown material %q; write %s", string(m), form.Choices(Names(nil)))
}

// Names lists the materials that keep to a condition; all for nil.
func Names(keep func(Properties) bool) []string {
	var names []string
	for _, p := range table() {
		if keep == nil || keep(p) {
			names = append(names, string(p.Name))
		}
	}
	return names
}

// Cuttable reports whether a finished pane may be cut, in a shop or where it stands.
func (p Properties) Cuttable() bool { return p.NeverCut == "" }

// MadeToOrder reports whether a pane is ordered made, never cut.
func (p Properties) MadeToOrder() bool { return p.NeverCut != "" }

// Noun returns what people call the material: "acrylic", "tempered glass".
func (p Properties) Noun() string {
	if p.Family == Mineral {
		return string(p.Name) + " " + string(p.Family)
	}
	return string(p.Name)
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
