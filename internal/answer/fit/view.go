package fit

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// At returns the lens aimed at pan and tilt in its best pose: the one that
// makes the smallest T over the frame's four corners and its centre largest.
// Both angles must lie within +-89.9 deg.
func (c Case) At(pan, tilt unit.Angle) View {
	v := c.quadrant(math.Abs(pan.Radians()), math.Abs(tilt.Radians()))
	if pan < 0 {
		v.mirrorX()
	}
	if tilt < 0 {
		v.mirrorY()
	}
	return v
}

// quadrant is At for angles of at least 0. A pure tilt is a pan of the case
// turned on its side.
func (c *Case) quadrant(pan, tilt float64) View {
	if pan == 0 && tilt > 0 {
		turned := c.transposed()
		v := turned.quadrant(tilt, 0)
		v.Corners[upperLeft], v.Corners[lowerRight] = v.Corners[lowerRight], v.Corners[upperLeft]
		v.Pose.Nose.X, v.Pose.Nose.Y = v.Pose.Nose.Y, v.Pose.Nose.X
		v.Pose.Pan, v.Pose.Tilt = 0, tilt
		return v
	}
	var s stance
	c.newStance(&s, pan, tilt, true)
	return s.view(s.best(), pan, tilt)
}

// view reads the transmissions of a pose.
func (s *stance) view(p stand, pan, tilt float64) View {
	v := View{Pose: Pose{Nose: s.nose(p.at, p.zf), Pan: pan, Tilt: tilt}}
	v.Pose.Nose = v.Pose.Nose.Add(geom.Vec3{}) // no negative zeros
	pupil := s.pupil(p.at, p.zf)
	v.Centre, _ = s.rays[0].pass(&s.c, &s.aim, pupil)
	if s.level {
		v.Corners[lowerLeft], _ = s.rays[1].pass(&s.c, &s.aim, pupil)
		v.Corners[lowerRight], _ = s.rays[2].pass(&s.c, &s.aim, pupil)
		v.Corners[upperLeft], v.Corners[upperRight] = v.Corners[lowerLeft], v.Corners[lowerRight]
		return v
	}
	for i := range v.Corners {
		v.Corners[i], _ = s.rays[i+1].pass(&s.c, &s.aim, pupil)
	}
	return v
}

func (v *View) mirrorX() {
	c := &v.Corners
	c[lowerLeft], c[lowerRight] = c[lowerRight], c[lowerLeft]
	c[upperLeft], c[upperRight] = c[upperRight], c[upperLeft]
	v.Pose.Nose.X, v.Pose.Pan = 0-v.Pose.Nose.X, -v.Pose.Pan
}

func (v *View) mirrorY() {
	c := &v.Corners
	c[lowerLeft], c[upperLeft] = c[upperLeft], c[lowerLeft]
	c[lowerRight], c[upperRight] = c[upperRight], c[lowerRight]
	v.Pose.Nose.Y, v.Pose.Tilt = 0-v.Pose.Nose.Y, -v.Pose.Tilt
}

// WorstCorner returns the smallest transmission of the frame's corners, 0..1.
func (v View) WorstCorner() float64 {
	return min(v.Corners[0], v.Corners[1], v.Corners[2], v.Corners[3])
}

// Foremost returns the nose's foremost point, for a nose of this diameter; the
// nose's centre straight ahead. Hole frame, metres.
func (p Pose) Foremost(nose float64) geom.Vec3 {
	a := aimAt(p.Pan, p.Tilt)
	return p.Nose.Add(a.fore.Scale(nose / 2))
}
