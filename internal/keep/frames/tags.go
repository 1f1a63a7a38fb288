package frames

import (
	"cmp"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"time"

	"github.com/bep/imagemeta"

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/unit"
)

// tags are the tags of one picture that say how it was taken, by their Exif names (CIPA
// DC-008) as the library writes them.
type tags map[string]any

// The tags that are read.
const (
	tagTaken, tagOffset, tagShutter, tagStop = "DateTimeOriginal", "OffsetTimeOriginal", "ExposureTime", "FNumber"
	tagISO, tagIndex, tagSpeed               = "ISO", "RecommendedExposureIndex", "ISOSpeed"
	tagFocal, tagFocal35                     = "FocalLength", "FocalLengthIn35mmFormat"
	tagSerial, tagModel, tagLens             = "SerialNumber", "Model", "LensModel"
	tagTurned, tagAcross, tagDown            = "Orientation", "ExifImageWidth", "ExifImageHeight"
	tagRating                                = "Rating"
)

// wanted says which tags are read: those that the standard has in the picture's own part
// and in that of how it was taken, each there alone.
func wanted(t imagemeta.TagInfo) bool {
	switch t.Tag {
	case tagModel, tagTurned, tagRating, "ExifOffset", "ExifIFD":
		return t.Namespace == "IFD0"
	case tagTaken, tagOffset, tagShutter, tagStop, tagISO, tagIndex, tagSpeed, tagFocal, tagFocal35,
		tagSerial, tagLens, tagAcross, tagDown:
		return strings.HasPrefix(t.Namespace, "IFD0/ExifIFD")
	}
	return false
}

func (t tags) take(info imagemeta.TagInfo) error {
	if _, met := t[info.Tag]; !met {
		t[info.Tag] = info.Value
	}
	return nil
}

// frame says what the tags mean.
func (t tags) frame(path string) recap.Frame {
	f := recap.Frame{File: path, Model: t.text(tagModel), Lens: t.text(tagLens)}
	f.Body = cmp.Or(t.text(tagSerial), f.Model)
	f.Taken, f.Zoned = t.taken()
	f.Focal = positive(t, tagFocal, func(mm float64) unit.Length { return unit.Length(mm) * unit.Millimetre })
	f.Focal35 = positive(t, tagFocal35, func(mm float64) unit.Length { return unit.Length(mm) * unit.Millimetre })
	f.Shutter = positive(t, tagShutter, func(s float64) unit.Shutter { return unit.Shutter(s) })
	f.Stop = positive(t, tagStop, func(n float64) unit.Stop { return unit.Stop(n) })
	f.ISO = t.iso()
	if stars, ok := t.number(tagRating); ok && stars == math.Trunc(stars) && stars >= -1 && stars <= 5 {
		f.Rating = unit.Known(int(stars))
	}
	across, _ := t.number(tagAcross)
	down, _ := t.number(tagDown)
	if most := float64(math.MaxInt32); across >= 1 && down >= 1 && across < most && down < most {
		f.Pixels = [2]int{int(across), int(down)}
	}
	turned, _ := t.number(tagTurned)
	f.Portrait = turned >= 5 && turned <= 8 // Exif: 5 to 8 are turned by a quarter
	return f
}

// shortISO is what the two bytes of the ISO tag hold when it is larger: other tags say it then.
const shortISO = 65535

func (t tags) iso() unit.Maybe[unit.ISO] {
	iso := func(name string) unit.Maybe[unit.ISO] {
		return positive(t, name, func(v float64) unit.ISO { return unit.ISO(v) })
	}
	short := iso(tagISO)
	if short.Or(0) < shortISO {
		return short
	}
	for _, name := range [...]string{tagIndex, tagSpeed} {
		if v := iso(name); v.Or(0) >= shortISO {
			return v
		}
	}
	return short
}

// taken reads the camera's clock, and its zone where the picture tells it.
func (t tags) taken() (time.Time, bool) {
	const form = "2006:01:02 15:04:05"
	text := t.text(tagTaken)
	if at, err := time.Parse(form+"Z07:00", text+t.text(tagOffset)); err == nil {
		return at, true
	}
	at, err := time.Parse(form, text)
	if err != nil || at.Year() < 1990 { // a clock that was never set
		return time.Time{}, false
	}
	return at, false
}

func (t tags) text(name string) string {
	s, _ := t[name].(string)
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		if r < ' ' {
			return -1
		}
		return r
	}, s))
}

// number returns a tag as a finite number; of a list its first.
func (t tags) number(name string) (float64, bool) {
	v := math.NaN()
	switch n := t[name].(type) {
	case float64:
		v = n
	case int:
		v = float64(n)
	case int32:
		v = float64(n)
	case uint32:
		v = float64(n)
	case uint16:
		v = float64(n)
	case uint8:
		v = float64(n)
	case []uint16:
		if len(n) > 0 {
			v = float64(n[0])
		}
	case []any:
		if len(n) > 0 {
			return tags{name: n[0]}.number(name)
		}
	case string:
		if f, err := strconv.ParseFloat(strings.TrimSpace(n), 64); err == nil {
			v = f
		}
	case interface{ Float64() float64 }:
		v = n.Float64()
	}
	return v, !math.IsNaN(v) && !math.IsInf(v, 0)
}

func positive[T any](t tags, name string, as func(float64) T) unit.Maybe[T] {
	if v, ok := t.number(name); ok && v > 0 {
		return unit.Known(as(v))
	}
	return unit.Maybe[T]{}
}

// xmpNamespace is that of xmp:Rating (XMP specification, part 1).
const xmpNamespace = "http://ns.adobe.com/xap/1.0/"

// mostXMP is how many bytes of XMP are read.
const mostXMP = 1 << 20

// rating finds xmp:Rating in XMP, as an attribute or an element; XMP tells it over Exif.
func (t tags) rating(r io.Reader) error {
	defer func() { _, _ = io.Copy(io.Discard, r) }() // the library wants it read to its end; what comes there is not needed
	dec := xml.NewDecoder(io.LimitReader(r, mostXMP))
	dec.Strict = false
	for {
		token, err := dec.Token()
		if err != nil {
			if errors.Is(err, io.EOF) {
				err = nil
			}
			return err
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		for _, a := range start.Attr {
			if a.Name.Local == tagRating && a.Name.Space == xmpNamespace {
				t[tagRating] = a.Value
			}
		}
		if start.Name.Local == tagRating && start.Name.Space == xmpNamespace {
			if text, err := dec.Token(); err == nil {
				if s, ok := text.(xml.CharData); ok {
					t[tagRating] = string(s)
				}
			}
		}
	}
}
