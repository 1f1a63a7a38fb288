package typeface

import (
	"encoding/binary"
	"slices"
)

// Subset returns a TrueType font with only the named glyphs' outlines; all glyphs
// keep their numbers. For a web page (web) it also holds the tables that browsers
// ask for; without, those that a PDF needs.
func (f *Face) Subset(glyphs []uint16, web bool) []byte {
	t := tables(f.Raw)
	keep := closure(t, glyphs)
	glyf, loca := pruned(t, keep, whole)
	out := webTables(t, keep, glyf, loca)
	if !web {
		for _, name := range []string{"cmap", "OS/2", "post", "name"} {
			delete(out, name)
		}
	}
	out["cvt "], out["fpgm"], out["prep"] = t["cvt "], t["fpgm"], t["prep"]
	return assemble(out)
}

func tables(raw []byte) map[string][]byte {
	out := map[string][]byte{}
	n := int(binary.BigEndian.Uint16(raw[4:]))
	for i := range n {
		rec := raw[12+16*i:]
		from := binary.BigEndian.Uint32(rec[8:])
		out[string(rec[:4])] = raw[from : from+binary.BigEndian.Uint32(rec[12:])]
	}
	return out
}

// glyphData returns a glyph's bytes in the glyf table.
func glyphData(t map[string][]byte, g uint16) []byte {
	loca, glyf := t["loca"], t["glyf"]
	if binary.BigEndian.Uint16(t["head"][50:]) == 0 {
		a := 2 * uint32(binary.BigEndian.Uint16(loca[2*int(g):]))
		b := 2 * uint32(binary.BigEndian.Uint16(loca[2*int(g)+2:]))
		return glyf[a:b]
	}
	return glyf[binary.BigEndian.Uint32(loca[4*int(g):]):binary.BigEndian.Uint32(loca[4*int(g)+4:])]
}

// closure returns the glyphs in rising order with glyph 0, the empty box. The Go
// fonts build no glyph of others; a test keeps watch.
func closure(t map[string][]byte, glyphs []uint16) []uint16 {
	total := uint16(numGlyphs(t))
	keep := []uint16{0}
	for _, g := range glyphs {
		if g < total {
			keep = append(keep, g)
		}
	}
	slices.Sort(keep)
	return slices.Compact(keep)
}

func numGlyphs(t map[string][]byte) int { return int(binary.BigEndian.Uint16(t["maxp"][4:])) }

// pruned returns the glyf table with only the kept glyphs, each as it is told to be, and
// its long loca table.
func pruned(t map[string][]byte, keep []uint16, as func([]byte) []byte) (glyf, loca []byte) {
	n := numGlyphs(t)
	loca = make([]byte, 0, 4*(n+1))
	for g := range n {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		if _, ok := slices.BinarySearch(keep, uint16(g)); ok {
			glyf = append(glyf, as(glyphData(t, uint16(g)))...)
			for len(glyf)%4 != 0 {
				glyf = append(glyf, 0)
			}
		}
	}
	return glyf, binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
}

// prunedWidths returns the hmtx table with the widths of glyphs left out set to
// zero, so that it packs well.
func prunedWidths(t map[string][]byte, keep []uint16) []byte {
	out := slices.Clone(t["hmtx"])
	full := int(binary.BigEndian.Uint16(t["hhea"][34:]))
	for g := range full {
		if _, ok := slices.BinarySearch(keep, uint16(g)); !ok && g != full-1 {
			clear(out[4*g : 4*g+4])
		}
	}
	return out
}
