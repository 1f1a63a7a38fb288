package recap

import (
	"cmp"
	"strings"
	"time"

	"example.org/rinkpane/internal/measure/unit"
)

// Frame is what a picture's own data say of how it was taken. What they do not say is
// unknown or empty.
type Frame struct {
	File string // its path, and of a raw file with its JPEG the one that says more
	// Taken is the camera's wall clock; its zone has a meaning only when Zoned.
	Taken    time.Time
	Zoned    bool
	Body     string // the body's serial number, else its model
	Model    string
	Lens     string
	Focal    unit.Maybe[unit.Length]
	Focal35  unit.Maybe[unit.Length] // that sees as much on 36 mm
	Shutter  unit.Maybe[unit.Shutter]
	Stop     unit.Maybe[unit.Stop]
	ISO      unit.Maybe[unit.ISO]
	Rating   unit.Maybe[int] // xmp:Rating: stars from 0 to 5, -1 rejected
	Pixels   [2]int          // across and down, as stored
	Portrait bool            // the picture is to be turned by a quarter
}

// Compare orders frames by when they were taken, then by name.
func (f Frame) Compare(g Frame) int {
	return cmp.Or(f.Taken.Compare(g.Taken), strings.Compare(f.File, g.File))
}

// Shown returns the pixels across and down as the picture is to be turned.
func (f Frame) Shown() [2]int {
	if f.Portrait {
		return [2]int{f.Pixels[1], f.Pixels[0]}
	}
	return f.Pixels
}

// Across returns the sensor's side across the picture as it is to be turned, from the two
// focal lengths, of which the wider one sees as much on 36 mm; false when they are not
// both known.
func (f Frame) Across() (unit.Length, bool) {
	focal, ok := f.Focal.Get()
	wide, told := f.Focal35.Get()
	if !ok || !told || wide <= 0 {
		return 0, false
	}
	long := fullFrame * focal / wide
	if p := f.Shown(); p[1] > p[0] {
		return long * unit.Length(p[0]) / unit.Length(p[1]), true
	}
	return long, true
}

// fullFrame is the longer side of the frame that 35 mm focal lengths are told for.
const fullFrame = 36 * unit.Millimetre

// base is a file's name without its folders, whatever system wrote its path.
func base(path string) string { return path[strings.LastIndexAny(path, `/\`)+1:] }

// end is the end of a file's name, from its last dot on.
func end(path string) string {
	if i := strings.LastIndex(base(path), "."); i > 0 {
		return base(path)[i:]
	}
	return ""
}
