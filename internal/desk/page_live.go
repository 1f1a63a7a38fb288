package desk

import (
	"bytes"
	"encoding/json"
	"errors"
	"net/http"
	"net/url"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/edit"
)

// moving is what a page asks while a hole is dragged: nothing is saved.
type moving struct {
	Base  int         `json:"base"`  // the version that the page shows
	State string      `json:"state"` // the page's query
	Edits []edit.Edit `json:"edits"`
}

// moved is the answer: pieces of the page, made as the page itself is made.
type moved struct {
	Parts  map[string]string `json:"parts"`  // by the name in data-part
	Layers map[string]string `json:"layers"` // of the drawings: "map/reach"
	Wrong  string            `json:"wrong"`  // why the hole cannot stand there; "" when it can
}

// liveParts are the templates that follow a hole under somebody's hand.
var liveParts = []string{"verdict", "readout", "glance", "fits", "fitchart", "light", "mend", "holefindings", "holehead"}

// livePage answers a step of a drag.
func (d *Desk) livePage(w http.ResponseWriter, r *http.Request) {
	var asked moving
	if err := json.NewDecoder(r.Body).Decode(&asked); err != nil || asked.Base < 1 || len(asked.Edits) == 0 {
		d.problem(w, r, http.StatusBadRequest, "send base, state and edits as JSON")
		return
	}
	q, err := url.ParseQuery(asked.State)
	if err != nil {
		d.problem(w, r, http.StatusBadRequest, "state is no query")
		return
	}
	at, err := readAddress(r.PathValue("slug"), q)
	if err != nil {
		d.problem(w, r, http.StatusBadRequest, err.Error())
		return
	}
	b, err := d.shelf.Open(r.Context(), at.slug, asked.Base)
	if err != nil {
		d.problem(w, r, http.StatusNotFound, "there is no such arena or version")
		return
	}
	p, err := d.shelf.Plan(b)
	if err != nil {
		d.problem(w, r, http.StatusUnprocessableEntity, err.Error())
		return
	}
	out, err := d.tried(b, p, at, asked.Edits)
	if err != nil {
		d.log.Error("desk", "path", r.URL.Path, "error", err)
		d.problem(w, r, http.StatusInternalServerError, "this could not be worked out; the terminal that runs the desk shows why")
		return
	}
	var text bytes.Buffer
	enc := json.NewEncoder(&text)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(out); err != nil {
		d.broken(w, r, err)
		return
	}
	w.Header().Set("Cache-Control", "no-store")
	send(w, r, http.StatusOK, "application/json", text.Bytes(), nil)
}

// tried makes the edits and draws what follows from them.
func (d *Desk) tried(b shelf.Book, p plan.Plan, at address, edits []edit.Edit) (moved, error) {
	doc, _, err := d.shelf.Edited(b, edits)
	if err != nil {
		return moved{Wrong: whyNot(err)}, nil
	}
	v, err := d.live(b, doc, p, at)
	if err != nil {
		return moved{}, err
	}
	out := moved{Parts: map[string]string{}, Layers: movedLayers(v)}
	var text bytes.Buffer
	for _, name := range liveParts {
		text.Reset()
		if err := d.templates.ExecuteTemplate(&text, name, v); err != nil {
			return moved{}, err
		}
		out.Parts[name] = text.String()
	}
	return out, nil
}

// whyNot says to people why a change cannot be made, without file and line.
func whyNot(err error) string {
	var at *form.Problem
	var fault *edit.Fault
	switch {
	case errors.As(err, &at):
		if at.Field == "" {
			return sentence(at.Text)
		}
		return sentence(at.Field + ": " + at.Text)
	case errors.As(err, &fault):
		return sentence(fault.Err.Error())
	}
	return sentence(err.Error())
}
