package light

import (
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// usualUpright is the light on an upright face over that on a flat meter, where
// nobody measured it: often half to 0.7 (common practice, no published source).
const usualUpright = 0.6

// upright returns the share to reckon with.
func upright(l arena.Light) float64 { return l.Upright.Or(usualUpright) }

// surveyOf returns an arena's readings as points of the flat meter's light or of
// the light on upright faces. A reading taken the other way is converted by the
// share, but for the flat light only where no meter looked up, and for faces not
// where one stood upright.
func surveyOf(l arena.Light, faces bool) []Point {
	k := upright(l)
	has := func(up bool) bool {
		return slices.ContainsFunc(l.Readings, func(r arena.Reading) bool { return r.Facing.Upright() == up })
	}
	var points []Point
	for _, r := range l.Readings {
		p := Point{At: r.At, Lux: r.Lux}
		switch {
		case r.Facing.Upright() == faces:
		case faces && stoodUpright(l, r):
			continue
		case faces:
			p.Lux *= unit.Illuminance(k)
		case has(false):
			continue
		default:
			p.Lux /= unit.Illuminance(k)
		}
		points = append(points, p)
	}
	return points
}

// stoodUpright reports whether some upright reading was taken where r was.
func stoodUpright(l arena.Light, r arena.Reading) bool {
	return slices.ContainsFunc(l.Readings, func(o arena.Reading) bool {
		return o.Facing.Upright() && o.At.Sub(r.At).Len() < flat
	})
}

// SurveyOfFaces returns an arena's readings as points of the light on upright faces.
func SurveyOfFaces(l arena.Light) []Point { return surveyOf(l, true) }

// facesOver returns the median light on upright faces by zone: of the readings
// taken upright, or a share of the flat light.
func facesOver(a arena.Arena, uniform bool, zones []Zone, lit map[string]ZoneLight) (map[string]unit.Illuminance, error) {
	out := map[string]unit.Illuminance{}
	for id, zl := range lit {
		out[id] = zl.Median * unit.Illuminance(upright(a.Light))
	}
	if n, _ := uprights(a.Light); uniform || n == 0 {
		return out, nil
	}
	field, err := NewField(surveyOf(a.Light, true))
	if err != nil {
		return nil, err
	}
	for _, z := range zones {
		if zl, ok := field.Over(a.Rink, z); ok {
			out[z.ID] = zl.Median
		}
	}
	return out, nil
}

// uprights counts the readings taken upright, and all.
func uprights(l arena.Light) (n, all int) {
	for _, r := range l.Readings {
		if r.Facing.Upright() {
			n++
		}
	}
	return n, len(l.Readings)
}

// FaceNote says what the light on faces rests on where it is the survey's.
func FaceNote(a arena.Arena) say.Sentence { return faceNote(a, false) }

func faceNote(a arena.Arena, uniform bool) say.Sentence {
	n, all := uprights(a.Light)
	share := math.Round(100 * upright(a.Light))
	if uniform || n == 0 {
		from := "common practice, no published source: often half to 0.7; light.upright-share of the arena file sets it"
		if !a.Light.Upright.IsZero() {
			from = "light.upright-share of the arena file"
		}
		return say.Make("faces are upright: they are taken to get %.0f %% of a flat meter's light (%s); measure upright to know", share, from)
	}
	return say.Make("faces are upright: their light is of %d readings taken upright, of %d; elsewhere %.0f %% of a flat meter's light", n, all, share)
}
