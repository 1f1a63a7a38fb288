package desk

import (
	"context"
	"crypto/rand"
	"fmt"
	"log/slog"
	"net/http"
	"net/url"
	"os"
	"testing"
	"time"

	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/keep/store"
)

// fullStore is a store on a disk without room: what is there can be read.
type fullStore struct{ *store.Store }

func (fullStore) Save(context.Context, string, string, int, revision.Draft) (revision.Version, error) {
	return revision.Version{}, revision.ErrFull
}

func (fullStore) Add(context.Context, revision.Kind, string, string, revision.Draft) (revision.Version, error) {
	return revision.Version{}, revision.ErrFull
}

func (fullStore) SetAway(_ context.Context, id string, _ bool) error {
	return fmt.Errorf("putting %q away: %w", id, revision.ErrFull)
}

func (fullStore) Alter(context.Context, people.Edit, people.Entry) error { return revision.ErrFull }

// TestFullDiskIsSaid fills the disk up: every form says so, and keeps what was
// typed.
func TestFullDiskIsSaid(t *testing.T) {
	muchComputed(t)
	_, s := exampleShelf(t, t.TempDir())
	defer s.Close()
	full := fullStore{s}
	d, err := New(Options{Shelf: shelf.New(full, exampleMaker(t), time.Now), Register: full, Covers: full, Code: firstCode, Version: "test",
		Log: slog.New(slog.NewTextHandler(os.Stderr, nil)), Now: time.Now, Random: rand.Reader})
	if err != nil {
		t.Fatal(err)
	}
	h := d.Handler()
	text, _ := headText(t, d, "quillhaven")
	const said = "isk is full"
	post := func(path string, fields url.Values, words ...string) {
		t.Helper()
		says(t, ask(t, h, "POST", path, fields.Encode()), http.StatusInsufficientStorage, append(words, said)...)
	}
	post(demoPage+"/holes", url.Values{"base": {"1"}, "hole": {"B2"}, "act": {"right"}, "back": {"hole=B2"}}, "Hole B2")
	post(demoPage+"/survey/boards", url.Values{"base": {"1"}, "height": {"41 in"}, "ledge": {"9 in"}, "setback": {"1 1/2 in"}}, `value="41 in"`)
	post(demoPage+"/text", url.Values{"base": {"1"}, "text": {text + "\n# mine\n"}}, "# mine")
	post("/import", url.Values{"text": {text + "\n# mine\n"}, "as": {"new"}}, "# mine")
	post(demoPage+"/away", url.Values{"away": {"yes"}})
	post("/people", url.Values{"name": {"Ada"}, "role": {"planner"}, "password": {"long enough for all"}, "code": {firstCode}}, `value="Ada"`)
}
