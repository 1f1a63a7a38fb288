package frames

import (
	"encoding/binary"
	"errors"
	"io"
	"strings"
)

// block is data built as TIFF 6.0: directories of rows, of which each has a tag, a type, a
// count, and the value or where that stands. The library reads them; what it does not tell
// is read here.
type block struct {
	r     io.ReaderAt
	at    int64 // where it begins: places are told from there
	order binary.ByteOrder
	first int64 // where its first directory stands
}

// The tags that are looked up here.
const (
	rowExif   = 0x8769 // where the directory stands that says how a picture was taken
	rowSecond = 0x9291 // SubSecTimeOriginal
	rowBytes  = 12
)

func openBlock(r io.ReaderAt, at int64) (block, error) {
	var head [8]byte
	if _, err := r.ReadAt(head[:], at); err != nil {
		return block{}, err
	}
	number, order := tiffNumber(head[:])
	if number == 0 {
		return block{}, errors.New("no TIFF where it should be")
	}
	return block{r, at, order, int64(order.Uint32(head[4:]))}, nil
}

// row returns a tag's row of a directory.
func (b block) row(directory int64, tag uint16) (row [rowBytes]byte, ok bool) {
	var n [2]byte
	if _, err := b.r.ReadAt(n[:], b.at+directory); err != nil {
		return row, false
	}
	rows := make([]byte, rowBytes*int(min(b.order.Uint16(n[:]), mostRows)))
	got, _ := b.r.ReadAt(rows, b.at+directory+2)
	for at := 0; at+rowBytes <= got; at += rowBytes {
		if copy(row[:], rows[at:]); b.order.Uint16(row[:]) == tag {
			return row, true
		}
	}
	return row, false
}

// number returns a whole number of a directory, 0 where it says none.
func (b block) number(directory int64, tag uint16) uint32 {
	row, ok := b.row(directory, tag)
	switch kind := b.order.Uint16(row[2:]); {
	case ok && kind == 3:
		return uint32(b.order.Uint16(row[8:]))
	case ok && kind == 4:
		return b.order.Uint32(row[8:])
	}
	return 0
}

// second returns the digits behind the second at which a picture was taken, "" without: the
// library makes a number of them, which has 5 for 05.
func (b block) second(directory int64) string {
	row, ok := b.row(directory, rowSecond)
	n := b.order.Uint32(row[4:])
	if !ok || n > mostTag {
		return ""
	}
	text := row[8:min(8+n, rowBytes)]
	if n > 4 {
		text = make([]byte, n)
		if _, err := b.r.ReadAt(text, b.at+int64(b.order.Uint32(row[8:]))); err != nil {
			return ""
		}
	}
	digits := strings.Trim(string(text), " \x00")
	if strings.Trim(digits, "0123456789") != "" {
		return ""
	}
	return digits
}
