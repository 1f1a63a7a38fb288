package custody

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"image"
	_ "image/jpeg" // reads sizes
	_ "image/png"  // reads sizes
)

// Photo is a picture of a finding or an incident, without what the camera wrote about
// itself, its place and its owner.
type Photo struct {
	Kind string // "image/jpeg" or "image/png"
	Data []byte
}

// Key names the photo: the SHA-256 of its data, hexadecimal.
func (p Photo) Key() string {
	sum := sha256.Sum256(p.Data)
	return hex.EncodeToString(sum[:])
}

// MaxPhoto is the most bytes that a photo may have.
const MaxPhoto = 8 << 20

// maxPixels is the most pixels: more would be a burden to whoever looks.
const maxPixels = 64_000_000

// PhotoOf takes a file that somebody sent as a photo: JPEG or PNG by what is in it,
// not by its name, of at most MaxPhoto bytes. Of a JPEG it keeps what the picture is
// made of and which side is up; of a PNG the chunks that make the picture. The error
// is one line that says what would do.
func PhotoOf(file []byte) (Photo, error) {
	if len(file) > MaxPhoto {
		return Photo{}, fmt.Errorf("the photo has %.1f MB; at most %d MB are kept: make it smaller", float64(len(file))/(1<<20), MaxPhoto>>20)
	}
	size, format, err := image.DecodeConfig(bytes.NewReader(file))
	if err != nil {
		return Photo{}, errors.New("this is no photo that can be kept: send a JPEG or a PNG")
	}
	if size.Width*size.Height > maxPixels {
		return Photo{}, fmt.Errorf("the photo has %d x %d pixels; at most %d million are kept: make it smaller", size.Width, size.Height, maxPixels/1_000_000)
	}
	strip := strippedJPEG
	if format == "png" {
		strip = strippedPNG
	}
	data, err := strip(file)
	if err != nil {
		return Photo{}, fmt.Errorf("the photo is damaged (%w): take it again", err)
	}
	return Photo{"image/" + format, data}, nil
}
