package frame

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/arena"
)

// A mark is a scuff on the pane before the lens: a bar in the hole frame, metres.
type mark struct {
	middle, along geom.Vec2 // along is a unit vector
}

// Marks before the lens (own judgement): how much haze makes one more, how many at most, how far
// from the hole's middle, and what share of the light one takes.
const (
	hazePerMark = 0.025
	mostMarks   = 4
	marksWithin = 0.05 // metres, to each side, up and down
	markTakes   = 0.22
	markLong    = 0.05
	markThick   = 0.006
	pupilSpots  = 48 // places of the pupil that are asked
)

// marksOf are the scuffs of a worn pane where the lens looks through it. Which they are follows
// from the hole's station alone.
func marksOf(o arena.Opening, haze float64) []mark {
	out := make([]mark, min(mostMarks, int(haze/hazePerMark)))
	for i := range out {
		die := scramble(uint32(o.Hole.Station.Millimetres()), uint32(i), 11)
		sin, cos := math.Sincos(math.Pi * float64(die>>16%64) / 64)
		out[i] = mark{
			middle: geom.Vec2{X: marksWithin * (float64(die%256)/128 - 1), Y: marksWithin * (float64(die>>8%256)/128 - 1)},
			along:  geom.Vec2{X: cos, Y: sin},
		}
	}
	return out
}

// unmarked returns the share of the pupil's light from a place of the frame (-1..1, y up) that the
// scuffs leave. They stand so near the lens that they are no bars in the picture: each
// takes its light where rays to the pupil meet it.
func (s *Shot) unmarked(x, y float64) float64 {
	if len(s.marks) == 0 {
		return 1
	}
	u, p := s.ray(x, y), s.View.Pose
	right, up, d := Axes(p.Pan, p.Tilt)
	middle := p.Nose.Sub(d.Scale(s.Case.PupilDepth))
	const golden = 2.399963 // of a circle, radians: spots lie evenly (Vogel, 1979)
	lost := 0.0
	for k := range pupilSpots {
		sin, cos := math.Sincos(golden * float64(k))
		r := s.Case.Pupil / 2 * math.Sqrt((float64(k)+0.5)/pupilSpots)
		from := middle.Add(right.Scale(r * cos)).Add(up.Scale(r * sin))
		at := from.Add(u.Scale((-s.Case.Thick - from.Z) / u.Z))
		for _, m := range s.marks {
			off := geom.Vec2{X: at.X, Y: at.Y}.Sub(m.middle)
			if math.Abs(off.Dot(m.along)) < markLong/2 && math.Abs(off.Cross(m.along)) < markThick/2 {
				lost += markTakes / pupilSpots
			}
		}
	}
	return max(0, 1-lost)
}
