package arena

import (
	"fmt"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Edits return a new document and leave the old one as it was. They splice the
// text: comments, order and every other byte stay. A path is written as in
// messages: "holes[H3].size", "light.readings[#4].x". That an edited document
// reads is proved; whether it still is a sound arena, Check says.

// Set returns the document with the value at path replaced, or the field added.
func (d *Document) Set(path string, e form.Entry) (*Document, error) {
	return d.edited(d.form.Set(path, e))
}

// Placed is a text for a single value that the document has.
type Placed = form.Placed

// SetEach returns the document with several single values replaced, told in its order.
func (d *Document) SetEach(values []Placed) (*Document, error) {
	return d.edited(d.form.SetEach(values))
}

// Append returns the document with one more item in the list at path.
func (d *Document) Append(path string, e form.Entry) (*Document, error) {
	return d.edited(d.form.Append(path, e))
}

// Remove returns the document without the field or item at path.
func (d *Document) Remove(path string) (*Document, error) { return d.edited(d.form.Remove(path)) }

// Has reports whether a path leads to a value that the document holds.
func (d *Document) Has(path string) bool { return d.form.Has(path) }

func (d *Document) edited(f *form.Document, err error) (*Document, error) {
	if err != nil {
		return nil, err
	}
	return document(f, d.day), nil
}

// AddHole returns the document with one more hole, at a place; h.Station and
// h.Pane do not matter. What h does not know is left out.
func (d *Document) AddHole(h glass.Hole, at Place, sys unit.System) (*Document, error) {
	return d.Append("holes", HoleEntry(h, at, sys))
}

// MoveHole returns the document with a hole at another place along the boards.
func (d *Document) MoveHole(id string, to Place, sys unit.System) (*Document, error) {
	hole := "holes[" + id + "]"
	field := "place"
	if d.form.Has(hole + ".station") {
		if _, plain := to.Station.Get(); plain {
			field = "station"
		} else {
			next, err := d.Remove(hole + ".station")
			if err != nil {
				return nil, err
			}
			return next.Set(hole+".place", to.Entry(sys))
		}
	}
	return d.Set(hole+"."+field, to.Entry(sys))
}

// RemoveHole returns the document without a hole. Dispensations that name only
// this hole go with it: without holes they would cover every hole.
func (d *Document) RemoveHole(id string) (*Document, error) {
	next, err := d.Remove("holes[" + id + "]")
	if err != nil {
		return nil, err
	}
	list := next.form.Afresh().Root().Map(arenaFields...).At("dispensations")
	if !list.Present() {
		return next, nil
	}
	items := list.List(MaxDispensations)
	for i := len(items) - 1; i >= 0; i-- { // from the last: numbers before it stay
		at := fmt.Sprintf("dispensations[#%d]", i+1)
		holes := items[i].Map(dispensationFields...).At("holes")
		if !holes.Present() {
			continue
		}
		if next, err = next.withdraw(at, holes.List(MaxHoles), id); err != nil {
			return nil, err
		}
	}
	return next, nil
}

// withdraw takes a hole out of one dispensation.
func (d *Document) withdraw(at string, holes []form.Node, id string) (*Document, error) {
	next, err := d, error(nil)
	for i := len(holes) - 1; i >= 0; i-- {
		switch {
		case holes[i].Value() != id:
		case len(holes) == 1:
			return d.Remove(at)
		default:
			if next, err = next.Remove(fmt.Sprintf("%s.holes[#%d]", at, i+1)); err != nil {
				return nil, err
			}
		}
	}
	return next, nil
}

// HoleEntry writes a hole as an arena file has it.
func HoleEntry(h glass.Hole, at Place, sys unit.System) form.Entry {
	fields := []form.Field{{Name: "id", Value: form.Text(h.ID)}, {Name: "place", Value: at.Entry(sys)}}
	put := func(name, text string) {
		fields = append(fields, form.Field{Name: name, Value: form.Text(text)})
	}
	put("height", h.Height.Exact(sys))
	put("size", h.Size.Exact(sys))
	if r, ok := h.Corner.Get(); ok {
		put("corner-radius", r.Exact(sys))
	}
	if r, ok := h.Rounding.Get(); ok {
		put("rounding", r.Exact(sys))
	}
	if c, ok := h.Cover.Get(); ok {
		fields = append(fields, form.Field{Name: "cover", Value: coverEntry(c)})
	}
	if h.State != "" {
		put("state", string(h.State))
	}
	if h.Note != "" {
		put("note", h.Note)
	}
	return form.Fields(fields...)
}

func coverEntry(c glass.Cover) form.Entry {
	var fields []form.Field
	if c.Material != "" {
		fields = append(fields, form.Field{Name: "material", Value: form.Text(string(c.Material))})
	}
	if t, ok := c.Tether.Get(); ok {
		word := "no"
		if t {
			word = "yes"
		}
		fields = append(fields, form.Field{Name: "tether", Value: form.Text(word)})
	}
	switch {
	case !c.Present:
		return form.Text("none")
	case len(fields) == 0:
		return form.Text("yes")
	}
	return form.Fields(fields...)
}
