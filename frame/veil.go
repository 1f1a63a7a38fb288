package frame

import (
	"image"
	"math"

	"example.org/rinkpane/fit"
	"example.org/rinkpane/geom"
	"example.org/rinkpane/unit"
)

// A ledge is the front edge of the boards' top, level and parallel to the
// pane: y and z in the hole frame, metres.
type ledge struct {
	there bool
	y, z  float64
}

// free returns the share of the pupil that sees over the edge toward u (hole
// frame). The edge cuts the pupil's disc along a chord; with s the chord's
// distance from the centre over the radius, positive when the centre sees over,
// the share is 1/2 + (asin s + s sqrt(1-s^2)) / pi (segment of a circle).
func (l ledge) free(c fit.Case, p fit.Pose, u geom.Vec3) float64 {
	if !l.there || u.Z <= 0 {
		return 1
	}
	_, _, d := axes(p.Pan, p.Tilt)
	centre := p.Nose.Sub(d.Scale(c.PupilDepth))
	slope := u.Y / u.Z
	over := centre.Y + (l.z-centre.Z)*slope - l.y
	across := geom.Vec3{Y: 1, Z: -slope}
	rate := math.Sqrt(max(0, across.Dot(across)-across.Dot(d)*across.Dot(d)))
	if rate == 0 || c.Pupil == 0 {
		return step(over)
	}
	s := max(-1, min(1, over/(rate*c.Pupil/2)))
	return 0.5 + (math.Asin(s)+s*math.Sqrt(1-s*s))/math.Pi
}

func step(x float64) float64 {
	if x > 0 {
		return 1
	}
	return 0
}

// Transmission returns the share of light that the hole, and the panel where
// there is one, let through toward a place of the frame (-1..1, y up).
func (s *Shot) Transmission(x, y float64) float64 {
	u := s.ray(x, y)
	t := s.Case.Transmission(s.View.Pose, u)
	if s.panel == nil {
		return t
	}
	pass, err := s.panel.Pass(unit.Angle(math.Acos(max(0, min(1, u.Z/u.Len())))))
	if err != nil {
		return 0 // edge on: nothing passes
	}
	return t * pass.Transmission
}

// LedgeFree returns the share of the pupil that sees over the boards' ledge
// toward a place of the frame (-1..1, y up).
func (s *Shot) LedgeFree(x, y float64) float64 {
	return s.ledge.free(s.Case, s.View.Pose, s.ray(x, y))
}

// ray is the direction of a place of the frame in the hole frame.
func (s *Shot) ray(x, y float64) geom.Vec3 {
	r, u, f := axes(s.View.Pose.Pan, s.View.Pose.Tilt)
	return f.Add(r.Scale(x * s.Case.TanX)).Add(u.Scale(y * s.Case.TanY))
}

// veil is what hole, panel and ledge do to the picture, on a grid of nodes
// over the frame between which it is interpolated.
type veil struct {
	gain  [veilDown + 1][veilAcross + 1]float32 // factor on display values
	ledge [veilDown + 1][veilAcross + 1]float32 // share covered by the ledge
}

// The veil's grid: its functions are smooth over a cell of a fortieth of the frame.
const (
	veilAcross = 48
	veilDown   = 40
)

// displayGamma turns a share of light into a factor on display values (sRGB,
// IEC 61966-2-1, in its plain 2.2 power form).
const displayGamma = 2.2

func (s *Shot) veil() *veil {
	v := new(veil)
	for j := range v.gain {
		y := 1 - 2*float64(j)/veilDown
		for i := range v.gain[j] {
			x := 2*float64(i)/veilAcross - 1
			v.gain[j][i] = float32(math.Pow(s.Transmission(x, y), 1/displayGamma))
			v.ledge[j][i] = float32(1 - s.LedgeFree(x, y))
		}
	}
	return v
}

// ledgePaint is the boards' top out of focus and in the dark.
var ledgePaint = [3]float32{74, 70, 66}

// drop lays the veil over a band of a picture that is w by h pixels.
func (v *veil) drop(band *image.RGBA, w, h int) {
	var gain, ledge [veilAcross + 1]float32
	for y := band.Rect.Min.Y; y < band.Rect.Max.Y; y++ {
		fj := (float32(y) + 0.5) / float32(h) * veilDown
		j := min(int(fj), veilDown-1)
		t := fj - float32(j)
		for i := range gain {
			gain[i] = v.gain[j][i] + t*(v.gain[j+1][i]-v.gain[j][i])
			ledge[i] = v.ledge[j][i] + t*(v.ledge[j+1][i]-v.ledge[j][i])
		}
		row := band.Pix[(y-band.Rect.Min.Y)*band.Stride:]
		for x := range w {
			fi := (float32(x) + 0.5) / float32(w) * veilAcross
			i := min(int(fi), veilAcross-1)
			u := fi - float32(i)
			g := gain[i] + u*(gain[i+1]-gain[i])
			l := ledge[i] + u*(ledge[i+1]-ledge[i])
			for c := range 3 {
				p := float32(row[4*x+c])
				row[4*x+c] = uint8(g*(p+l*(ledgePaint[c]-p)) + 0.5)
			}
		}
	}
}
