package frame

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/png"
	"io"

	"example.org/rinkpane/internal/answer/optics"
)

// pixelsPerMetre is the density that a picture's file asks to be printed at: 300 to the
// inch (common practice of picture desks, no published source).
const pixelsPerMetre = 11811

// afterHeader is where chunks may be put into a PNG: past its signature (8 bytes) and its
// first chunk, IHDR (25 bytes).
const afterHeader = 8 + 25

// WritePNG writes a picture of the shot as PNG at a level of packing, with its density
// (chunk pHYs) and how it was taken (chunks iTXt; PNG specification, ISO/IEC 15948).
func (s *Shot) WritePNG(out io.Writer, im image.Image, level png.CompressionLevel) error {
	var b bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: level}).Encode(&b, im); err != nil {
		return fmt.Errorf("packing the picture: %w", err)
	}
	density := binary.BigEndian.AppendUint32(nil, pixelsPerMetre)
	density = append(binary.BigEndian.AppendUint32(density, pixelsPerMetre), 1) // 1: per metre
	head := chunk(nil, "pHYs", density)
	for _, t := range [][2]string{{"Title", s.title()}, {"Description", s.Setting()}} {
		// keyword, not packed, no language, no translated keyword, text in UTF-8
		head = chunk(head, "iTXt", []byte(t[0]+"\x00\x00\x00\x00\x00"+t[1]))
	}
	whole := b.Bytes()
	for _, part := range [][]byte{whole[:afterHeader], head, whole[afterHeader:]} {
		if _, err := out.Write(part); err != nil {
			return fmt.Errorf("writing the picture: %w", err)
		}
	}
	return nil
}

// chunk appends a chunk of a PNG: length, kind, data, and the checksum of the last two.
func chunk(to []byte, kind string, data []byte) []byte {
	to = binary.BigEndian.AppendUint32(to, uint32(len(data)))
	from := len(to)
	to = append(append(to, kind...), data...)
	return binary.BigEndian.AppendUint32(to, crc32.ChecksumIEEE(to[from:]))
}

// Setting says how the picture is taken: focal length, stop, shutter time, ISO, where the eye
// is in the rink's frame (metres), pan, tilt, roll and focus distance.
func (s *Shot) Setting() string {
	e := s.Camera.Eye
	return fmt.Sprintf("%.0f mm, f/%.3g, %s, ISO %s; entrance pupil at x %.3f m, y %.3f m, z %.3f m from centre ice; pan %.2f deg, tilt %.2f deg, roll 0 deg from the pane's normal; focus at %.2f m",
		s.Focal.Millimetres(), float64(s.Stop), s.Shutter.Format(), optics.NearestISO(s.Lighting.Used).Text, e.X, e.Y, e.Z, s.Aim.Pan.Degrees(), s.Aim.Tilt.Degrees(), s.Focus.Metres())
}
