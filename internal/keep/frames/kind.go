package frames

import (
	"bytes"
	"encoding/binary"
	"path/filepath"
	"slices"
	"strings"

	"github.com/bep/imagemeta"
)

// headBytes are enough to tell what a file is.
const headBytes = 32

// kind tells by a file's first bytes how it is read; nil, with why not, when it is not. Of
// the many formats that are built as TIFF each is read as the library reads raw files.
func kind(head []byte, name string) (read func(*picture) error, why Cause) {
	end := strings.ToLower(filepath.Ext(name))
	switch number, _ := tiffNumber(head); {
	case bytes.HasPrefix(head, []byte("\xff\xd8\xff")):
		return whole(imagemeta.JPEG), ""
	case isBoxed(head, "crx "):
		return (*picture).boxed, ""
	case isBoxed(head, heifBrands()...):
		return whole(imagemeta.HEIF), ""
	case number == tiffPlain:
		return whole(imagemeta.DNG), ""
	case number == tiffRO || number == tiffSR:
		return (*picture).renumbered, ""
	case number == tiffBorders:
		return (*picture).bordered, ""
	case end == ".raf":
		return (*picture).previewed, ""
	case slices.Contains(rawEnds(), end):
		return nil, RawKind
	}
	return nil, NoPicture
}

// The numbers that stand behind the byte order of files built as TIFF: that of TIFF 6.0,
// and those of raw files.
const (
	tiffPlain   = 42
	tiffRO      = 0x4f52 // ORF
	tiffSR      = 0x5352 // ORF
	tiffBorders = 0x55   // RW2
)

// tiffNumber returns the number behind a byte order, 0 without one.
func tiffNumber(head []byte) (uint16, binary.ByteOrder) {
	if len(head) < 8 {
		return 0, nil
	}
	switch string(head[:2]) {
	case "II":
		return binary.LittleEndian.Uint16(head[2:]), binary.LittleEndian
	case "MM":
		return binary.BigEndian.Uint16(head[2:]), binary.BigEndian
	}
	return 0, nil
}

// isBoxed reports whether a file begins with the box of a file's type (ISO/IEC 14496-12)
// and has one of some brands, as its own or among those that it is compatible with.
func isBoxed(head []byte, brands ...string) bool {
	if len(head) < 12 || string(head[4:8]) != "ftyp" {
		return false
	}
	size := min(int(binary.BigEndian.Uint32(head)), len(head))
	for at := 8; at+4 <= size; at += 4 {
		if at != 12 && slices.Contains(brands, string(head[at:at+4])) { // 12: the brand's version
			return true
		}
	}
	return false
}

// heifBrands are the brands of HEIF files (ISO/IEC 23008-12, annex B, and of a video coder's).
func heifBrands() []string {
	return []string{"heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1", "avif"}
}

// plainEnds and rawEnds are the ends of names of files that are looked at; others are
// passed over.
func plainEnds() []string {
	return []string{".jpg", ".jpeg", ".heic", ".heif", ".hif", ".tif", ".tiff"}
}

func rawEnds() []string {
	return []string{".3fr", ".arw", ".cr2", ".cr3", ".crw", ".dng", ".erf", ".fff", ".gpr", ".iiq", ".kdc", ".mef", ".mos", ".mrw", ".nef", ".nrw",
		".orf", ".pef", ".raf", ".raw", ".rw2", ".rwl", ".sr2", ".srf", ".srw", ".x3f"}
}

func isPicture(end string) bool {
	return slices.Contains(plainEnds(), end) || slices.Contains(rawEnds(), end)
}

const sidecarEnd = ".xmp"
