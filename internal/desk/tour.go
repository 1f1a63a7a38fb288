package desk

import (
	"net/http"
	"strings"

	"example.org/rinkpane/examples"
)

// A newcomer's first minute: the demo arena is open, a sentence says what this
// is, and three steps show how to begin. Nothing covers the page and nothing
// holds the focus; once closed, the steps stay away.

const (
	tourCookie = "rinkpane-tour"
	tourClosed = "closed"
)

// tourStep is one step: what to do, and the part of the page where it is done.
type tourStep struct {
	Title, Text string
	Part        string // id of an element of the page
}

// tourSteps are the three steps.
var tourSteps = []tourStep{
	{"Pick a hole", "Press a hole's name, or its mark on the plan map. What it is good for stands beside the map.", "picks"},
	{"Move it", "Drag the mark along the boards, or press an arrow key on it. The rules, the lens and the light follow at once.", "map"},
	{"Keep it or take it back", "Every move is saved as a version. Undo takes it back; Versions keeps them all.", "tools"},
}

// tourFor returns the steps for a visitor, none once they were closed: the first
// alone for who may not move a hole.
func tourFor(r *http.Request, edits bool) []tourStep {
	switch {
	case toured(r):
		return nil
	case !edits:
		return tourSteps[:1]
	}
	return tourSteps
}

// toured reports whether a visitor has closed the steps.
func toured(r *http.Request) bool {
	c, err := r.Cookie(tourCookie)
	return err == nil && c.Value == tourClosed
}

// closeTour remembers that a visitor has closed the steps, or wants them again.
func (d *Desk) closeTour(w http.ResponseWriter, r *http.Request) {
	c := &http.Cookie{Name: tourCookie, Value: tourClosed, Path: "/", MaxAge: themeSeconds, HttpOnly: true, SameSite: http.SameSiteStrictMode}
	if r.PostFormValue("again") != "" {
		c.Value, c.MaxAge = "", -1
	}
	http.SetCookie(w, c)
	http.Redirect(w, r, ownPath(r.PostFormValue("back")), http.StatusSeeOther)
}

// demoID is the arena that a newcomer meets.
var demoID = strings.TrimSuffix(examples.Demo, ".yaml")

// Invented reports whether the arena is one that the program carries, to be
// changed as the visitor likes.
func (p arenaPage) Invented() bool { return p.Edits && isExample(p.Address.slug) }

// isExample reports whether the program carries an arena of this id.
func isExample(id string) bool {
	f, err := examples.Files.Open(id + ".yaml")
	if err != nil {
		return false
	}
	return f.Close() == nil
}

// firstPage leads a newcomer to the demo arena and everybody else to the list. A
// desk whose owner brought arenas opens on the list.
func (d *Desk) firstPage(w http.ResponseWriter, r *http.Request) {
	if !toured(r) && d.onlyExamples(r) {
		http.Redirect(w, r, "/arena/"+demoID, http.StatusSeeOther)
		return
	}
	d.listPage(w, r)
}

// onlyExamples reports whether the demo is on the shelf and nothing but examples.
func (d *Desk) onlyExamples(r *http.Request) bool {
	docs, err := d.shelf.Keeper().Documents(r.Context(), false)
	if err != nil {
		return false
	}
	demo := false
	for _, doc := range docs {
		if !isExample(doc.ID) {
			return false
		}
		demo = demo || doc.ID == demoID
	}
	return demo
}
