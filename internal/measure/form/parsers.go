package form

import (
	"fmt"
	"strings"
	"unicode"

	"example.org/rinkpane/internal/measure/unit"
)

// Optional reads a value that may be left out; the zero value stands for it.
func Optional[T any](n Node, parse func(string) (T, error)) T {
	var zero T
	if !n.Present() {
		return zero
	}
	return Parse(n, parse)
}

// Maybe reads a value that a survey may lack.
func Maybe[T any](n Node, parse func(string) (T, error)) unit.Maybe[T] {
	if !n.Present() {
		return unit.Maybe[T]{}
	}
	return unit.Known(Parse(n, parse))
}

// Words returns a parser of the given words.
func Words[T ~string](allowed ...T) func(string) (T, error) {
	return func(s string) (T, error) {
		names := make([]string, len(allowed))
		for i, w := range allowed {
			if names[i] = string(w); names[i] == s {
				return w, nil
			}
		}
		if near := Nearest(s, names); near != "" {
			return "", fmt.Errorf("%s; did you mean %s? (known: %s)", Quote(s), near, Choices(names))
		}
		return "", fmt.Errorf("%s; write %s", Quote(s), Choices(names))
	}
}

// YesNo reads yes and no, true and false.
func YesNo(s string) (bool, error) {
	switch strings.ToLower(s) {
	case "yes", "true":
		return true, nil
	case "no", "false":
		return false, nil
	}
	return false, fmt.Errorf("%s; write yes or no", Quote(s))
}

// Within narrows a parser of lengths to [lo, hi].
func Within(lo, hi unit.Length) func(string) (unit.Length, error) {
	return within(unit.ParseOffset, lo, hi)
}

// FocalWithin is [Within] of a focal length: a bare number is millimetres.
func FocalWithin(lo, hi unit.Length) func(string) (unit.Length, error) {
	return within(unit.ParseFocal, lo, hi)
}

func within(parse func(string) (unit.Length, error), lo, hi unit.Length) func(string) (unit.Length, error) {
	return func(s string) (unit.Length, error) {
		l, err := parse(s)
		if err != nil {
			return 0, err
		}
		if !(l >= lo && l <= hi) {
			return 0, fmt.Errorf("%s is out of range; write a length from %s to %s", Quote(s), bothUnits(lo), bothUnits(hi))
		}
		return l, nil
	}
}

// SizeWithin narrows the parser of sizes to sides in [lo, hi].
func SizeWithin(lo, hi unit.Length) func(string) (unit.Size, error) {
	return func(s string) (unit.Size, error) {
		size, err := unit.ParseSize(s)
		if err != nil {
			return size, err
		}
		if size.W < lo || size.H < lo || size.W > hi || size.H > hi {
			return size, fmt.Errorf("%s is out of range; write width x height, each from %s to %s", Quote(s), bothUnits(lo), bothUnits(hi))
		}
		return size, nil
	}
}

// bothUnits shows a length in both systems: the reader's hand may know either.
func bothUnits(l unit.Length) string {
	if l == 0 {
		return "0 mm"
	}
	return l.Format(unit.Metric) + " (" + l.Format(unit.Imperial) + ")"
}

// MaxLine is the longest name or note, in bytes.
const MaxLine = 2000

// Line reads a name or note: not blank, at most MaxLine bytes, no control
// characters, which could drive a terminal or break a drawing.
func Line(s string) (string, error) {
	switch {
	case strings.TrimSpace(s) == "":
		return "", fmt.Errorf("blank; write a text, or leave the line out where nothing need be said")
	case len(s) > MaxLine:
		return "", fmt.Errorf("this is a text of %d bytes; keep it under %d", len(s), MaxLine)
	}
	for _, r := range s {
		if unicode.IsControl(r) && r != '\n' {
			return "", fmt.Errorf("%s holds a control character; remove it", Quote(s))
		}
	}
	return s, nil
}

// MaxID is the longest id, in bytes.
const MaxID = 32

// ID reads an id: ids stand in paths, drawings and file names.
func ID(s string) (string, error) {
	ok := len(s) > 0 && len(s) <= MaxID && alphanumeric(s[0])
	for i := 0; ok && i < len(s); i++ {
		ok = alphanumeric(s[i]) || strings.IndexByte(".-_", s[i]) >= 0
	}
	if !ok {
		return "", fmt.Errorf("%s cannot be an id; use up to %d letters, digits, dots, dashes and underscores, the first a letter or digit", Quote(s), MaxID)
	}
	return s, nil
}

func alphanumeric(b byte) bool {
	return b >= '0' && b <= '9' || b >= 'A' && b <= 'Z' || b >= 'a' && b <= 'z'
}
