package sheet

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
)

// Paper is a sheet size in millimetres, upright.
type Paper struct {
	Name string
	W, H float64 // millimetres
}

// Papers lists the known sizes: the A series of ISO 216 (rounded down to whole
// millimetres, tolerances aside) and the sizes of ANSI/ASME Y14.1, which are
// whole half inches: letter is A, tabloid is B.
func Papers() []Paper {
	const inch = 25.4
	return []Paper{
		{"a5", 148, 210}, {"a4", 210, 297}, {"a3", 297, 420}, {"a2", 420, 594}, {"a1", 594, 841}, {"a0", 841, 1189},
		{"letter", 8.5 * inch, 11 * inch}, {"legal", 8.5 * inch, 14 * inch}, {"tabloid", 11 * inch, 17 * inch},
		{"ansi-c", 17 * inch, 22 * inch}, {"ansi-d", 22 * inch, 34 * inch}, {"ansi-e", 34 * inch, 44 * inch},
	}
}

// ParsePaper reads a paper's name, in any case.
func ParsePaper(s string) (Paper, error) {
	var names []string
	for _, p := range Papers() {
		if strings.EqualFold(p.Name, s) {
			return p, nil
		}
		names = append(names, p.Name)
	}
	return Paper{}, fmt.Errorf("paper %q: write one of %s", s, strings.Join(names, ", "))
}

// UsualPaper names the paper of an office where the units are used.
func UsualPaper(sys unit.System) string {
	if sys == unit.Imperial {
		return "letter"
	}
	return "a4"
}

// Landscape returns the paper lying on its longer side.
func (p Paper) Landscape() Paper {
	if p.W < p.H {
		p.W, p.H = p.H, p.W
	}
	return p
}

// Portrait returns the paper standing on its shorter side.
func (p Paper) Portrait() Paper {
	if p.W > p.H {
		p.W, p.H = p.H, p.W
	}
	return p
}

// Sheet returns an empty drawing of the paper's size.
func (p Paper) Sheet(name string, styles Stylesheet) *Drawing { return New(name, p.W, p.H, styles) }
