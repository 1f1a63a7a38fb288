package kit

import (
	"fmt"
	"io"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// Limits of what a kit file may hold.
const (
	MaxBytes  = 1 << 20
	MaxBodies = 200
	MaxLenses = 500
)

// Kind is the format marker of a kit file: its first line reads
// "rinkpane: kit 1".
const Kind = "kit 1"

// What lenses and sensors can measure at all; beyond lies a slip of the pen.
const (
	leastFocal = 4 * unit.Millimetre
	mostFocal  = 3 * unit.Metre
	leastNose  = 10 * unit.Millimetre
	mostNose   = 400 * unit.Millimetre
	mostDepth  = 2 * unit.Metre
	leastSide  = 2 * unit.Millimetre
	mostSide   = 100 * unit.Millimetre
	leastBody  = 20 * unit.Millimetre
	mostBody   = unit.Metre
	mostFocus  = 100 * unit.Metre
	leastISO   = 50
	mostISO    = 10_000_000
)

var (
	kitFields  = []string{"rinkpane", "name", "note", "bodies", "lenses", "teleconverters"}
	bodyFields = []string{"id", "name", "sensor", "size", "pixels", "iso-max"}
	lensFields = []string{"id", "name", "focal", "focal-min", "focal-max", "stop", "stop-long",
		"nose", "nose-hood", "hood-length", "front", "pupil-depth", "length", "min-focus", "body", "teleconverters"}
)

// Read reads and checks a kit file; name stands for it in messages. Errors are
// [*form.Problem] with file, line, column and field, or those of r.
func Read(name string, r io.Reader) (Kit, error) {
	f, err := form.Read(name, r, MaxBytes)
	if err != nil {
		return Kit{}, err
	}
	m := f.Root().Map(kitFields...)
	form.Parse(m.At("rinkpane"), marker)
	m.At("note").TextOr("")
	k := Kit{Name: m.At("name").TextOr(""), Bodies: bodies(m.At("bodies")), Lenses: lenses(m.At("lenses"), converters(m.At("teleconverters")))}
	fixed(m, k)
	if err := f.Err(); err != nil {
		return Kit{}, err
	}
	return k, nil
}

func marker(s string) (string, error) {
	if s != Kind {
		return "", fmt.Errorf("%s; a kit file says rinkpane: %s", form.Quote(s), Kind)
	}
	return s, nil
}

func bodies(n form.Node) []Body {
	var out []Body
	ids := make(map[string]bool)
	for _, item := range n.List(MaxBodies) {
		m := item.Map(bodyFields...)
		b := Body{
			ID:     newID(m, ids),
			Name:   m.At("name").Text(),
			Sensor: form.Parse(m.At("sensor"), sizeWithin("sensor", leastSide, mostSide, "36 x 24 mm")),
			Front:  form.Maybe(m.At("size"), sizeWithin("body", leastBody, mostBody, "140 x 100 mm")),
			ISOMax: m.At("iso-max").Int(leastISO, mostISO),
		}
		px := form.Parse(m.At("pixels"), pixels)
		b.PixelsW, b.PixelsH = px[0], px[1]
		out = append(out, b)
	}
	if len(out) == 0 {
		n.Failf("holds no body; list at least one")
	}
	return out
}

func lenses(n form.Node, all map[string]converter) []Lens {
	var out []Lens
	ids := make(map[string]bool)
	for _, item := range n.List(MaxLenses) {
		m := item.Map(lensFields...)
		l := lens(m, ids)
		if !m.OK() {
			return nil
		}
		consistent(m, l)
		out = append(append(out, l), converted(m, l, all, ids)...)
	}
	if len(out) == 0 {
		n.Failf("holds no lens; list at least one")
	}
	return out
}

func lens(m form.Map, ids map[string]bool) Lens {
	l := Lens{ID: newID(m, ids), Name: m.At("name").Text()}
	focal := form.FocalWithin(leastFocal, mostFocal)
	if one := m.At("focal"); one.Present() {
		l.FocalMin = form.Parse(one, focal)
		l.FocalMax = l.FocalMin
		for _, other := range []string{"focal-min", "focal-max"} {
			if m.Has(other) {
				m.At(other).Failf("stands beside focal; keep focal for a lens of one focal length, focal-min and focal-max for a zoom")
			}
		}
	} else {
		l.FocalMin = form.Parse(m.At("focal-min"), focal)
		l.FocalMax = form.Parse(m.At("focal-max"), focal)
	}
	l.Stop = form.Parse(m.At("stop"), unit.ParseStop)
	l.StopLong = l.Stop
	if long := m.At("stop-long"); long.Present() {
		l.StopLong = form.Parse(long, unit.ParseStop)
	}
	l.Nose = form.Parse(m.At("nose"), form.Within(leastNose, mostNose))
	if m.Has("nose-hood") || m.Has("hood-length") {
		l.NoseHood = form.Parse(m.At("nose-hood"), form.Within(leastNose, mostNose))
		l.HoodLength = form.Parse(m.At("hood-length"), form.Within(0, mostDepth))
	}
	l.Front = form.Maybe(m.At("front"), form.Within(leastNose/2, mostNose))
	l.PupilDepth = form.Maybe(m.At("pupil-depth"), form.Within(0, mostDepth))
	l.Length = form.Maybe(m.At("length"), form.Within(leastNose, mostDepth))
	l.MinFocus = form.Parse(m.At("min-focus"), form.Within(leastNose, mostFocus))
	l.Body = form.Optional(m.At("body"), form.ID)
	return l
}

// fixed proves that the bodies are there that lenses are fixed to, and that the first
// body takes lenses.
func fixed(m form.Map, k Kit) {
	for _, l := range k.Lenses {
		if _, there := k.Body(l.Body); l.Body != "" && !there {
			m.At("lenses").Failf("lens %s is fixed to body %s, which the kit lacks; add the body, or leave body out", l.ID, form.Quote(l.Body))
		}
	}
}

// consistent proves that the parts of a lens go together: a zoom's ends in
// order, the pupil and the front glass no wider than the nose.
func consistent(m form.Map, l Lens) {
	if l.FocalMin > l.FocalMax {
		m.At("focal-max").Failf("%s is shorter than focal-min %s; exchange the two", form.Quote(m.At("focal-max").Value()), m.At("focal-min").Value())
	}
	for _, end := range []struct {
		f    unit.Length
		n    unit.Stop
		name string
	}{{l.FocalMin, l.Stop, "stop"}, {l.FocalMax, l.StopLong, "stop-long"}} {
		if pupil := end.f / unit.Length(end.n); pupil > l.Nose {
			at := m.At(end.name)
			if !at.Present() {
				at = m.At("stop")
			}
			at.Failf("%s at %s needs a pupil of %s, wider than the nose of %s; correct the stop or the nose",
				form.Quote(at.Value()), end.f.Format(unit.Metric), pupil.Format(unit.Metric), l.Nose.Format(unit.Metric))
		}
	}
	if f, ok := l.Front.Get(); ok && f > l.Nose {
		m.At("front").Failf("%s is wider than the nose of %s; the front glass lies inside the nose", form.Quote(m.At("front").Value()), l.Nose.Format(unit.Metric))
	}
	if l.NoseHood > 0 && l.NoseHood < l.Nose {
		m.At("nose-hood").Failf("%s is narrower than the bare nose of %s; write the hood's outer diameter", form.Quote(m.At("nose-hood").Value()), l.Nose.Format(unit.Metric))
	}
}

func newID(m form.Map, ids map[string]bool) string {
	at := m.At("id")
	id := form.Parse(at, form.ID)
	if ids[id] && id != "" {
		at.Failf("%s is the id of an earlier one in this list; give each its own", form.Quote(id))
	}
	ids[id] = true
	return id
}

// sizeWithin reads a size whose sides lie between two lengths.
func sizeWithin(thing string, least, most unit.Length, as string) func(string) (unit.Size, error) {
	return func(s string) (unit.Size, error) {
		size, err := unit.ParseSize(s)
		if err == nil && (min(size.W, size.H) < least || max(size.W, size.H) > most) {
			err = fmt.Errorf("%s is no %s; write width x height, as in %s", form.Quote(s), thing, as)
		}
		return size, err
	}
}

func pixels(s string) ([2]int, error) {
	w, h, err := unit.ParsePixels(s)
	return [2]int{w, h}, err
}
