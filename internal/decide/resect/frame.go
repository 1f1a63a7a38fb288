package resect

import "example.org/rinkpane/internal/measure/unit"

// Pin is a landmark marked in a frame: x to the right and y down from the frame's upper
// left corner, in pixels, the middle of the first pixel at 0.5, 0.5.
type Pin struct {
	Landmark string
	X, Y     float64 // px
}

// Frame is a picture with what is marked in it.
type Frame struct {
	Name   string
	Pixels [2]int      // across, down, as the marks count them
	Sensor unit.Length // the sensor's side across the picture
	Focal  Focal
	Marks  []Pin
}

// Focal is what is known of a frame's focal length. The zero value is nothing.
type Focal struct {
	length unit.Length
	spread float64 // of its logarithm; 0: exact
}

// focalSpread is how well a frame tells its focal length, a standard deviation's share:
// makers round it, and a lens breathes as it is focused (own choice, no published source).
const focalSpread = 0.03

// FocalExactly is a focal length that the user answers for.
func FocalExactly(l unit.Length) Focal { return Focal{length: l} }

// FocalAbout is a focal length that a frame tells.
func FocalAbout(l unit.Length) Focal { return Focal{l, focalSpread} }

// across is how many pixels a millimetre of the sensor holds, times one metre: pixels
// for each metre on the sensor.
func (f Frame) across() float64 { return float64(f.Pixels[0]) / f.Sensor.Metres() }

// middle is the principal point, in pixels.
func (f Frame) middle() (x, y float64) { return float64(f.Pixels[0]) / 2, float64(f.Pixels[1]) / 2 }

// mirrored is the frame as if it had been turned over, left for right or top for bottom.
func (f Frame) mirrored(leftRight bool) Frame {
	marks := make([]Pin, len(f.Marks))
	for i, m := range f.Marks {
		if leftRight {
			m.X = float64(f.Pixels[0]) - m.X
		} else {
			m.Y = float64(f.Pixels[1]) - m.Y
		}
		marks[i] = m
	}
	f.Marks = marks
	return f
}
