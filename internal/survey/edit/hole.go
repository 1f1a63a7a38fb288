package edit

import (
	"fmt"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// hole returns a hole of a sound arena.
func hole(a arena.Arena, id string) (glass.Hole, error) {
	h, ok := a.Hole(id)
	if !ok {
		return glass.Hole{}, fmt.Errorf("the arena has no hole %s; it may have been renamed or deleted", form.Quote(id))
	}
	return h, nil
}

func move(doc *arena.Document, one Edit) (*arena.Document, string, error) {
	a, err := doc.Check()
	if err != nil {
		return nil, "", err
	}
	h, err := hole(a, one.Hole)
	if err != nil {
		return nil, "", err
	}
	if one.To == nil || one.To.still() && one.To.Height == nil {
		return nil, "", errNowhere
	}
	what := "move " + h.ID
	if !one.To.still() {
		to, err := one.To.place(a, doc.Has("holes["+h.ID+"].station"))
		if err != nil {
			return nil, "", err
		}
		if doc, err = doc.MoveHole(h.ID, to, a.Units); err != nil {
			return nil, "", err
		}
		what += " to " + to.Say(a.Units)
	}
	if one.To.Height != nil {
		height, err := round(*one.To.Height, a.Units)
		if err != nil {
			return nil, "", fmt.Errorf("height_m: %w", err)
		}
		if high := height.Exact(a.Units); high != h.Height.Exact(a.Units) { // a drag along the boards keeps it as it is written
			if doc, err = doc.Set("holes["+h.ID+"].height", form.Text(high)); err != nil {
				return nil, "", err
			}
		}
		what += ", " + height.Format(a.Units) + " above the ice"
	}
	return doc, what, nil
}

func (e Editor) add(doc *arena.Document, one Edit) (*arena.Document, string, error) {
	a, err := doc.Check()
	if err != nil {
		return nil, "", err
	}
	var h glass.Hole
	switch {
	case one.Like != nil:
		h = *one.Like
	case e.Standard != nil:
		h = e.Standard(a)
	}
	h.ID, h.State, h.Note = newID(a, one.As), glass.Planned, ""
	doc, what, err := place(doc, a, h, one.To)
	if err != nil || one.Value == nil {
		return doc, "add " + what, err
	}
	for _, f := range one.Value.fields {
		if f.name == "id" || f.name == "place" || f.name == "station" {
			return nil, "", fmt.Errorf("value: %q is given by as and to", f.name)
		}
		if doc, err = doc.Set("holes["+h.ID+"]."+f.name, f.value.entry()); err != nil {
			return nil, "", err
		}
	}
	return doc, "add " + what, nil
}

func duplicate(doc *arena.Document, one Edit) (*arena.Document, string, error) {
	a, err := doc.Check()
	if err != nil {
		return nil, "", err
	}
	h, err := hole(a, one.Hole)
	if err != nil {
		return nil, "", err
	}
	h.ID, h.State = newID(a, one.As), glass.Planned
	doc, what, err := place(doc, a, h, one.To)
	return doc, "copy " + one.Hole + " as " + what, err
}

// place adds a hole at a spot.
func place(doc *arena.Document, a arena.Arena, h glass.Hole, to *Spot) (*arena.Document, string, error) {
	if to == nil || to.still() {
		return nil, "", errNowhere
	}
	at, err := to.place(a, false)
	if err != nil {
		return nil, "", err
	}
	if to.Height != nil {
		if h.Height, err = round(*to.Height, a.Units); err != nil {
			return nil, "", fmt.Errorf("height_m: %w", err)
		}
	}
	next, err := doc.AddHole(h, at, a.Units)
	return next, h.ID + " at " + at.Say(a.Units), err
}

// newID returns the id asked for, else the first free of H1, H2 ...
func newID(a arena.Arena, as string) string {
	if as != "" {
		return as
	}
	for n := 1; ; n++ {
		id := fmt.Sprintf("H%d", n)
		if _, taken := a.Hole(id); !taken {
			return id
		}
	}
}

func remove(doc *arena.Document, one Edit) (*arena.Document, string, error) {
	next, err := doc.RemoveHole(one.Hole)
	return next, "delete " + one.Hole, err
}

func turn(doc *arena.Document, one Edit) (*arena.Document, string, error) {
	switch one.State {
	case glass.Planned, glass.Cut, glass.Off:
	default:
		return nil, "", fmt.Errorf("state %.20q: write planned, cut or off", string(one.State))
	}
	if !doc.Has("holes[" + one.Hole + "]") {
		return nil, "", fmt.Errorf("the arena has no hole %s; it may have been renamed or deleted", form.Quote(one.Hole))
	}
	next, err := doc.Set("holes["+one.Hole+"].state", form.Text(string(one.State)))
	what := "turn " + one.Hole + " on (" + string(one.State) + ")"
	if one.State == glass.Off {
		what = "turn " + one.Hole + " off"
	}
	return next, what, err
}
