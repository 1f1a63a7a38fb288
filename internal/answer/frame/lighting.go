package frame

import (
	"image/color"
	"math"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// What stands in where nobody surveyed the light, and in the stands (own judgement).
const (
	usualFaces  unit.Illuminance = 600  // on upright faces
	houseKelvin float64          = 3500 // of the lamps over the stands
)

// Lighting is the light that a picture is taken in, and how it is exposed.
type Lighting struct {
	Surveyed bool                 // else it is taken to be even, 600 lx on faces
	Colour   light.Colour         // of the lamps over the ice
	Faces    unit.Illuminance     // on upright faces where the camera is aimed
	Flat     unit.Illuminance     // on a flat meter there; 0 where no light was surveyed
	Guessed  bool                 // the aim lies outside the readings
	ISO      unit.Maybe[unit.ISO] // that faces there ask for; unknown where no light was surveyed or none passes
	Used     unit.ISO             // what the picture is taken at: that, or as asked, or the body's highest
	Short    float64              // stops by which faces there are too dark, 0 or more; below 0: too bright

	flat, faces *light.Field
	white       [3]float64 // of the lamps at the aim, to which the camera is balanced
}

// expose reads the survey where the shot is aimed and sets the ISO.
func (s *Shot) expose(q Request) {
	aim := s.Target().XY()
	l := Lighting{Colour: light.ColourOf(s.Arena.Light), Faces: usualFaces}
	l.white = white(l.Colour.At(aim))
	flat, errFlat := light.NewField(light.Survey(s.Arena.Light))
	faces, errFaces := light.NewField(light.SurveyOfFaces(s.Arena.Light))
	if l.Surveyed = errFlat == nil && errFaces == nil; l.Surveyed {
		l.flat, l.faces = flat, faces
		l.Faces, _ = faces.At(aim)
		l.Flat, l.Guessed = flat.At(aim)
	}
	pass := s.Transmission(0, 0)
	lit := max(darkFrame, pass)
	asked := s.isoFor(l.Faces, lit)
	if l.Surveyed && pass > 0 {
		l.ISO = unit.Known(s.isoFor(l.Faces, pass))
	}
	l.Used = asked
	if most := unit.ISO(q.Body.ISOMax); most > 0 {
		l.Used = min(l.Used, most)
	}
	l.Used = q.ISO.Or(l.Used)
	l.Short = math.Log2(float64(asked) / float64(l.Used))
	s.Lighting, s.exposure = l, 1/lit
}

// isoFor returns the ISO that light asks for of which hole and panel let a share pass, above 0.
func (s *Shot) isoFor(e unit.Illuminance, pass float64) unit.ISO {
	return optics.DefaultCalibration.ISO(unit.Illuminance(e.Lux()*pass), s.Shutter, s.Stop)
}

// onIce returns the light on the ice at a place over that for which white comes out white, by
// colour.
func (l *Lighting) onIce(at geom.Vec2) [3]float64 { return l.over(l.flat, l.Flat, at) }

// onFaces is onIce for upright faces.
func (l *Lighting) onFaces(at geom.Vec2) [3]float64 { return l.over(l.faces, l.Faces, at) }

func (l *Lighting) over(f *light.Field, there unit.Illuminance, at geom.Vec2) [3]float64 {
	k := 1.0
	if f != nil {
		e, _ := f.At(at)
		k = e.Lux() / there.Lux()
	}
	return l.cast(l.Colour.At(at), k)
}

// cast is so much light of a colour temperature as the camera's exposure and balance show it.
func (l *Lighting) cast(kelvin, k float64) [3]float64 {
	w := l.tint(kelvin)
	k *= math.Exp2(-l.Short)
	return [3]float64{k * w[0], k * w[1], k * w[2]}
}

// tint is light of a colour temperature as the camera's balance shows it.
func (l *Lighting) tint(kelvin float64) [3]float64 {
	w := white(kelvin)
	return [3]float64{w[0] / l.white[0], w[1] / l.white[1], w[2] / l.white[2]}
}

// relight puts shapes into some light; most paints come many times.
func relight(shapes []shape, by [3]float64) {
	seen := make(map[color.NRGBA]color.NRGBA)
	for i, s := range shapes {
		lit, known := seen[s.paint]
		if !known {
			lit = relit(s.paint, by)
			seen[s.paint] = lit
		}
		shapes[i].paint = lit
	}
}

// relit returns a paint in some light.
func relit(p color.NRGBA, by [3]float64) color.NRGBA {
	v := func(x uint8, k float64) uint8 { return uint8(255*valueOf(k*lightOf(float64(x)/255)) + 0.5) }
	return color.NRGBA{v(p.R, by[0]), v(p.G, by[1]), v(p.B, by[2]), p.A}
}
