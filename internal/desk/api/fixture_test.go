package api_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/api"
	"example.org/rinkpane/internal/desk/parcel"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/keep/store/cluster"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

var server *cluster.Cluster

func TestMain(m *testing.M) {
	os.Exit(cluster.Run(m, &server))
}

// onEachStore runs one check against the API over both stores.
func onEachStore(t *testing.T, check func(t *testing.T, c *caller)) {
	t.Run("SQLite", func(t *testing.T) { check(t, call(t, folderStore(t))) })
	t.Run("PostgreSQL", func(t *testing.T) {
		s, err := store.OpenDSN(t.Context(), server.Database(t))
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { s.Close() })
		check(t, call(t, s))
	})
}

func folderStore(t testing.TB) *store.Store {
	t.Helper()
	s, err := store.OpenFolder(t.Context(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

// noon is the clock of the tests.
var noon = time.Date(2027, 1, 9, 12, 0, 0, 0, time.UTC)

func maker(t testing.TB) plan.Maker {
	t.Helper()
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	set, err := rules.Shipped(rules.Default)
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	return plan.Maker{Kit: k, Rules: sets}
}

// caller calls an API with the example arenas on its shelf.
type caller struct {
	t       testing.TB
	handler http.Handler
	shelf   *shelf.Shelf
}

func call(t testing.TB, keeper interface {
	revision.Keeper
	custody.Keeper
}) *caller {
	t.Helper()
	on := shelf.New(keeper, maker(t), func() time.Time { return noon })
	names, err := fs.Glob(examples.Files, "*.yaml")
	if err != nil || len(names) < 3 {
		t.Fatalf("examples %v, %v", names, err)
	}
	for _, name := range names {
		text, err := fs.ReadFile(examples.Files, name)
		if err != nil {
			t.Fatal(err)
		}
		doc, err := arena.Read(name, bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := on.Add(t.Context(), strings.TrimSuffix(name, ".yaml"), doc, "Ada", "an example"); err != nil {
			t.Fatal(err)
		}
	}
	mux := http.NewServeMux()
	api.Mount(mux, api.Options{
		Shelf: on, Packer: parcel.New(on, keeper, "rinkpane test"), Version: "test",
		Who: func(context.Context) string { return "Ada" }, Log: slog.New(slog.NewTextHandler(os.Stderr, nil)),
	})
	return &caller{t, mux, on}
}

// ask sends a request and returns the answer; body is JSON, "" for none.
func (c *caller) ask(method, path, body string) *httptest.ResponseRecorder {
	c.t.Helper()
	r := httptest.NewRequest(method, path, strings.NewReader(body))
	if body != "" {
		r.Header.Set("Content-Type", "application/json")
	}
	w := httptest.NewRecorder()
	c.handler.ServeHTTP(w, r)
	return w
}

// want sends a request, expects a status, and reads the answer's JSON.
func want[T any](c *caller, status int, method, path, body string) T {
	c.t.Helper()
	w := c.ask(method, path, body)
	var out T
	if w.Code != status {
		c.t.Fatalf("%s %s: %d, expected %d: %.600s", method, path, w.Code, status, w.Body)
	}
	if w.Body.Len() > 0 {
		if err := json.Unmarshal(w.Body.Bytes(), &out); err != nil {
			c.t.Fatalf("%s %s: %v in %.300s", method, path, err, w.Body)
		}
	}
	return out
}

// text returns a version's text; 0 is the newest.
func (c *caller) text(id string, version int) string {
	c.t.Helper()
	return c.ask("GET", fmt.Sprintf("/api/arenas/%s/text?version=%d", id, version), "").Body.String()
}

// quote returns text as a JSON string.
func quote(text string) string {
	b, _ := json.Marshal(text) // a string always can
	return string(b)
}
