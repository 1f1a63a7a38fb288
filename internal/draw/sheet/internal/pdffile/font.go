package pdffile

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/rinkpane/internal/draw/sheet/internal/typeface"
)

// emUnits is the number of glyph space units to the em in a PDF font.
const emUnits = 1000

// Font embeds the named glyphs of a face as a composite font with two-byte
// codes equal to the glyph numbers, and a map back to text, so that the text can
// be searched and copied. text gives the character of each glyph.
func Font(f *File, face *typeface.Face, glyphs []uint16, text map[uint16]rune) Ref {
	program := face.Subset(glyphs, false)
	file := f.Stream(fmt.Sprintf("/Length1 %d", len(program)), program)
	name := subsetTag(glyphs) + "+" + face.Name
	descriptor := f.Add(descriptor(face, name, file))
	cid := f.Add(fmt.Sprintf("<</Type /Font /Subtype /CIDFontType2 /BaseFont /%s "+
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>> "+
		"/FontDescriptor %v /DW %d /W [%s] /CIDToGIDMap /Identity>>",
		name, descriptor, units(face.Advance(0)), widths(face, glyphs)))
	cmap := f.Stream("", []byte(toUnicode(glyphs, text)))
	return f.Add(fmt.Sprintf("<</Type /Font /Subtype /Type0 /BaseFont /%s /Encoding /Identity-H "+
		"/DescendantFonts [%v] /ToUnicode %v>>", name, cid, cmap))
}

func units(em float64) int { return int(math.Round(em * emUnits)) }

// Font descriptor flags, ISO 32000-1, table 123.
const (
	flagFixedPitch = 1 << 0
	flagSymbolic   = 1 << 2
	flagItalic     = 1 << 6
)

// Nominal stem widths for readers that replace the font; ours is embedded.
const stemV = 80

func descriptor(face *typeface.Face, name string, file Ref) string {
	flags := flagSymbolic
	if strings.Contains(face.Name, "Mono") {
		flags |= flagFixedPitch
	}
	if face.ItalicDeg != 0 {
		flags |= flagItalic
	}
	b := face.BBox
	return fmt.Sprintf("<</Type /FontDescriptor /FontName /%s /Flags %d /FontBBox [%d %d %d %d] "+
		"/ItalicAngle %g /Ascent %d /Descent %d /CapHeight %d /StemV %d /FontFile2 %v>>",
		name, flags, units(b[0]), units(b[1]), units(b[2]), units(b[3]),
		face.ItalicDeg, units(face.Ascent), -units(face.Descent), units(face.CapHeight), stemV, file)
}

// widths returns the entries of the W array: runs of neighbouring glyphs.
func widths(face *typeface.Face, glyphs []uint16) string {
	var b strings.Builder
	for i, g := range glyphs {
		switch {
		case i == 0:
			fmt.Fprintf(&b, "%d [", g)
		case g != glyphs[i-1]+1:
			fmt.Fprintf(&b, "] %d [", g)
		default:
			b.WriteByte(' ')
		}
		fmt.Fprintf(&b, "%d", units(face.Advance(g)))
	}
	if len(glyphs) > 0 {
		b.WriteByte(']')
	}
	return b.String()
}

// maxChars is the most entries one bfchar block may hold (Adobe technical note 5411).
const maxChars = 100

func toUnicode(glyphs []uint16, text map[uint16]rune) string {
	var b strings.Builder
	b.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for chunk := range slices.Chunk(glyphs, maxChars) {
		fmt.Fprintf(&b, "%d beginbfchar\n", len(chunk))
		for _, g := range chunk {
			w := wide(string(text[g]))
			fmt.Fprintf(&b, "<%04X> <%s\n", g, w[len("<FEFF"):])
		}
		b.WriteString("endbfchar\n")
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n")
	return b.String()
}

// subsetTag returns the six capitals that name a subset, made from its glyphs.
func subsetTag(glyphs []uint16) string {
	h := uint32(2166136261) // FNV-1a
	for _, g := range glyphs {
		h = (h ^ uint32(g)) * 16777619
	}
	var tag [6]byte
	for i := range tag {
		tag[i] = 'A' + byte(h%26)
		h /= 26
	}
	return string(tag[:])
}
