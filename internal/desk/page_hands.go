package desk

import (
	"errors"
	"net/http"
	"net/url"
	"strconv"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/glass"
)

// What hands do to holes comes here as a form, from a button or from a module of
// the page after a drag, and is answered by the page as it is afterwards. So
// everything works without a script, and there is one way in.

// handsOn changes the holes of an arena.
func (d *Desk) handsOn(w http.ResponseWriter, r *http.Request) {
	slug, back := r.PathValue("slug"), backQuery(r)
	base, err := strconv.Atoi(r.PostFormValue("base"))
	if err != nil || base < 1 {
		d.fail(w, r, http.StatusBadRequest, "This form is incomplete.", "Open the arena again and try once more.")
		return
	}
	b, ok := d.book(w, r, slug, base)
	if !ok {
		return
	}
	a, err := b.Arena.Check()
	if err != nil {
		d.fail(w, r, http.StatusUnprocessableEntity, "This arena cannot be changed like this.", err.Error())
		return
	}
	a.Units = sharedOf(slug, back).units(a.Units) // a step is as long as the button that was pressed says
	edits, err := handEdits(r.PostForm, a)
	if err != nil {
		d.showArena(w, r, http.StatusUnprocessableEntity, slug, back, sentenceOf(err))
		return
	}
	doc, what, err := d.shelf.Edited(b, edits)
	if err != nil {
		d.showArena(w, r, http.StatusUnprocessableEntity, slug, back, whyNot(err))
		return
	}
	if as := edits[0].As; as != "" {
		back.Set("hole", as)
	}
	if edits[0].Do == edit.Delete {
		back.Del("hole")
	}
	d.save(w, r, b, doc, what, address{slug: slug}.URL()+suffix(back), func(p *problemView, status int) {
		d.showArena(w, r, status, slug, back, p.Text)
	})
}

func suffix(q url.Values) string {
	if len(q) == 0 {
		return ""
	}
	return "?" + q.Encode()
}

// backQuery returns the state of the page that a form was on.
func backQuery(r *http.Request) url.Values {
	q, err := url.ParseQuery(r.PostFormValue("back"))
	if err != nil {
		return url.Values{}
	}
	return q
}

// backTo returns the state to come back to, without a hole that is no longer there.
func backTo(r *http.Request, doc *arena.Document) url.Values {
	back := backQuery(r)
	if hole := back.Get("hole"); hole != "" && !doc.Has("holes["+hole+"]") {
		back.Del("hole")
	}
	return back
}

// save puts a document on top of the version it was made from and goes on to a
// page. Where somebody was quicker it shows what came between; where it cannot be
// saved now, again shows the form with what was typed.
func (d *Desk) save(w http.ResponseWriter, r *http.Request, from shelf.Book, doc *arena.Document, what, next string, again func(p *problemView, status int)) {
	_, err := d.shelf.Save(r.Context(), from.Document.ID, from.Version.Number, doc, door.Who(r.Context()), what)
	var stale *revision.Stale
	switch {
	case errors.As(err, &stale):
		d.conflict(w, r, from, string(doc.Bytes()), what, stale)
	case err != nil:
		d.keepTyped(w, r, err, string(doc.Bytes()), again)
	default:
		http.Redirect(w, r, next, http.StatusSeeOther)
	}
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
