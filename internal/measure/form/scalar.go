package form

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"go.yaml.in/yaml/v3"

	"example.org/rinkpane/internal/measure/unit"
)

// scalar returns the value's text; ok is false after a problem.
func (n Node) scalar() (text string, ok bool) {
	if !n.sound() {
		return "", false
	}
	if n.yaml.Kind != yaml.ScalarNode {
		n.Failf("must be one value, not a list or fields")
		return "", false
	}
	if at := strings.IndexFunc(n.yaml.Value, driving); at >= 0 {
		n.Failf("%s holds a control character, which is not seen in print; remove it", Quote(n.yaml.Value))
		return "", false
	}
	return n.yaml.Value, true
}

// driving reports whether a character is not seen in print: controls, and
// marks that turn the direction of writing. Line ends and tabs, and the mark
// that joins letters, are text.
func driving(r rune) bool {
	const joiner = '\u200d'
	return r != '\n' && r != '\t' && r != joiner && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r))
}

// Parse reads a value with a parser such as [unit.ParseLength]. The parser's
// error becomes the problem's text: it should name the value and the cure.
func Parse[T any](n Node, parse func(string) (T, error)) T {
	var zero T
	text, ok := n.scalar()
	if !ok {
		return zero
	}
	v, err := parse(text)
	if err != nil {
		n.Failf("%v", err)
		return zero
	}
	return v
}

// Text reads a text that is not blank.
func (n Node) Text() string {
	text, ok := n.scalar()
	if ok && strings.TrimSpace(text) == "" {
		n.Failf("is blank")
	}
	return text
}

// TextOr reads a text, or returns fallback for one left out.
func (n Node) TextOr(fallback string) string {
	if !n.Present() {
		return fallback
	}
	text, _ := n.scalar()
	return text
}

// Choice reads one of the allowed words.
func (n Node) Choice(allowed ...string) string {
	text, ok := n.scalar()
	if !ok || contains(allowed, text) {
		return text
	}
	if near := Nearest(text, allowed); near != "" {
		n.Failf("%s; did you mean %q?", Quote(text), near)
	} else {
		n.Failf("%s; write %s", Quote(text), Choices(allowed))
	}
	return ""
}

// Bool reads true or false.
func (n Node) Bool() bool {
	text, ok := n.scalar()
	if ok && (n.yaml.Tag != "!!bool") {
		n.Failf("%s; write true or false", Quote(text))
	}
	return ok && n.yaml.Tag == "!!bool" && strings.EqualFold(text, "true")
}

// Int reads a whole number from least to most.
func (n Node) Int(least, most int) int {
	text, ok := n.scalar()
	if !ok {
		return 0
	}
	v, err := strconv.Atoi(text)
	if err != nil || v < least || v > most {
		n.Failf("%s; write a whole number from %d to %d", Quote(text), least, most)
		return 0
	}
	return v
}

// Float reads a bare number from least to most; NaN is refused.
func (n Node) Float(least, most float64) float64 {
	text, ok := n.scalar()
	if !ok {
		return 0
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(v) || v < least || v > most {
		n.Failf("%s; write a number from %g to %g", Quote(text), least, most)
		return 0
	}
	return v
}

// Length reads a length, which must carry its unit.
func (n Node) Length() unit.Length { return Parse(n, unit.ParseLength) }

// LengthAbove reads a length greater than zero.
func (n Node) LengthAbove() unit.Length {
	l := n.Length()
	if n.doc.err == nil && l <= 0 {
		n.Failf("%s; must be more than zero", Quote(n.yaml.Value))
	}
	return l
}

// MaybeLength reads a length, unknown when it was left out.
func (n Node) MaybeLength() unit.Maybe[unit.Length] {
	if !n.Present() {
		return unit.Maybe[unit.Length]{}
	}
	return unit.Known(n.Length())
}

// Size reads a width by a height, both greater than zero.
func (n Node) Size() unit.Size {
	s := Parse(n, unit.ParseSize)
	if n.doc.err == nil && (s.W <= 0 || s.H <= 0) {
		n.Failf("%s; width and height must be more than zero", Quote(n.yaml.Value))
	}
	return s
}

// Offset reads a length that may be negative and must carry its unit.
func (n Node) Offset() unit.Length { return Parse(n, unit.ParseOffset) }
