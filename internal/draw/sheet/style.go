package sheet

import "strings"

// Colour is a colour with an optional name. A named colour is written as a CSS
// variable in style sheets for web pages, so that a page can give it another
// value. The zero Colour means "not set"; None means nothing is painted.
type Colour struct {
	R, G, B, A uint8
	Name       string
}

// None paints nothing.
var None = Colour{Name: "none"}

// RGB returns an opaque colour.
func RGB(r, g, b uint8) Colour { return Colour{R: r, G: g, B: b, A: 255} }

// Named returns the colour with a name for web pages.
func (c Colour) Named(name string) Colour {
	c.Name = name
	return c
}

// Alpha returns the colour at a share of opacity, 0 to 1.
func (c Colour) Alpha(share float64) Colour {
	c.A = uint8(min(max(share, 0), 1)*255 + 0.5)
	return c
}

func (c Colour) said() bool { return c != Colour{} }

func (c Colour) visible() bool { return c.A > 0 }

// Style says how a class looks. Fields at their zero value are unset and keep
// what an earlier rule or the enclosing group has set.
type Style struct {
	Stroke Colour
	Fill   Colour
	Width  float64   // line width in millimetres
	Dash   []float64 // lengths on and off in millimetres; Solid takes a dash away
	Cap    Cap
	Face   Face
	Size   float64 // type size (em) in millimetres
}

// Solid is the dash pattern of an unbroken line.
var Solid = []float64{}

// Cap is the shape of a line's end.
type Cap uint8

// The ends of lines. Joins are always round.
const (
	_     Cap = iota
	Butt      // ends square at the point: the default
	Round     // ends in a half circle round the point
)

// over returns base with the fields that s sets.
func (s Style) over(base Style) Style {
	if s.Stroke.said() {
		base.Stroke = s.Stroke
	}
	if s.Fill.said() {
		base.Fill = s.Fill
	}
	if s.Width != 0 {
		base.Width = s.Width
	}
	if s.Dash != nil {
		base.Dash = s.Dash
	}
	if s.Cap != 0 {
		base.Cap = s.Cap
	}
	if s.Face != 0 {
		base.Face = s.Face
	}
	if s.Size != 0 {
		base.Size = s.Size
	}
	return base
}

// Rule gives one class its style.
type Rule struct {
	Class string
	Style Style
}

// Stylesheet is a list of rules. Where an element has several classes, a later
// rule wins over an earlier one, as in CSS.
type Stylesheet []Rule

// Resolve returns the style of a class list within a base style.
func (s Stylesheet) Resolve(class string, base Style) Style {
	if class == "" {
		return base
	}
	for _, r := range s {
		if hasClass(class, r.Class) {
			base = r.Style.over(base)
		}
	}
	return base
}

// Merge returns s followed by those rules of t whose class s does not have.
func (s Stylesheet) Merge(t Stylesheet) Stylesheet {
	have := make(map[string]bool, len(s))
	for _, r := range s {
		have[r.Class] = true
	}
	out := s[:len(s):len(s)]
	for _, r := range t {
		if !have[r.Class] {
			out = append(out, r)
		}
	}
	return out
}

// hasClass reports whether the space-separated list holds the name.
func hasClass(list, name string) bool {
	for list != "" {
		var word string
		word, list, _ = strings.Cut(list, " ")
		if word == name {
			return true
		}
	}
	return false
}
