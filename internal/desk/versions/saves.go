package versions

import (
	"errors"
	"net/http"
	"slices"
	"strconv"
	"time"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
)

// saving is one event: what somebody saved.
type saving struct {
	Version int    `json:"version"`
	Who     string `json:"who"`
	What    string `json:"what"`
}

// How often the keeper is asked for what another program saved, and how many saves one
// event's round tells at most; own choice.
const (
	savesPause = 5 * time.Second
	mostSaves  = 40
)

// errCrowded answers the listener who is one too many.
var errCrowded = &shell.Refusal{Status: http.StatusServiceUnavailable, What: "As many listen to this desk as may.",
	Cure: "Pages work as before: load one again to see what others saved.", WaitUntil: "60"}

// saves answers GET /arena/{slug}/saves?since=N: server-sent events of every save
// after version N, or after that of Last-Event-ID. An event's id is its version. It
// ends with the visitor, with the desk, and after [shell.LongestStream].
func (d area) saves(w http.ResponseWriter, r *http.Request) error {
	id := r.PathValue("slug")
	doc, err := d.Shelf.Keeper().Document(r.Context(), id)
	if err == nil && doc.Kind != revision.Arena {
		err = revision.ErrNone
	}
	if err != nil {
		return err
	}
	news, leave, err := d.Shelf.Watch(id)
	if errors.Is(err, shelf.ErrCrowded) {
		return errCrowded
	}
	if err != nil {
		return err
	}
	defer leave()
	since := numberOr(r.Header.Get("Last-Event-ID"), numberOr(r.FormValue("since"), doc.Head))
	d.tellSaves(r, shell.NewStream(w), id, since, news)
	return nil
}

// tellSaves sends what is saved from now on, and what was since a version.
func (d area) tellSaves(r *http.Request, to shell.Stream, id string, since int, news <-chan struct{}) {
	d.Follow(r, to, shell.Waking{News: news, Pause: savesPause}, shell.LongestStream, func() bool {
		fresh, err := d.savedSince(r, id, since)
		if err != nil && r.Context().Err() == nil {
			d.Log.WarnContext(r.Context(), "desk", "saves of", id, "error", err)
		}
		for _, v := range fresh {
			since = v.Number
			if !to.Send(strconv.Itoa(v.Number), "saved", saving{v.Number, door.Named(v.Who), v.What}) {
				return false
			}
		}
		return true
	})
}

// savedSince returns the versions after one, the oldest first, at most [mostSaves]
// of the newest.
func (d area) savedSince(r *http.Request, id string, since int) ([]revision.Version, error) {
	doc, err := d.Shelf.Keeper().Document(r.Context(), id)
	if err != nil || doc.Head <= since {
		return nil, err
	}
	fresh, err := d.Shelf.Keeper().History(r.Context(), id, min(doc.Head-since, mostSaves))
	slices.Reverse(fresh)
	return slices.DeleteFunc(fresh, func(v revision.Version) bool { return v.Number <= since }), err
}
