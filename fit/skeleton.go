package fit

import (
	"example.org/rinkpane/geom"
	"example.org/rinkpane/unit"
)

// Transmission returns T(u), the share of the pupil that sees out of the hole
// toward u from a pose.
func (c Case) Transmission(p Pose, u geom.Vec3) float64 { return 0 }

// Limits returns how far the lens can pan and tilt.
func (c Case) Limits() Limits { return Limits{Fits: c.Fits()} }

// Loss returns the loss tables with rows at most step apart.
func (c Case) Loss(step unit.Angle) Loss { return Loss{} }

// At returns the lens aimed at pan and tilt in its best pose.
func (c Case) At(pan, tilt unit.Angle) View { return View{} }

// Trace returns the outline of all aims with T >= 0.5 at the frame's centre,
// the pose chosen for the centre alone.
func (c Case) Trace() Outline { return Outline{} }

// Outline is the traced limit of usable aims.
type Outline struct{}

// Contains reports whether an aim lies inside the outline.
func (o *Outline) Contains(pan, tilt unit.Angle) bool { return false }

// ContainsDirection is Contains for a direction in the hole frame of any length.
func (o *Outline) ContainsDirection(u geom.Vec3) bool { return false }
