package frames

import (
	"bytes"
	"path/filepath"
	"slices"
	"strings"

	"github.com/bep/imagemeta"
)

// headBytes are enough to tell what a file is.
const headBytes = 16

// kind tells what a file is by its first bytes; the many formats that are built as TIFF
// are told apart by their names, which changes nothing of how they are read.
func kind(head []byte, name string) (imagemeta.ImageFormat, bool) {
	switch {
	case bytes.HasPrefix(head, []byte("\xff\xd8\xff")):
		return imagemeta.JPEG, true
	case len(head) >= 12 && string(head[4:8]) == "ftyp" && slices.Contains(heifBrands(), string(head[8:12])):
		return imagemeta.HEIF, true
	case bytes.HasPrefix(head, []byte("II*\x00")) || bytes.HasPrefix(head, []byte("MM\x00*")):
		if f, ok := rawKinds()[strings.ToLower(filepath.Ext(name))]; ok {
			return f, true
		}
		return imagemeta.TIFF, true
	}
	return 0, false
}

// heifBrands are the brands of HEIF files (ISO/IEC 23008-12, annex B, and of a video coder's).
func heifBrands() []string {
	return []string{"heic", "heix", "hevc", "heim", "heis", "mif1", "msf1", "avif"}
}

func rawKinds() map[string]imagemeta.ImageFormat {
	return map[string]imagemeta.ImageFormat{".cr2": imagemeta.CR2, ".nef": imagemeta.NEF, ".arw": imagemeta.ARW, ".dng": imagemeta.DNG, ".pef": imagemeta.PEF}
}

// pictureEnds are the ends of names of files that are looked at; others are passed over.
func pictureEnds() []string {
	return []string{".jpg", ".jpeg", ".heic", ".heif", ".hif", ".cr2", ".nef", ".arw", ".dng", ".pef", ".tif", ".tiff"}
}

const sidecarEnd = ".xmp"
