package recap

import (
	"fmt"
	"math"
	"math/rand/v2"
	"time"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// What invented frames are like (own choice): pictures a minute, frames of each, the share
// that is kept.
const (
	inventedRate  = 0.9
	inventedBurst = 4
	inventedKept  = 0.25
	inventedTaste = 0.15  // standard deviation of the logarithm of the light that is exposed for
	unsurveyed    = 800.0 // lx
)

// InventedAhead is how far the clocks of invented bodies are ahead.
const InventedAhead = 95 * time.Second

// InventedBody begins the names of invented bodies; who holds one ends it.
const InventedBody = "invented-"

// Invented returns readings of frames that nobody took, for a page to be tried with: of
// each seat of an evening in its periods, at subjects of the model's moments, exposed for
// the arena's light, with the lenses of the kit. The same seed gives the same frames.
func Invented(e Evening, a arena.Arena, k kit.Kit, seed uint64) Readings {
	r := rand.New(rand.NewPCG(seed, 0))
	var out Readings
	for _, s := range e.Seats {
		body := Frame{Body: InventedBody + s.Who, Model: "Invented body", Pixels: [2]int{6000, 4000}}
		for _, stage := range e.Stages {
			if stage.Period > 0 && s.works(stage.Period) {
				out.Frames = append(out.Frames, inventedOf(r, body, s.Hole, stage, a, k)...)
			}
		}
	}
	out.sort()
	for i := range out.Frames {
		out.Frames[i].File = fmt.Sprintf("invented/FRAME%05d.JPG", i+1)
	}
	return out
}

// inventedOf are the frames of one body in a period.
func inventedOf(r *rand.Rand, f Frame, hole string, in Stage, a arena.Arena, k kit.Kit) (out []Frame) {
	lenses, err := k.InUse(a.Lenses)
	if err != nil || len(lenses) == 0 {
		return nil
	}
	lux := unsurveyed
	if field, err := light.NewField(light.SurveyOfFaces(a.Light)); err == nil {
		if h, ok := a.Hole(hole); ok {
			at, _ := field.At(a.Rink.Point(h.Station))
			lux = at.Lux()
		}
	}
	at := in.From.Add(InventedAhead)
	for {
		at = at.Add(seconds(r.ExpFloat64() * 60 / inventedRate))
		if !at.Before(in.To) {
			return out
		}
		lens := lenses[r.IntN(len(lenses))]
		f.Lens = lens.ID
		f.Focal = unit.Known(lens.FocalMin + unit.Length(r.Float64())*(lens.FocalMax-lens.FocalMin))
		f.Shutter = unit.Known(unit.Shutter([]float64{1.0 / 800, 1.0 / 1000, 1.0 / 1000, 1.0 / 1600}[r.IntN(4)]))
		f.Stop = unit.Known(unit.Stop(2.8))
		lit := unit.Illuminance(lux * math.Exp(inventedTaste*r.NormFloat64()))
		f.ISO = unit.Known(unit.ISO(optics.NearestISO(optics.DefaultCalibration.ISO(lit, f.Shutter.Or(0), f.Stop.Or(0))).Nominal))
		f.Rating = unit.Maybe[int]{}
		frames := 1 + r.IntN(inventedBurst)
		for i := range frames {
			f.Taken = at.Add(time.Duration(i) * time.Second / 10)
			if i == frames-1 && r.Float64() < inventedKept {
				f.Rating = unit.Known(1 + r.IntN(5))
			}
			out = append(out, f)
		}
	}
}
