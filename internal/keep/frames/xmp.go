package frames

import (
	"encoding/xml"
	"errors"
	"io"
	"maps"
	"os"
	"strings"
)

// mostXMP is how many bytes of XMP are read.
const mostXMP = 1 << 20

// The namespaces of XMP whose properties are read (XMP specification, parts 1 and 2; CIPA
// DC-010).
const (
	spaceXMP    = "http://ns.adobe.com/xap/1.0/"
	spaceExif   = "http://ns.adobe.com/exif/1.0/"
	spaceExifEX = "http://cipa.jp/exif/1.0/"
	spaceAux    = "http://ns.adobe.com/exif/1.0/aux/"
	spaceTIFF   = "http://ns.adobe.com/tiff/1.0/"
)

// ratings is the property that is taken from any XMP, by its tag: it is set after a picture
// was taken.
func ratings() map[xml.Name]string {
	return map[xml.Name]string{{Space: spaceXMP, Local: "Rating"}: tagRating}
}

// sidecarTags are the properties that are taken from a sidecar, by their tags.
func sidecarTags() map[xml.Name]string {
	out := ratings()
	maps.Copy(out, map[xml.Name]string{
		{Space: spaceExif, Local: "DateTimeOriginal"}: tagTaken, {Space: spaceExif, Local: "ExposureTime"}: tagShutter, {Space: spaceExif, Local: "FNumber"}: tagStop,
		{Space: spaceExif, Local: "ISOSpeedRatings"}: tagISO, {Space: spaceExifEX, Local: "PhotographicSensitivity"}: tagISO,
		{Space: spaceExif, Local: "FocalLength"}: tagFocal, {Space: spaceExif, Local: "FocalLengthIn35mmFilm"}: tagFocal35,
		{Space: spaceExif, Local: "PixelXDimension"}: tagAcross, {Space: spaceExif, Local: "PixelYDimension"}: tagDown,
		{Space: spaceAux, Local: "SerialNumber"}: tagSerial, {Space: spaceExifEX, Local: "BodySerialNumber"}: tagSerial,
		{Space: spaceAux, Local: "Lens"}: tagLens, {Space: spaceExifEX, Local: "LensModel"}: tagLens,
		{Space: spaceTIFF, Local: "Model"}: tagModel, {Space: spaceTIFF, Local: "Orientation"}: tagTurned,
	})
	return out
}

// xmp takes properties from XMP, attributes or elements, of a list its first.
func (t tags) xmp(r io.Reader, properties map[xml.Name]string) error {
	defer func() { _, _ = io.Copy(io.Discard, r) }() // the library wants it read to its end; what comes there is not needed
	dec := xml.NewDecoder(io.LimitReader(r, mostXMP))
	dec.Strict = false
	within := "" // the tag of the property whose text is awaited
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		switch x := token.(type) {
		case xml.StartElement:
			for _, a := range x.Attr {
				if tag, ok := properties[a.Name]; ok {
					t[tag] = a.Value
				}
			}
			if tag, ok := properties[x.Name]; ok {
				within = tag
			}
		case xml.CharData:
			if text := strings.TrimSpace(string(x)); within != "" && text != "" {
				t[within], within = text, ""
			}
		case xml.EndElement:
			if _, ok := properties[x.Name]; ok {
				within = ""
			}
		}
	}
}

// sidecar returns what an XMP file says.
func sidecar(path string) (tags, error) {
	t := tags{}
	f, err := os.Open(path)
	if err != nil {
		return t, err
	}
	defer f.Close()
	return t, t.xmp(f, sidecarTags())
}
