package arena

import (
	"errors"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// rink reads a standard, own dimensions, or a standard with some of its
// dimensions changed.
func (rd *reader) rink(m form.Map) {
	var d rink.Dimensions
	if std := m.At("standard"); std.Present() {
		r, err := rink.Standard(form.Parse(std, form.Words("north-american", "international")))
		if err != nil && std.OK() {
			std.Failf("%v", err)
		}
		d = r.Dimensions()
	} else {
		for _, name := range []string{"length", "width", "corner-radius"} {
			if v := m.At(name); !v.Present() {
				v.Failf("is missing; write it, or standard: north-american or international")
			}
		}
	}
	replace(&d.Length, m.At("length"))
	replace(&d.Width, m.At("width"))
	replace(&d.CornerRadius, m.At("corner-radius"))
	if v := m.At("markings"); v.Present() {
		markings(&d.Markings, v.Map(markingsFields...))
	}
	rd.source(m, rinkFields)
	if !m.OK() {
		return
	}
	r, err := rink.New(d)
	if err != nil {
		blamed(m, err).Failf("%v", err)
		return
	}
	rd.a.Rink = r
}

// blamed returns the line of the dimension that is at fault, or the whole rink
// when the file does not say that dimension itself: it is the standard's.
func blamed(m form.Map, err error) form.Node {
	var f *rink.Fault
	if !errors.As(err, &f) {
		return m.Node
	}
	if v := m.At(f.Field); v.Present() {
		return v
	}
	if !m.Has("markings") {
		return m.Node
	}
	if v := m.At("markings").Peek(f.Field); v.Present() {
		return v
	}
	return m.Node
}

func replace(l *unit.Length, n form.Node) {
	if n.Present() {
		*l = form.Parse(n, unit.ParseLength)
	}
}

func markings(k *rink.Markings, m form.Map) {
	for _, f := range k.All() {
		replace(f.At, m.At(f.Field))
	}
	switch to := m.At("blue-line-to"); {
	case !to.Present():
	case form.Parse(to, form.Words("middle", "far-edge")) == "far-edge":
		k.BlueLineTo = rink.LineFarEdge
	default:
		k.BlueLineTo = rink.LineMiddle
	}
}
