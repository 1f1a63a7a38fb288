package typeface

import "encoding/binary"

// Unhinted returns the font of [Face.Subset] for a web page without the instructions that
// fit outlines to coarse pixels: a third smaller, and the same shapes and widths.
func (f *Face) Unhinted(glyphs []uint16) []byte {
	t := tables(f.Raw)
	keep := closure(t, glyphs)
	glyf, loca := pruned(t, keep, bare)
	return assemble(webTables(t, keep, glyf, loca))
}

// webTables are those that browsers ask for, beside the outlines.
func webTables(t map[string][]byte, keep []uint16, glyf, loca []byte) map[string][]byte {
	return map[string][]byte{
		"hhea": t["hhea"], "maxp": t["maxp"], "hmtx": prunedWidths(t, keep),
		"glyf": glyf, "loca": loca, "head": longHead(t["head"]),
		"cmap": t["cmap"], "OS/2": t["OS/2"], "post": shortPost(t["post"]), "name": emptyName(),
	}
}

// whole is a glyph as the font has it.
func whole(glyph []byte) []byte { return glyph }

// bare is a glyph without its instructions, which stand between the ends of its contours
// and its points (OpenType specification, glyf table); one built of others stays.
func bare(glyph []byte) []byte {
	const head = 10 // the number of contours and the box
	if len(glyph) < head {
		return glyph
	}
	contours := int(int16(binary.BigEndian.Uint16(glyph)))
	if contours < 0 {
		return glyph
	}
	at := head + 2*contours
	long := int(binary.BigEndian.Uint16(glyph[at:]))
	return append(append(append([]byte(nil), glyph[:at]...), 0, 0), glyph[at+2+long:]...)
}
