package sheet

import (
	"cmp"
	"strings"
)

// Drawing is a sheet of paper, or a figure, with what is drawn on it.
// Width and height are in millimetres.
type Drawing struct {
	Name  string // short, for ids and file names: "plan-map"
	Title string // for people: the SVG's title, the PDF page's name
	Desc  string // a sentence for those who cannot see the drawing
	W, H  float64
	// Datum is where a machine's x and y are 0: to the right of and up from the
	// sheet's lower left corner, in millimetres. Only DXF has it.
	Datum  Point
	Styles Stylesheet
	// Layers says in which order the layers are painted, first at the bottom.
	// Layers that are not named here follow in the order of their first use.
	Layers []string
	Items  []*Element
	// Growth is how many times larger the drawing is printed than it is laid out
	// ([Drawing.Grown]); 0 counts as 1.
	Growth float64
}

func (d *Drawing) growth() float64 {
	if d.Growth == 0 {
		return 1
	}
	return d.Growth
}

// Grown returns the drawing as it is printed: everything on it larger by its growth.
func (d *Drawing) Grown() *Drawing {
	k := d.growth()
	if k == 1 {
		return d
	}
	out := *d
	out.W, out.H, out.Datum, out.Growth = k*d.W, k*d.H, d.Datum.Scale(k), 1
	out.Items = make([]*Element, len(d.Items))
	for i, e := range d.Items {
		out.Items[i] = &Element{Layer: e.Layer, Shape: &Group{Scale: k, Items: []*Element{e}}}
	}
	return &out
}

// New returns an empty drawing of a width and height in millimetres.
func New(name string, w, h float64, styles Stylesheet) *Drawing {
	return &Drawing{Name: name, W: w, H: h, Styles: styles}
}

// Add draws a shape on a layer with a class (or several, separated by spaces),
// and returns the element for titles and data.
func (d *Drawing) Add(layer, class string, s Shape) *Element {
	e := &Element{Shape: s, Class: class, Layer: layer}
	d.Items = append(d.Items, e)
	return e
}

// Group adds an empty group on a layer and returns the group and its element.
func (d *Drawing) Group(layer, class string) (*Group, *Element) {
	g := &Group{}
	return g, d.Add(layer, class, g)
}

// Place puts a whole other drawing on this one, its top left corner at a point
// in millimetres, scaled (1 is its own size; line widths and text scale with it).
// Both must share class names with one meaning: the style sheets are merged,
// this drawing's own rules first.
func (d *Drawing) Place(layer string, other *Drawing, at Point, scale float64) *Element {
	e := d.placeIn(&Group{}, other, at, scale)
	e.Layer = layer
	d.Items = append(d.Items, e)
	return e
}

// placeIn puts a whole other drawing into a group of this one.
func (d *Drawing) placeIn(in *Group, other *Drawing, at Point, scale float64) *Element {
	g := &Group{Offset: at, Scale: scale}
	for _, name := range other.LayerOrder() {
		for _, e := range other.Items {
			if e.Layer == name {
				g.Items = append(g.Items, e)
			}
		}
	}
	d.Styles = d.Styles.Merge(other.Styles)
	return in.Add("", g)
}

// Says is what a drawing shows, for those who cannot see it.
func (d *Drawing) Says() string { return strings.TrimSpace(cmp.Or(d.Title, d.Name) + ". " + d.Desc) }

// LayerOrder returns the names of all layers in use or declared, in painting order.
func (d *Drawing) LayerOrder() []string {
	seen := make(map[string]bool, len(d.Layers)+4)
	order := make([]string, 0, len(d.Layers)+4)
	add := func(name string) {
		if !seen[name] {
			seen[name] = true
			order = append(order, name)
		}
	}
	for _, name := range d.Layers {
		add(name)
	}
	for _, e := range d.Items {
		add(e.Layer)
	}
	return order
}

// Element is one shape on a drawing with its look and its meaning.
type Element struct {
	Shape Shape
	Class string // space-separated class names, looked up in the style sheet
	Layer string // on top level only; what stands in a group is on the group's layer unless it names its own
	ID    string // SVG id, optional
	Title string // accessible name and tooltip in SVG
	// Data is written as data-KEY attributes in SVG: {"hole": "B-goal"} becomes data-hole="B-goal".
	Data map[string]string
	// Role is an ARIA role in SVG. With "button" or "link" the element can take the keyboard's focus.
	Role string
	// Link leads from the element: "#page=3" to a page of the same PDF, or an address.
	Link string
	// Part is the part of the document that the element is painted for; see [Info].Tagged.
	Part *Part
}

// Titled sets the accessible name and returns the element.
func (e *Element) Titled(title string) *Element {
	e.Title = title
	return e
}

// With sets a data attribute and returns the element.
func (e *Element) With(key, value string) *Element {
	if e.Data == nil {
		e.Data = make(map[string]string, 2)
	}
	e.Data[key] = value
	return e
}

// As sets the ARIA role and returns the element.
func (e *Element) As(role string) *Element {
	e.Role = role
	return e
}

// To sets the link and returns the element.
func (e *Element) To(link string) *Element {
	e.Link = link
	return e
}
