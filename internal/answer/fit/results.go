package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// Pose is where the lens stands: the hole frame, metres and radians.
type Pose struct {
	Nose      geom.Vec3 // centre of the nose disc
	Pan, Tilt float64   // of the axis: pan toward +X first, then tilt up
}

// Limits are the ends of the unbroken ranges from straight ahead.
type Limits struct {
	Fits      bool // the nose can enter the hole
	Pan, Tilt AxisLimits
}

// AxisLimits are the limits about one axis, the other angle held at zero. A
// limit is unknown when its mark already fails straight ahead, and 89.9 deg
// when it never fails. A known camera ends Clear and Usable where the nose could
// only stand out of the hole.
type AxisLimits struct {
	Body   unit.Maybe[unit.Angle] // foremost point at the rink face, nothing cut
	Camera unit.Maybe[unit.Angle] // foremost point at the rink face, the camera behind the rear face; unknown of an unknown camera
	Clear  unit.Maybe[unit.Angle] // T >= 0.95 at every frame corner
	Usable unit.Maybe[unit.Angle] // T >= 0.5 at the frame centre, pose for the centre alone
}

// Loss is the loss table: rows of pan at level tilt, and of tilt at zero pan.
type Loss struct {
	Pan, Tilt []LossRow
}

// LossRow is one row of the loss table, from the one pose that is best there.
type LossRow struct {
	Angle  unit.Angle
	Centre float64 // transmission at the frame's centre, 0..1
	Corner float64 // at the worst frame corner, 0..1
	Pose   Pose
}

// View is a lens aimed somewhere, in its best pose.
type View struct {
	Pose    Pose
	Centre  float64    // transmission at the frame's centre, 0..1
	Corners [4]float64 // the same at lower left, upper left, lower right, upper right as seen from the camera, 0..1
}

// Shift returns how far the nose's centre stands beside the hole's centre, in
// metres along the pane.
func (p Pose) Shift() float64 { return p.Nose.XY().Len() }

// ArmsComfort is the shift beside the hole above which a hand-held camera is a
// strain, in metres (the house's own judgement; the contract states 150 mm).
const ArmsComfort = 0.150

// Stops returns the loss of a transmission in stops, -log2 T, and false when
// no light passes.
func Stops(t float64) (float64, bool) {
	if t <= 0 {
		return 0, false
	}
	return max(0, -math.Log2(t)), true
}
