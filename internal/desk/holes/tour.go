package holes

import (
	"net/http"

	"example.org/rinkpane/internal/desk/shell"
)

// A newcomer's first minute: the demo arena is open, a sentence says what this
// is, and three steps show how to begin. Nothing covers the page and nothing
// holds the focus; once closed, the steps stay away.

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
	case shell.Toured(r):
		return nil
	case !edits:
		return tourSteps[:1]
	}
	return tourSteps
}

func (d area) closeTour(w http.ResponseWriter, r *http.Request) error {
	shell.CloseTour(w, r.PostFormValue("again") != "")
	return d.Goto(w, r, shell.OwnPath(r.PostFormValue("back")))
}

// Invented reports whether the arena is one that the program carries, to be
// changed as the visitor likes.
func (p arenaPage) Invented() bool { return p.Edits && shell.IsExample(p.Address.Slug) }
