package frames

import (
	"encoding/binary"
	"errors"
	"io"
	"iter"

	"github.com/bep/imagemeta"
)

// whole returns how a kind is read of which the library reads the file as it is.
func whole(format imagemeta.ImageFormat) func(*picture) error {
	return func(p *picture) error {
		if format == imagemeta.DNG {
			p.blocks = append(p.blocks, 0)
		}
		return p.decode(io.NewSectionReader(p.in, 0, p.size), format)
	}
}

// renumbered reads a raw file that is TIFF but for its number.
func (p *picture) renumbered() error {
	p.blocks = append(p.blocks, 0)
	return p.decode(io.NewSectionReader(asTIFF{p.in}, 0, p.size), imagemeta.DNG)
}

// asTIFF shows a file that is built as TIFF with the number of TIFF.
type asTIFF struct{ r io.ReaderAt }

func (a asTIFF) ReadAt(b []byte, off int64) (int, error) {
	n, err := a.r.ReadAt(b, off)
	if off < 4 { // the byte order's letters say which of the two bytes comes first
		var order [2]byte
		if _, err := a.r.ReadAt(order[:], 0); err != nil {
			return 0, err
		}
		number := [2]byte{tiffPlain, 0}
		if order[0] == 'M' {
			number = [2]byte{0, tiffPlain}
		}
		for i, v := range number {
			if at := int64(2+i) - off; at >= 0 && at < int64(n) {
				b[at] = v
			}
		}
	}
	return n, err
}

// Rows of the first directory of RW2 files.
const (
	rowISO, rowPreview                     = 0x17, 0x2e
	rowTop, rowLeft, rowBottom, rowRightOf = 4, 5, 6, 7 // the picture's borders on the sensor
)

// bordered reads a raw file (RW2) that is TIFF but for its number and has rows of its own,
// and a JPEG whose data say what its own do not.
func (p *picture) bordered() error {
	failed := p.renumbered()
	b, err := openBlock(p.in, 0)
	if err != nil {
		return errors.Join(failed, err)
	}
	side := func(from, to uint16) int { return int(b.number(b.first, to)) - int(b.number(b.first, from)) }
	p.pixels = [2]int{max(side(rowLeft, rowRightOf), 0), max(side(rowTop, rowBottom), 0)}
	if _, met := p.found[tagISO]; !met {
		p.found[tagISO] = b.number(b.first, rowISO)
	}
	if row, ok := b.row(b.first, rowPreview); ok {
		at, n := int64(b.order.Uint32(row[8:])), int64(b.order.Uint32(row[4:]))
		return errors.Join(failed, p.decode(io.NewSectionReader(p.in, at, n), imagemeta.JPEG))
	}
	return failed
}

// Where RAF files say where their JPEG and their directory begin, big endian; and rows of
// the directory: the picture's height and width.
const (
	rafPlaces            = 84
	rowCropped, rowWhole = 0x111, 0x121
	mostRows             = 1000
)

// previewed reads a raw file (RAF) whose JPEG says how it was taken.
func (p *picture) previewed() error {
	var places [16]byte
	if _, err := p.in.ReadAt(places[:], rafPlaces); err != nil {
		return err
	}
	be := binary.BigEndian
	at, n := int64(be.Uint32(places[:])), int64(be.Uint32(places[4:]))
	var start [3]byte
	if _, err := p.in.ReadAt(start[:], at); err != nil || at == 0 || start != [3]byte{0xff, 0xd8, 0xff} {
		return errNoPicture
	}
	p.pixels = rafSize(io.NewSectionReader(p.in, int64(be.Uint32(places[8:])), int64(be.Uint32(places[12:]))))
	return p.decode(io.NewSectionReader(p.in, at, n), imagemeta.JPEG)
}

// rafSize reads a picture's size from a RAF's directory: rows of a number, a length, and so
// many bytes.
func rafSize(r io.Reader) (pixels [2]int) {
	be := binary.BigEndian
	var count uint32
	if binary.Read(r, be, &count) != nil {
		return pixels
	}
	for range min(count, mostRows) {
		var head [2]uint16
		if binary.Read(r, be, &head) != nil {
			return pixels
		}
		var size [2]uint16
		if (head[0] == rowCropped || head[0] == rowWhole) && head[1] == 4 && binary.Read(r, be, &size) == nil {
			return [2]int{int(size[1]), int(size[0])}
		}
		if _, err := io.CopyN(io.Discard, r, int64(head[1])); err != nil {
			return pixels
		}
	}
	return pixels
}

// The boxes of CR3 files that have a UUID: of the data on how it was taken, and of XMP.
const (
	uuidTaken = "\x85\xc0\xb6\x87\x82\x0f\x11\xe0\x81\x11\xf4\xce\x46\x2b\x6a\x48"
	uuidXMP   = "\xbe\x7a\xcf\xcb\x97\xa9\x42\xe8\x9c\x71\x99\x94\x91\xe3\xaf\xac"
)

// boxed reads a raw file (CR3) of boxes, among them one of TIFF for the picture's own tags
// (CMT1) and one for those of how it was taken (CMT2).
func (p *picture) boxed() (failed error) {
	for top := range boxes(p.in, 0, p.size) {
		if top.kind == uuidXMP {
			failed = errors.Join(failed, p.found.xmp(io.NewSectionReader(p.in, top.from, top.to-top.from), ratings()))
		}
		if top.kind != "moov" {
			continue
		}
		for inner := range boxes(p.in, top.from, top.to) {
			if inner.kind != uuidTaken {
				continue
			}
			for part := range boxes(p.in, inner.from, inner.to) {
				failed = errors.Join(failed, p.part(part))
			}
		}
	}
	return failed
}

func (p *picture) part(b box) error {
	switch b.kind {
	case "CMT2":
		p.exif = true
		p.own = append(p.own, b.from)
		defer func() { p.exif = false }()
	case "CMT1":
	default:
		return nil
	}
	return p.decode(io.NewSectionReader(p.in, b.from, b.to-b.from), imagemeta.DNG)
}

// box is one of ISO/IEC 14496-12: what stands in it, and of what kind that is.
type box struct {
	kind     string // four letters, of a "uuid" its sixteen bytes
	from, to int64
}

// boxes lists the boxes between two places of a file; the list ends where one is damaged.
func boxes(r io.ReaderAt, from, to int64) iter.Seq[box] {
	return func(yield func(box) bool) {
		for range mostRows {
			var head [16]byte
			if n, _ := r.ReadAt(head[:], from); n < 8 {
				return
			}
			b := box{kind: string(head[4:8]), from: from + 8}
			switch size := int64(binary.BigEndian.Uint32(head[:])); size {
			case 0: // to the end
				b.to = to
			case 1: // the size stands behind the kind, in 64 bits
				b.from, b.to = from+16, from+int64(binary.BigEndian.Uint64(head[8:]))
			default:
				b.to = from + size
			}
			if b.kind == "uuid" {
				var id [16]byte
				if _, err := r.ReadAt(id[:], b.from); err != nil {
					return
				}
				b.kind, b.from = string(id[:]), b.from+16
			}
			if b.to < b.from || b.to > to || !yield(b) {
				return
			}
			from = b.to
		}
	}
}

var errNoPicture = errors.New("no picture where it should be")
