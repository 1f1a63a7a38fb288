package recap

import (
	"cmp"
	"math"
	"slices"
	"time"

	"example.org/rinkpane/internal/measure/chance"
	"example.org/rinkpane/internal/measure/unit"
)

// Spread is how values lie: their median, and the tenth and ninetieth of a hundred, in
// the unit of what they are of.
type Spread struct {
	Low, Median, High float64 // 10 %, 50 % and 90 %, in the values' own unit
	N                 int
}

// Use is what was used and kept at a hole in a stage; "" for Stage is all of the day, for
// Hole all frames whose hole is not known.
type Use struct {
	Hole, Stage string
	Frames      int
	Taken                         // pictures in all
	InPlay      Taken             // those of periods
	Focal       Spread            // mm
	Shutter     Spread            // s
	Stop        Spread            // f-number
	ISO         Spread            // ISO 12232
	Blur        Spread            // px, of the moments that the hole has, the camera held still
	AtRisk      float64           // share of frames whose blur is likely seen, 0 to 1
	Hours       float64           // of periods that are worked at the hole, in hours; 0 when no seat says it
	PerHour     unit.Maybe[Rated] // keepers of periods in an hour worked
	PerOpenMin  unit.Maybe[Rated] // keepers in a minute that the hole was open
}

// Taken is how many pictures were taken: frames of a body in quick succession, a burst, are
// one.
type Taken struct {
	Bursts int
	Kept   int // with a keeper
}

// Rated is a rate with its exact 95 % interval (Garwood), per unit of exposure.
type Rated struct{ Rate, Low, High float64 } // per hour or per minute

// Options say what counts.
type Options struct {
	KeptFrom int                      // stars from which a frame is a keeper; 0: one
	Open     map[string]time.Duration // how long each hole was open; none: not known
}

const (
	burstGap = time.Second // between frames of one burst
	level    = 0.95
)

// Used sums frames up by hole, and by hole and stage, in the order of their names.
func (e Evening) Used(frames []Matched, o Options) []Use {
	type key struct{ hole, stage string }
	groups := map[key][]*Matched{}
	for i := range frames {
		m := &frames[i]
		groups[key{m.Hole, ""}] = append(groups[key{m.Hole, ""}], m)
		if m.Stage != "" {
			groups[key{m.Hole, m.Stage}] = append(groups[key{m.Hole, m.Stage}], m)
		}
	}
	var out []Use
	for k, g := range groups {
		u := used(g, max(o.KeptFrom, 1))
		u.Hole, u.Stage = k.hole, k.stage
		u.Hours = e.hours(k.hole, k.stage)
		u.PerHour = rated(u.InPlay.Kept, u.Hours)
		if k.stage == "" {
			u.PerOpenMin = rated(u.Kept, o.Open[k.hole].Minutes())
		}
		out = append(out, u)
	}
	slices.SortFunc(out, func(a, b Use) int {
		return cmp.Or(cmp.Compare(a.Hole, b.Hole), cmp.Compare(e.order(a.Stage), e.order(b.Stage)), cmp.Compare(a.Stage, b.Stage))
	})
	return out
}

// order is where a stage stands in the day, the whole day first.
func (e Evening) order(stage string) int {
	return 1 + slices.IndexFunc(e.Stages, func(s Stage) bool { return s.Name == stage })
}

// hours returns how long a hole is worked in periods, in a stage or on the whole day.
func (e Evening) hours(hole, stage string) (h float64) {
	for _, s := range e.Stages {
		worked := slices.ContainsFunc(e.Seats, func(seat Seat) bool { return seat.Hole == hole && seat.works(s.Period) })
		if s.Period > 0 && worked && (stage == "" || stage == s.Name) {
			h += s.To.Sub(s.From).Hours()
		}
	}
	return h
}

func rated(kept int, exposure float64) unit.Maybe[Rated] {
	r := chance.Rate{Events: kept, Exposure: exposure}
	i, err := r.Interval(level)
	if err != nil {
		return unit.Maybe[Rated]{}
	}
	return unit.Known(Rated{r.Value(), i.Low, i.High})
}

func used(frames []*Matched, keptFrom int) Use {
	var focal, shutter, stop, iso, blur []float64
	u := Use{Frames: len(frames)}
	told, risk := 0.0, 0.0
	for _, m := range frames {
		add(&focal, m.Focal, unit.Length.Millimetres)
		add(&shutter, m.Shutter, unit.Shutter.Seconds)
		add(&stop, m.Stop, func(n unit.Stop) float64 { return float64(n) })
		add(&iso, m.ISO, func(s unit.ISO) float64 { return float64(s) })
		if s, ok := m.blur(); ok {
			told, risk = told+1, risk+s.Risk
			if high := m.Shown()[1]; high > 0 {
				blur = append(blur, s.Mean*float64(high))
			}
		}
	}
	u.Focal, u.Shutter, u.Stop, u.ISO, u.Blur = spread(focal), spread(shutter), spread(stop), spread(iso), spread(blur)
	u.AtRisk = risk / max(told, 1)
	for _, b := range bursts(frames) {
		u.count(b, keptFrom)
		if b[0].Period > 0 {
			u.InPlay.count(b, keptFrom)
		}
	}
	return u
}

func (t *Taken) count(b burst, keptFrom int) {
	t.Bursts++
	if b.kept(keptFrom) {
		t.Kept++
	}
}

func add[T any](to *[]float64, m unit.Maybe[T], as func(T) float64) {
	if v, ok := m.Get(); ok {
		*to = append(*to, as(v))
	}
}

// spread returns where a tenth, half and nine tenths of values lie, between neighbours in
// proportion (Hyndman and Fan 1996, definition 7).
func spread(v []float64) Spread {
	if len(v) == 0 {
		return Spread{}
	}
	slices.Sort(v)
	at := func(share float64) float64 {
		k := share * float64(len(v)-1)
		i := int(math.Floor(k))
		j := min(i+1, len(v)-1)
		return v[i] + (k-float64(i))*(v[j]-v[i])
	}
	return Spread{at(0.1), at(0.5), at(0.9), len(v)}
}

// burst is frames of one body in quick succession.
type burst []*Matched

func (b burst) kept(from int) bool {
	return slices.ContainsFunc(b, func(m *Matched) bool { return m.Rating.Or(0) >= from })
}

// bursts puts frames in the order of their bodies and times and parts them into bursts.
func bursts(frames []*Matched) (out []burst) {
	slices.SortStableFunc(frames, func(a, b *Matched) int { return cmp.Or(cmp.Compare(a.Body, b.Body), a.At.Compare(b.At)) })
	for len(frames) > 0 {
		n := 1
		for n < len(frames) && frames[n].follows(frames[n-1]) {
			n++
		}
		out, frames = append(out, frames[:n]), frames[n:]
	}
	return out
}

// follows reports whether a frame is of one burst with the one before it.
func (m *Matched) follows(before *Matched) bool {
	return m.Body == before.Body && m.At.Sub(before.At) <= burstGap
}
