package holes

import (
	"encoding/json"
	"net/http"
	"net/url"
	"strconv"

	"example.org/rinkpane/internal/desk/shell"
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
var liveParts = []string{"verdict", "faults", "readout", "glancehead", "glance", "fits", "fitchart", "light", "holefindings"}

// livePage answers a step of a drag.
func (d area) livePage(w http.ResponseWriter, r *http.Request) error {
	var asked moving
	if err := json.NewDecoder(r.Body).Decode(&asked); err != nil || asked.Base < 1 || len(asked.Edits) == 0 {
		return errMoving
	}
	q, err := url.ParseQuery(asked.State)
	if err != nil {
		return errMoving
	}
	q.Set("version", strconv.Itoa(asked.Base))
	o, err := d.Open(r, r.PathValue("slug"), q)
	if err != nil {
		return err
	}
	o.At.Version = 0
	out, err := d.tried(o, asked.Edits)
	if err != nil {
		return err
	}
	return d.JSON(w, r, http.StatusOK, out)
}

// errMoving answers a step that is none.
var errMoving = shell.Refuse(http.StatusBadRequest, "This is no step of a drag:", "send base, state and edits as JSON.")

// tried makes the edits and draws what follows from them.
func (d area) tried(o shell.Opened, edits []edit.Edit) (moved, error) {
	doc, _, err := d.Shelf.Edited(o.Book, edits)
	if err != nil {
		return moved{Wrong: shell.WhyNot(err)}, nil
	}
	v, err := d.live(o.Book, doc, o.Plan, o.At)
	if err != nil {
		return moved{}, err
	}
	out := moved{Parts: map[string]string{}, Layers: movedLayers(v)}
	for _, name := range liveParts {
		text, err := d.Piece(name, v)
		if err != nil {
			return moved{}, err
		}
		out.Parts[name] = string(text)
	}
	return out, nil
}
