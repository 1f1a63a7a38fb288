package glass

import "example.org/rinkpane/internal/measure/unit"

// Distance is what a trade asks of a distance in a pane of thickness t with a
// hole of side s: at least the larger of AtLeast and Thick t + Sides s + Plus.
// The zero value asks nothing.
type Distance struct {
	AtLeast unit.Length
	Thick   float64 // thicknesses of the pane, a factor without unit
	Sides   float64 // sides of the hole, a factor without unit
	Plus    unit.Length
	Source  string
}

// Of returns the least distance in a pane of a thickness for a side of the hole.
func (d Distance) Of(thick, side unit.Length) unit.Length {
	return max(d.AtLeast, unit.Length(d.Thick)*thick+unit.Length(d.Sides)*side+d.Plus)
}

// Asked reports whether the trade asks for the distance at all.
func (d Distance) Asked() bool { return d.Source != "" }

// Trade is what the trade asks of a hole in a pane of a material. Each field
// says which side of the hole its distance counts.
type Trade struct {
	Edge   Distance // rim to an edge of the pane; the hole's side square to that edge
	Corner Distance // rim to the nearest corner of the pane; no side
	Apart  Distance // rim to the rim of another hole; the smaller side
	Fillet Distance // the hole's corner radius; no side
	Size   Distance // the hole's smaller side; no side
	// Share is the most of the pane's width that the hole's width may take, and
	// of its height that its height may; 0 asks nothing. A factor without unit.
	Share       float64
	ShareSource string
}

// plastics are the distances of fabricators' guides for sheets of plastic.
func plastics() Trade {
	return Trade{
		Edge: Distance{Sides: 1, Source: "fabricators' guides: centre of a hole 1.5 diameters or more from an edge, one diameter of material at the rim " +
			"(told of polycarbonate; acrylic from memory)"},
		Apart: Distance{Sides: 1, Source: "own reading of the fabricators' guides: a neighbour's rim is kept away from as an edge is, one diameter of material between rims"},
		Fillet: Distance{AtLeast: 6 * unit.Millimetre, Thick: 0.5,
			Source: "fabricators' guides: no sharp inside corners; the numbers are an own choice"},
	}
}

// madeToOrder are the glazing trade's distances for holes in tempered glass, to
// which laminated glass is held too.
func madeToOrder() Trade {
	const source = "a glazing shop's table of limits for tempered glass (1/4 to 3/4 in); laminated glass is held to the same"
	return Trade{
		Edge:   Distance{Thick: 2, Source: source},
		Corner: Distance{Thick: 6.5, Source: source},
		Apart:  Distance{Thick: 2, Source: source},
		Fillet: Distance{Thick: 1, Source: source},
		Size:   Distance{Thick: 1, Plus: unit.Inch / 16, Source: source},
		Share:  1.0 / 3, ShareSource: source,
	}
}
