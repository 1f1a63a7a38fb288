package sheet

import (
	"maps"
	"slices"
	"unicode/utf8"
)

// glyphUse gathers the glyphs that a drawing uses, with the character each stands for.
type glyphUse map[Face]map[uint16]rune

func (u glyphUse) add(f Face, s string) {
	if f == 0 {
		f = Regular
	}
	m := u[f]
	if m == nil {
		m = map[uint16]rune{}
		u[f] = m
	}
	font := f.font()
	for _, r := range s {
		g := font.Index(r)
		if g == 0 {
			r = utf8.RuneError // one box stands for every letter that is missing
		}
		if _, ok := m[g]; !ok {
			m[g] = r
		}
	}
}

// glyphs returns the face's glyphs in rising order.
func (u glyphUse) glyphs(f Face) []uint16 { return slices.Sorted(maps.Keys(u[f])) }
