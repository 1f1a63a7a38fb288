package holes

import (
	"errors"
	"net/http"
	"net/url"
	"strconv"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/glass"
)

// What hands do to holes comes here as a form, from a button or from a module of
// the page after a drag, and is answered by the page as it is afterwards. So
// everything works without a script, and there is one way in.

// handsOn changes the holes of an arena.
func (d area) handsOn(w http.ResponseWriter, r *http.Request) error {
	back := shell.Back(r)
	b, err := d.Base(r)
	if err != nil {
		return err
	}
	a, err := b.Arena.Check()
	if err != nil {
		return err
	}
	slug := b.Document.ID
	again := func(status int, why string) error { return d.showArena(w, r, status, slug, back, why) }
	a.Units = shell.SharedOf(slug, back).Units(a.Units) // a step is as long as the button that was pressed says
	edits, err := handEdits(r.PostForm, a)
	if err != nil {
		return again(http.StatusUnprocessableEntity, shell.SentenceOf(err))
	}
	made, err := d.Edit(r, b, "", edits...)
	if err != nil {
		return d.Again(r, err, "", func(p *shell.Problem) error { return again(p.Status, p.Say()) })
	}
	if as := made.Edits[0].As; as != "" {
		back.Set("hole", as)
	}
	if edits[0].Do == edit.Delete {
		back.Del("hole")
	}
	return d.Goto(w, r, "/arena/"+slug+shell.Suffix(back))
}

// handEdits returns the edits that a form asks for.
func handEdits(f url.Values, a arena.Arena) ([]edit.Edit, error) {
	act, id := f.Get("act"), f.Get("hole")
	if act == "add" {
		return addEdits(f, a)
	}
	h, ok := a.Hole(id)
	if !ok {
		return nil, errors.New("this arena has no hole of that name; it may have been renamed or deleted")
	}
	switch act {
	case "place":
		return placeEdits(f, id)
	case "exact":
		return exactEdits(f, a, h)
	case "off":
		return []edit.Edit{{Do: edit.Turn, Hole: id, State: glass.Off}}, nil
	case "on":
		return []edit.Edit{{Do: edit.Turn, Hole: id, State: glass.Planned}}, nil
	case "delete":
		return []edit.Edit{{Do: edit.Delete, Hole: id}}, nil
	case "copy":
		to, err := paneBeside(a, h, 1)
		if err != nil {
			return nil, err
		}
		return []edit.Edit{{Do: edit.Copy, Hole: id, As: freeName(a, id), To: &edit.Spot{Station: &to}}}, nil
	}
	return nudgeEdits(act, a, h)
}

// placeEdits puts a hole where a drag left it.
func placeEdits(f url.Values, hole string) ([]edit.Edit, error) {
	to := edit.Spot{}
	for name, into := range map[string]**float64{"station_m": &to.Station, "height_m": &to.Height} {
		if text := f.Get(name); text != "" {
			v, err := strconv.ParseFloat(text, 64)
			if err != nil {
				return nil, errors.New("a place is a number of metres")
			}
			*into = &v
		}
	}
	return []edit.Edit{{Do: edit.Move, Hole: hole, To: &to}}, nil
}

// addEdits adds a hole at a station, with the next free name unless one is given.
func addEdits(f url.Values, a arena.Arena) ([]edit.Edit, error) {
	s, err := strconv.ParseFloat(f.Get("station_m"), 64)
	if err != nil {
		return nil, errors.New("choose where the new hole shall stand")
	}
	name := f.Get("as")
	if name == "" {
		name = freeName(a, "H1")
	}
	return []edit.Edit{{Do: edit.Add, As: name, To: &edit.Spot{Station: &s}}}, nil
}

// nudgeStep is how far an arrow moves a hole: an inch, or a centimetre.
func nudgeStep(sys unit.System) unit.Length {
	if sys == unit.Imperial {
		return unit.Inch
	}
	return 10 * unit.Millimetre
}
