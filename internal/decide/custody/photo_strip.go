package custody

import (
	"bytes"
	"encoding/binary"
	"errors"
	"slices"
)

var errCutShort = errors.New("it ends too early")

// Markers of JPEG (ITU-T T.81, table B.1).
const (
	jpegStart   = 0xd8
	jpegEnd     = 0xd9
	jpegScan    = 0xda
	jpegApp0    = 0xe0
	jpegApp1    = 0xe1 // Exif, XMP
	jpegApp14   = 0xee // says which colours the numbers are
	jpegApp15   = 0xef
	jpegComment = 0xfe
)

// strippedJPEG copies a JPEG without its application segments and comments, but for the
// one that says the colours, and which side is up; what follows its end is left out.
func strippedJPEG(file []byte) ([]byte, error) {
	out := []byte{0xff, jpegStart}
	turned := false
	for at := 2; ; {
		if at+4 > len(file) {
			if at+2 == len(file) && file[at] == 0xff && file[at+1] == jpegEnd {
				return append(out, 0xff, jpegEnd), nil
			}
			return nil, errCutShort
		}
		if file[at] != 0xff {
			return nil, errors.New("a marker is missing")
		}
		marker := file[at+1]
		switch {
		case marker == 0xff: // fill
			at++
			continue
		case marker == jpegEnd:
			return append(out, 0xff, jpegEnd), nil
		}
		size := int(binary.BigEndian.Uint16(file[at+2:]))
		end := at + 2 + size
		if size < 2 || end > len(file) {
			return nil, errCutShort
		}
		switch segment := file[at:end]; {
		case marker == jpegApp1 && !turned:
			if o := orientation(segment[4:]); o > 1 {
				out, turned = append(out, exifOf(o)...), true
			}
		case marker == jpegComment || marker >= jpegApp0 && marker <= jpegApp15 && marker != jpegApp14:
		case marker == jpegScan:
			end += scanLength(file[end:])
			out = append(out, file[at:end]...)
		default:
			out = append(out, segment...)
		}
		at = end
	}
}

// scanLength returns how far the coded picture goes: to the next marker that is
// neither a stuffed byte nor a restart.
func scanLength(data []byte) int {
	for i := 0; i+1 < len(data); i++ {
		if data[i] == 0xff && data[i+1] != 0 && (data[i+1] < 0xd0 || data[i+1] > 0xd7) {
			return i
		}
	}
	return len(data)
}

const exifHead = "Exif\x00\x00"

// orientationTag is the tag of the TIFF field that says which side is up (Exif 2.3, 4.6.4).
const orientationTag = 0x0112

// orientation reads which side is up out of an Exif segment: 1 to 8, 0 when it does not say.
func orientation(exif []byte) byte {
	tiff, is := bytes.CutPrefix(exif, []byte(exifHead))
	if !is || len(tiff) < 8 {
		return 0
	}
	var order binary.ByteOrder = binary.LittleEndian
	if tiff[0] == 'M' {
		order = binary.BigEndian
	}
	at := int(order.Uint32(tiff[4:]))
	if at < 8 || at+2 > len(tiff) {
		return 0
	}
	for field := range int(order.Uint16(tiff[at:])) {
		f := at + 2 + 12*field
		if f+12 > len(tiff) {
			return 0
		}
		if v := order.Uint16(tiff[f+8:]); order.Uint16(tiff[f:]) == orientationTag && v <= 8 {
			return byte(v)
		}
	}
	return 0
}

// exifOf makes a segment that says which side is up and nothing else.
func exifOf(orientation byte) []byte {
	body := slices.Concat([]byte(exifHead), []byte("MM\x00\x2a\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00"),
		[]byte{orientation}, make([]byte, 2+4))
	head := []byte{0xff, jpegApp1, 0, 0}
	binary.BigEndian.PutUint16(head[2:], uint16(len(body)+2))
	return append(head, body...)
}

// strippedPNG copies the chunks of a PNG that make the picture (PNG, third edition, 11).
func strippedPNG(file []byte) ([]byte, error) {
	const signature, frame = 8, 12 // a chunk's length, type and checksum
	out := slices.Clone(file[:signature])
	for at := signature; at+frame <= len(file); {
		size := int(binary.BigEndian.Uint32(file[at:]))
		end := at + frame + size
		if size > len(file) || end > len(file) {
			return nil, errCutShort
		}
		switch kind := string(file[at+4 : at+8]); kind {
		case "IHDR", "PLTE", "tRNS", "IDAT", "gAMA", "sRGB":
			out = append(out, file[at:end]...)
		case "IEND":
			return append(out, file[at:end]...), nil
		}
		at = end
	}
	return nil, errCutShort
}
