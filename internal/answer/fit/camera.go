package fit

import (
	"errors"
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Camera is the camera behind the lens, as far as the pane cares: a body whose
// front is a rectangle square to the axis, its middle on the axis. Its back is
// never nearer to the pane than its front, so that its depth does not count.
// Metres, as the camera is held.
//
//	rear face |   |
//	          |   |      .---.
//	          |   |     /     \ nose       as the lens turns, the body's front
//	          |   |    / axis  '           edge swings toward the rear face
//	          | .-|---'
//	         [body]
type Camera struct {
	Length        float64 // of the lens, from the nose to the body's front
	Width, Height float64 // of the body's front
}

func (k Camera) validate() error {
	for _, v := range []float64{k.Length, k.Width, k.Height} {
		if !(v > 0 && v <= maxLength) {
			return errors.New("camera: the lens's length and the body's width and height must be above 0 and at most 10 km")
		}
	}
	return nil
}

// foremost returns how near the rink face the nose's foremost point may stand
// at an aim, as Z in metres, before the camera touches the pane's rear face;
// above 0 where it would not touch even past the rink face. Of an unknown camera
// 0. Own derivation: the body's front corner that is nearest to the pane lies
//
//	-R sin q - L cos q + w/2 |right_z| + h/2 |up_z|
//
// before the foremost point, R the nose's radius, L the lens's length, q the
// angle between the axis and the normal, w x h the body's front; it must stay
// behind -t.
func (c *Case) foremost(a *aim) float64 {
	k, known := c.Camera.Get()
	if !known {
		return 0
	}
	swing := k.Width/2*math.Abs(a.right.Z) + k.Height/2*math.Abs(a.up.Z)
	return c.Nose/2*a.sin + k.Length*a.cos - swing - c.Thick
}

// cameraMargin returns the play, in metres along Z, between the camera and the
// rear face with the nose's foremost point at the rink face.
func (c *Case) cameraMargin(pan float64) float64 {
	a := aimAt(pan, 0)
	return c.foremost(&a)
}

// mouth returns how far past the rear face the nose's foremost point can stand,
// in metres, before the camera touches: below 0 the lens can only stand out of
// the hole, which no longer counts as usable. Of a camera held back it is the
// play behind that place.
func (c *Case) mouth(a *aim) float64 { return c.foremost(a) + c.Thick + c.Back.Or(0) }

// panCamera returns the camera's limit, unknown of an unknown camera.
func (c *Case) panCamera() unit.Maybe[unit.Angle] {
	if c.Camera.IsZero() {
		return unit.Maybe[unit.Angle]{}
	}
	return unbroken(c.cameraMargin)
}
