package fit

import (
	"errors"
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
)

// Pivot is how the camera is held.
type Pivot int

// The two ways. Free is the zero value.
const (
	Free   Pivot = iota // hand-held: shift and depth are free
	Centre              // fixed: the axis goes through the hole's centre on the rink face, depth free
)

// ParsePivot reads "free" or "centre".
func ParsePivot(s string) (Pivot, error) {
	switch s {
	case "free":
		return Free, nil
	case "centre":
		return Centre, nil
	}
	return Free, fmt.Errorf("pivot %q: write free or centre", s)
}

// String returns the word of the flag and the file.
func (p Pivot) String() string {
	if p == Centre {
		return "centre"
	}
	return "free"
}

// Case is one lens at one focal length and stop in one hole: plain float64 in
// metres. Its methods expect a case that passed [Case.Validate]; the
// constructors return only such.
type Case struct {
	Width, Height float64 // of the hole
	Corner        float64 // corner radius of the hole's outline, 0 .. half the smaller side
	Thick         float64 // of the pane

	Nose       float64 // outer diameter of the nose, hood included when it is on
	Pupil      float64 // diameter of the entrance pupil, at most Nose
	PupilDepth float64 // of the pupil behind the nose along the axis, at least 0

	TanX, TanY float64 // tangents of half the frame's width and height as held

	Camera unit.Maybe[Camera] // behind the lens; unknown: it never meets the pane

	Back  unit.Maybe[float64] // foremost point this far behind the pane's rear face; unknown: depth free
	Pivot Pivot
}

// maxLength is the longest length that a case may hold, in metres (contract:
// lengths above 10 km are refused everywhere).
const maxLength = 10e3

// maxTan bounds the frame's half tangents: tan 89.9 deg, the end of every range search.
const maxTan = 573

// Validate returns what is wrong with the case, if anything.
func (c Case) Validate() error {
	lengths := []struct {
		name string
		v    float64
	}{
		{"hole width", c.Width}, {"hole height", c.Height}, {"pane thickness", c.Thick},
		{"nose diameter", c.Nose}, {"pupil diameter", c.Pupil},
	}
	for _, l := range lengths {
		if !(l.v > 0 && l.v <= maxLength) {
			return fmt.Errorf("%s %g m: must be above 0 and at most 10 km", l.name, l.v)
		}
	}
	if half := min(c.Width, c.Height) / 2; !(c.Corner >= 0 && c.Corner <= half) {
		return fmt.Errorf("hole corner radius %g mm: must lie between 0 and half the smaller side, %g mm", c.Corner*1e3, half*1e3)
	}
	if !(c.PupilDepth >= 0 && c.PupilDepth <= maxLength) {
		return fmt.Errorf("pupil depth %g mm: must be at least 0, behind the nose", c.PupilDepth*1e3)
	}
	if c.Pupil > c.Nose {
		return fmt.Errorf("pupil %.4g mm is wider than the nose %.4g mm: stop down or check the nose's diameter", c.Pupil*1e3, c.Nose*1e3)
	}
	if !(c.TanX > 0 && c.TanX <= maxTan && c.TanY > 0 && c.TanY <= maxTan) {
		return errors.New("frame: the sensor's width and height must be above 0 and not absurdly large for the focal length")
	}
	if k, ok := c.Camera.Get(); ok {
		if err := k.validate(); err != nil {
			return err
		}
	}
	if b, ok := c.Back.Get(); ok && !(b >= 0 && b <= maxLength) {
		return fmt.Errorf("back %g mm: must be at least 0, behind the pane's rear face", b*1e3)
	}
	return nil
}

// Fits reports whether the nose can enter the hole: D <= the smaller of W and
// H. A corner radius of at most half the smaller side never bars a disc.
func (c Case) Fits() bool { return c.Nose <= min(c.Width, c.Height) }

// transposed swaps the roles of X and Y: tilting in c is panning in the
// transposed case.
func (c Case) transposed() Case {
	c.Width, c.Height = c.Height, c.Width
	return c.turned()
}

// turned turns the camera about its axis by a quarter: upright instead of level.
func (c Case) turned() Case {
	c.TanX, c.TanY = c.TanY, c.TanX
	if k, ok := c.Camera.Get(); ok {
		c.Camera = unit.Known(Camera{k.Length, k.Height, k.Width})
	}
	return c
}
