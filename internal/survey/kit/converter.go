package kit

import (
	"fmt"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// A converter stands between a lens and the body: it multiplies focal length and
// f-number by its factor, so it takes 2 log2(factor) stops, and leaves nose, entrance
// pupil (focal length over f-number) and nearest focus as they are.
type converter struct {
	name   string
	factor float64     // without unit, above 1
	length unit.Length // that it adds between lens and body; 0: not said
}

// The factors of converters that are made, widely (from memory: 1.4 and 2 are usual).
const leastFactor, mostFactor = 1.05, 3

var converterFields = []string{"id", "name", "factor", "length"}

// converters reads the list of teleconverters by their ids.
func converters(n form.Node) map[string]converter {
	out := map[string]converter{}
	if !n.Present() {
		return out
	}
	ids := map[string]bool{}
	for _, item := range n.List(MaxBodies) {
		m := item.Map(converterFields...)
		id := newID(m, ids)
		out[id] = converter{name: m.At("name").Text(), factor: m.At("factor").Float(leastFactor, mostFactor),
			length: form.Optional(m.At("length"), form.Within(0, mostDepth))}
	}
	return out
}

// with returns a lens with a converter behind it, called "lens-converter".
func (c converter) with(id string, l Lens) Lens {
	l.ID, l.Name = l.ID+"-"+id, l.Name+" with "+c.name
	l.FocalMin, l.FocalMax = l.FocalMin*unit.Length(c.factor), l.FocalMax*unit.Length(c.factor)
	l.Stop, l.StopLong = l.Stop*unit.Stop(c.factor), l.StopLong*unit.Stop(c.factor)
	if long, known := l.Length.Get(); known {
		l.Length = unit.Known(long + c.length)
	}
	return l
}

// converted returns a lens with each of the converters that its line names.
func converted(m form.Map, l Lens, all map[string]converter, ids map[string]bool) []Lens {
	at := m.At("teleconverters")
	if !at.Present() {
		return nil
	}
	var known []string
	for id := range all {
		known = append(known, id)
	}
	var out []Lens
	for _, item := range at.List(MaxBodies) {
		id := form.Parse(item, form.ID)
		c, there := all[id]
		if !there && item.OK() {
			item.Failf("%s is no teleconverter of this kit; list it under teleconverters%s", form.Quote(id), meant(id, known))
		}
		with := c.with(id, l)
		if ids[with.ID] {
			item.Failf("makes the lens %s, which is there already; give one another id", form.Quote(with.ID))
		}
		ids[with.ID] = true
		out = append(out, with)
	}
	return out
}

func meant(id string, known []string) string {
	if near := form.Nearest(id, known); near != "" {
		return fmt.Sprintf(", or write %s", near)
	}
	return ""
}

// BodyOf returns the body that a lens is fixed to, as in a phone or a sealed camera;
// else the kit's first, on which lenses are changed.
func (k Kit) BodyOf(l Lens) Body {
	if b, is := k.Body(l.Body); is || len(k.Bodies) == 0 {
		return b
	}
	return k.Bodies[0]
}
