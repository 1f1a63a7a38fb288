package frames

import (
	"cmp"
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
	tagSecond                                = "SubSecTimeOriginal"
	tagRating                                = "Rating"
)

// The directories that the standard has them in, as the library names them.
const (
	directoryOwn   = "IFD0"
	directoryTaken = "IFD0/ExifIFD"
)

// wanted says which tags are read: those that the standard has in the picture's own part
// and in that of how it was taken, each there alone.
func wanted(t imagemeta.TagInfo) bool {
	switch t.Tag {
	case tagModel, tagTurned, tagRating, "ExifOffset", "ExifIFD":
		return t.Namespace == directoryOwn
	case tagTaken, tagSecond, tagOffset, tagShutter, tagStop, tagISO, tagIndex, tagSpeed, tagFocal, tagFocal35,
		tagSerial, tagLens, tagAcross, tagDown:
		return strings.HasPrefix(t.Namespace, directoryTaken)
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
	f.Portrait = turned >= firstTurned && turned <= 8
	return f
}

// firstTurned is the first of Exif's orientations that are turned by a quarter: 5 to 8.
const firstTurned = 5

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
func (t tags) taken() (at time.Time, zoned bool) {
	text := t.text(tagTaken)
	if digits := t.text(tagSecond); digits != "" {
		text += "." + digits
	}
	for _, form := range [...]string{"2006:01:02 15:04:05", "2006-01-02T15:04:05"} { // of Exif, of XMP
		for _, zone := range [...]string{t.text(tagOffset), ""} {
			at, err := time.Parse(form+"Z07:00", text+zone)
			if zoned = err == nil; !zoned {
				at, err = time.Parse(form, text)
			}
			if err == nil && at.Year() >= clocksFrom {
				return at, zoned
			}
		}
	}
	return time.Time{}, false
}

// clocksFrom is the year before which a camera's clock was never set.
const clocksFrom = 1990

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
		v = ratio(n)
	case interface{ Float64() float64 }:
		v = n.Float64()
	}
	return v, !math.IsNaN(v) && !math.IsInf(v, 0)
}

// ratio reads a number or, as XMP has them, two with a stroke between; NaN is neither.
func ratio(s string) float64 {
	over, under, two := strings.Cut(strings.TrimSpace(s), "/")
	v, err := strconv.ParseFloat(over, 64)
	if err == nil && two {
		var by float64
		by, err = strconv.ParseFloat(under, 64)
		v /= by
	}
	if err != nil {
		return math.NaN()
	}
	return v
}

func positive[T any](t tags, name string, as func(float64) T) unit.Maybe[T] {
	if v, ok := t.number(name); ok && v > 0 {
		return unit.Known(as(v))
	}
	return unit.Maybe[T]{}
}
