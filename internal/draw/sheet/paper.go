package sheet

import (
	"fmt"
	"math"
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

// Growth is how many times larger letters and lines are on a paper than on A4: they grow
// as the heights of ISO 3098-1 (2.5, 3.5, 5, 7 and 10 mm, from memory) do from one size of
// the A series to the next, by the root of two. What is no smaller than A4 grows by 1 or more.
func (p Paper) Growth() float64 {
	const a4 = 210 // mm, its shorter side
	steps := math.Round(2 * math.Log2(min(p.W, p.H)/a4))
	return math.Pow(2, max(0, steps)/2)
}

// Laid returns an empty drawing that is laid out smaller than the paper, by a growth,
// and is printed on it after [Drawing.Grown].
func (p Paper) Laid(name string, growth float64, styles Stylesheet) *Drawing {
	d := New(name, p.W/growth, p.H/growth, styles)
	d.Growth = growth
	return d
}

// Sheet returns an empty drawing of the paper's size.
func (p Paper) Sheet(name string, styles Stylesheet) *Drawing { return New(name, p.W, p.H, styles) }
