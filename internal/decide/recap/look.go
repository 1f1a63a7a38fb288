package recap

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// look is what a frame most likely shows, by its hole and how the lens was set.
type look struct {
	zone  string  // the likeliest, "" where that has less than [zoneShare]
	pass  float64 // the share of the light that the hole lets through, 0 to 1
	smear float64 // of the subject while the shutter is open, a share of the picture's height
	risk  float64 // that it smears visibly, 0 to 1
}

// lookKey is what frames of one look have in common.
type lookKey struct {
	hole                          string
	focal, high, shutter, fnumber float64 // mm, mm, s, f-number
}

// How a subject is taken to be framed and its blur seen (own choice, no published source).
const (
	fill        = 0.5       // share of the picture's height that a player takes
	framing     = 0.5       // standard deviation of the logarithm of that share
	zoneShare   = 1.0 / 3   // of the likelihood that names the likeliest zone
	visibleBlur = 1.0 / 500 // of the picture's height: seen on a screen
)

// See adds to frames the zone that they most likely show, what their hole let through, and
// their blur: of the moments that the hole has, each as likely as it is worth, seen, and
// away about as far as the focal length frames. Frames of no known hole or focal length,
// or through a hole that sees nothing, stay without.
func (o *Outlook) See(frames []Matched) {
	for i := range frames {
		m := &frames[i]
		p, focal := o.holes[m.Hole], m.Focal.Or(0)
		if p == nil || focal <= 0 {
			continue
		}
		k := lookKey{m.Hole, focal.Millimetres(), m.sensorHeight().Millimetres(), m.Shutter.Or(0).Seconds(), float64(m.Stop.Or(0))}
		l, met := o.looks[k]
		if !met {
			l = o.look(p, k)
			o.looks[k] = l
		}
		m.Zone, m.Pass = l.zone, l.pass
		if l.pass > 0 && k.shutter > 0 {
			m.Smear = unit.Known(Smear{l.smear, l.risk})
		}
	}
}

// look weighs a hole's moments by how a lens was set.
func (o *Outlook) look(p *prospect, k lookKey) (out look) {
	tall := play.DefaultAssumptions().Stature.Mean + play.DefaultAssumptions().Equipment
	want := k.focal * tall / (fill * k.high)
	let := o.through(k)
	zones := map[string]float64{}
	sum := 0.0
	for _, s := range p.scenes {
		pass := between(let, s.turn)
		if pass < usable {
			continue
		}
		off := math.Log(s.away/want) / framing
		w := s.weight * math.Exp(-off*off/2)
		smear := s.cross * k.shutter * k.focal / (s.away * k.high)
		sum += w
		zones[s.zone] += w
		out.pass += w * pass
		out.smear += w * smear
		if smear > visibleBlur {
			out.risk += w
		}
	}
	if sum <= 0 {
		return look{}
	}
	likeliest := zoneShare * sum
	for _, id := range slices.Sorted(maps.Keys(zones)) {
		if w := zones[id]; w > likeliest {
			out.zone, likeliest = id, w
		}
	}
	out.pass, out.smear, out.risk = out.pass/sum, out.smear/sum, out.risk/sum
	return out
}

// usable is the transmission below which nobody aims: the house's limit of a pan.
const usable = 0.5

// letKey is a lens as set behind a hole.
type letKey struct {
	hole           string
	focal, fnumber float64 // mm, f-number
}

// letStep is between two pans at which a lens's transmission is worked out.
const letStep = 5 * unit.Degree

// through returns what a hole lets through to the lens of a frame by pan, in steps of
// [letStep] from straight ahead: of the kit's lenses in use that can be set so, the one
// with the shorter range; 1 where none can.
func (o *Outlook) through(k lookKey) []float64 {
	key := letKey{k.hole, k.focal, k.fnumber}
	if known, met := o.let[key]; met {
		return known
	}
	out := []float64{1}
	if c, ok := o.lensCase(key); ok {
		out = out[:0]
		for pan := unit.Angle(0); pan < 90*unit.Degree; pan += letStep {
			out = append(out, c.At(pan, 0).Centre)
		}
	}
	o.let[key] = out
	return out
}

func (o *Outlook) lensCase(k letKey) (c fit.Case, ok bool) {
	opening, err := o.arena.Opening(k.hole)
	lenses, none := o.kit.InUse(o.arena.Lenses)
	if cmp.Or(err, none) != nil {
		return c, false
	}
	var best kit.Lens
	for _, l := range lenses {
		use, err := fit.Use(l, unit.Known(unit.Length(k.focal)*unit.Millimetre), aperture(k.fnumber), false, false)
		if err != nil || ok && l.FocalMax/l.FocalMin >= best.FocalMax/best.FocalMin {
			continue
		}
		if found, err := fit.FromKit(opening, l, o.kit.BodyOf(l), use); err == nil {
			c, best, ok = found, l, true
		}
	}
	return c, ok
}

func aperture(n float64) unit.Maybe[unit.Stop] {
	if n <= 0 {
		return unit.Maybe[unit.Stop]{}
	}
	return unit.Known(unit.Stop(n))
}

// between reads a table in steps of [letStep], in proportion; its last row holds beyond.
func between(table []float64, turn float64) float64 {
	k := turn / letStep.Radians()
	i := min(int(k), len(table)-1)
	j := min(i+1, len(table)-1)
	return table[i] + (k-math.Floor(k))*(table[j]-table[i])
}
