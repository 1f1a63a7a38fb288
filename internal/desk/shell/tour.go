package shell

import (
	"net/http"
	"slices"
	"strings"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/keep/revision"
)

const (
	tourCookie = "rinkpane-tour"
	tourClosed = "closed"
)

// Toured reports whether a visitor has closed the first steps.
func Toured(r *http.Request) bool {
	c, err := r.Cookie(tourCookie)
	return err == nil && c.Value == tourClosed
}

// CloseTour remembers that a visitor has closed the steps, or wants them again.
func CloseTour(w http.ResponseWriter, again bool) {
	if again {
		Remember(w, tourCookie, "")
		return
	}
	Remember(w, tourCookie, tourClosed)
}

// DemoID is the arena that a newcomer meets.
var DemoID = strings.TrimSuffix(examples.Demo, ".yaml")

// IsExample reports whether the program carries an arena of this id.
func IsExample(id string) bool {
	f, err := examples.Files.Open(id + ".yaml")
	if err != nil {
		return false
	}
	return f.Close() == nil
}

// OnlyExamples reports whether the demo is among some arenas and nothing but examples.
func OnlyExamples(docs []revision.Document) bool {
	demo := slices.ContainsFunc(docs, func(d revision.Document) bool { return d.ID == DemoID })
	return demo && !slices.ContainsFunc(docs, func(d revision.Document) bool { return !IsExample(d.ID) })
}
