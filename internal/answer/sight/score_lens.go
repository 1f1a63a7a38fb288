package sight

import (
	"errors"
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// zoomRatio is the largest ratio between neighbouring focal lengths at which a
// zoom is tried. A subject is of full size over a range of 1/ShareFull (about
// 2.9), so a zoom always has a setting inside it when it can reach it at all.
const zoomRatio = 1.6

// lensSetting is one lens at one focal length, wide open.
type lensSetting struct {
	lensUse
	minFocus float64 // metres
	// landscape and portrait are focal length over the frame's height as held:
	// times the subject's height over its distance gives its share of the frame.
	landscape, portrait float64
}

// settingsOf lists the settings of the lenses that are used at the arena.
func settingsOf(a arena.Arena, k kit.Kit) ([]lensSetting, error) {
	if len(k.Bodies) == 0 {
		return nil, errors.New("kit: a score needs at least one body")
	}
	lenses, err := k.InUse(a.Lenses)
	if err != nil {
		return nil, err
	}
	var out []lensSetting
	for _, l := range lenses {
		body := k.BodyOf(l)
		sensor := body.Sensor
		for _, f := range focals(l) {
			out = append(out, lensSetting{
				lensUse: lensUse{l, body, fit.Setting{Focal: f, Stop: l.WidestAt(f)}}, minFocus: l.MinFocus.Metres(),
				landscape: f.Metres() / sensor.H.Metres(), portrait: f.Metres() / sensor.W.Metres(),
			})
		}
	}
	if len(out) == 0 {
		return nil, errNoLens
	}
	return out, nil
}

// focals returns the focal lengths at which a lens is tried: both ends and
// enough between.
func focals(l kit.Lens) []unit.Length {
	ratio := float64(l.FocalMax / l.FocalMin)
	const rounding = 1e-9
	n := int(math.Ceil(math.Log(ratio)/math.Log(zoomRatio) - rounding))
	out := []unit.Length{l.FocalMin}
	for i := 1; i <= n; i++ {
		out = append(out, l.FocalMin*unit.Length(math.Pow(ratio, float64(i)/float64(n))))
	}
	return out
}

// size returns the best size factor among the lens settings that can be aimed
// along u (hole frame, any length) for a subject of a height at a distance,
// both in metres; 0 when none can.
func (b *block) size(a *traces, u geom.Vec3, height, distance float64) float64 {
	best := 0.0
	ratio := height / distance
	for k := range b.settings {
		l := &b.settings[k]
		if distance < l.minFocus {
			continue
		}
		f := max(b.fills(ratio*l.landscape), b.fills(ratio*l.portrait))
		if f > best && a.outlines[k].ContainsDirection(u) {
			if best = f; best == 1 {
				break
			}
		}
	}
	return best
}

// fills turns the subject's share of the frame into a factor: nothing up to
// ShareLeast, rising to 1 at ShareFull, 1 up to the full frame, then 1/share,
// the part of the subject that is left in it.
func (b *block) fills(share float64) float64 {
	switch {
	case share <= b.judge.ShareLeast:
		return 0
	case share < b.judge.ShareFull:
		return (share - b.judge.ShareLeast) * b.perShare
	case share <= 1:
		return 1
	}
	return 1 / share
}
