package frames

import (
	"encoding/binary"
	"slices"
	"testing"
)

// row is a row of a directory of TIFF 6.0: value is whatever fits its kind.
type row struct {
	tag, kind uint16
	value     []byte
}

func ascii(tag uint16, s string) row { return row{tag, 2, []byte(s + "\x00")} }
func short(tag uint16, n uint16) row { return row{tag, 3, le.AppendUint16(nil, n)} }
func long(tag uint16, n uint32) row  { return row{tag, 4, le.AppendUint32(nil, n)} }
func ratioOf(tag uint16, a, b uint32) row {
	return row{tag, 5, le.AppendUint32(le.AppendUint32(nil, a), b)}
}

var le = binary.LittleEndian

// directory writes rows that stand at a place of a block, and behind them their values.
func directory(at int, rows ...row) []byte {
	slices.SortFunc(rows, func(a, b row) int { return int(a.tag) - int(b.tag) })
	size := map[uint16]int{2: 1, 3: 2, 4: 4, 5: 8, 7: 1}
	out := le.AppendUint16(nil, uint16(len(rows)))
	var values []byte
	for _, r := range rows {
		out = le.AppendUint16(le.AppendUint16(out, r.tag), r.kind)
		out = le.AppendUint32(out, uint32(len(r.value)/size[r.kind]))
		if len(r.value) <= 4 {
			out = append(out, append(slices.Clone(r.value), 0, 0, 0, 0)[:4]...)
			continue
		}
		out = le.AppendUint32(out, uint32(at+2+12*len(rows)+4+len(values)))
		values = append(values, r.value...)
		values = append(values, make([]byte, len(r.value)%2)...)
	}
	return append(append(out, 0, 0, 0, 0), values...)
}

// own are rows of a picture's own directory, of a body turned by a quarter.
func own() []row { return []row{ascii(0x110, "Body"), short(0x112, 6)} }

// how are the rows of how it was taken: at noon and a part of a second, 1/1000 s, f/2.8, ISO
// 3200, 200 mm.
func how(second string) []row {
	return []row{ratioOf(0x829a, 1, 1000), ratioOf(0x829d, 28, 10), short(0x8827, 3200), ratioOf(0x920a, 200, 1), ascii(0x9003, "2026:11:28 12:00:00"),
		ascii(0x9291, second), ascii(0xa431, "0042"), long(0xa002, 6000), long(0xa003, 4000)}
}

// blockOf is a block of TIFF with its number, of which the own directory stands behind the
// head and leads to that of how it was taken.
func blockOf(number uint16, rows, how []row) []byte {
	head := le.AppendUint32(le.AppendUint16([]byte("II"), number), 8)
	first := directory(8, append(rows, long(0x8769, 0))...)
	taken := 8 + len(first)
	first = directory(8, append(rows, long(0x8769, uint32(taken)))...)
	return slices.Concat(head, first, directory(taken, how...))
}

// jpegOf is a small picture with a block of tags.
func jpegOf(t testing.TB, block []byte) []byte {
	t.Helper()
	head := binary.BigEndian.AppendUint16([]byte{0xff, 0xd8, 0xff, 0xe1}, uint16(len(block)+2+len(exifMark)))
	return slices.Concat(head, []byte(exifMark), block, jpegBytes(t)[2:])
}

func boxOf(kind string, parts ...[]byte) []byte {
	inner := slices.Concat(parts...)
	return slices.Concat(binary.BigEndian.AppendUint32(nil, uint32(8+len(inner))), []byte(kind), inner)
}

// rated is XMP with a rating.
const ratedXMP = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmp:Rating="4"/></rdf:RDF></x:xmpmeta>`

// raws are raw files of each kind that the library does not read as it is, with nothing in
// them but what says how they were taken.
func raws(t testing.TB, second string) map[string][]byte {
	first := func(rows ...row) []byte {
		return slices.Concat([]byte("II*\x00\x08\x00\x00\x00"), directory(8, rows...))
	}
	cr3 := slices.Concat(boxOf("ftyp", []byte("crx \x00\x00\x00\x01crx isom")),
		boxOf("moov", boxOf("uuid", []byte(uuidTaken), boxOf("CNCV", []byte("version")), boxOf("CMT1", first(own()...)), boxOf("CMT2", first(how(second)...)))),
		boxOf("uuid", []byte(uuidXMP), []byte(ratedXMP)), boxOf("mdat", make([]byte, 64)))
	preview := jpegOf(t, blockOf(tiffPlain, own(), how(second)))
	bordered := append(own(), short(rowISO, 3200), short(rowTop, 4), short(rowLeft, 8), short(rowBottom, 4004), short(rowRightOf, 6008))
	return map[string][]byte{
		"x.orf": blockOf(tiffRO, append(own(), long(0x100, 6000), long(0x101, 4000)), how(second)),
		"x.rw2": blockOf(tiffBorders, bordered, how(second)),
		"x.cr3": cr3,
		"x.raf": rafOf(preview),
	}
}

// rafOf is a RAF file with a JPEG: its signature, which exiftool wants, the places of
// JPEG and directory, and a directory of one row.
func rafOf(preview []byte) []byte {
	be := binary.BigEndian
	head := append([]byte("\x46\x55\x4a\x49\x46\x49\x4c\x4d\x43\x43\x44\x2d\x52\x41\x57\x20"+"0201"), make([]byte, 148-20)...)
	size := be.AppendUint16(be.AppendUint16(be.AppendUint16(be.AppendUint16(be.AppendUint32(nil, 1), rowCropped), 4), 4000), 6000)
	be.PutUint32(head[rafPlaces:], uint32(len(head)))
	be.PutUint32(head[rafPlaces+4:], uint32(len(preview)))
	be.PutUint32(head[rafPlaces+8:], uint32(len(head)+len(preview)))
	be.PutUint32(head[rafPlaces+12:], uint32(len(size)))
	return slices.Concat(head, preview, size)
}

// TestRawKinds reads each kind of raw file in full, and what is none by its cause.
func TestRawKinds(t *testing.T) {
	for name, data := range raws(t, "05") {
		f, trouble := readBytes(name, data)
		if trouble.Cause != "" {
			t.Errorf("%s: %+v", name, trouble)
			continue
		}
		if f.Taken != noon.Add(50e6) || f.ISO.Or(0) != 3200 || f.Stop.Or(0) != 2.8 || f.Focal.Or(0).Millimetres() != 200 || f.Body != "0042" || f.Model != "Body" ||
			!f.Portrait || f.Pixels != [2]int{6000, 4000} || (name == "x.cr3") != (f.Rating.Or(0) == 4) {
			t.Errorf("%s: %+v", name, f)
		}
	}
	for name, want := range map[string]Cause{"x.x3f": RawKind, "x.crw": RawKind, "x.raf": NoPicture, "x.jpg": NoPicture} {
		if _, trouble := readBytes(name, make([]byte, 400)); trouble.Cause != want {
			t.Errorf("%s: %+v, want %s", name, trouble, want)
		}
	}
}

// TestRawCutAtEveryByte ends raw files anywhere: they say why they are no frames, or when
// they were taken.
func TestRawCutAtEveryByte(t *testing.T) {
	for name, whole := range raws(t, "05") {
		for n := range len(whole) {
			f, trouble := readBytes(name, whole[:n])
			if trouble.Cause == "" && !f.Taken.Equal(noon) && !f.Taken.Equal(noon.Add(50e6)) {
				t.Errorf("%s, %d of %d bytes: taken %v", name, n, len(whole), f.Taken)
			}
		}
	}
}

// TestBoxesThatLieAboutTheirSize end the list.
func TestBoxesThatLieAboutTheirSize(t *testing.T) {
	for _, head := range []string{"\xff\xff\xff\xffmoov", "\x00\x00\x00\x02moov", "\x00\x00\x00\x01moov\xff\xff\xff\xff\xff\xff\xff\xff", "\x00\x00\x00\x00moov"} {
		data := slices.Concat(boxOf("ftyp", []byte("crx \x00\x00\x00\x01")), []byte(head), make([]byte, 100))
		if _, trouble := readBytes("x.cr3", data); trouble.Cause != NoTime {
			t.Errorf("%q: %+v", head, trouble)
		}
	}
}
