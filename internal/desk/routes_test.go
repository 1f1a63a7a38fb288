package desk

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/danielgtaylor/huma/v2"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/keep/people"
)

// readsThoughPosted are the calls that send a body and change nothing.
var readsThoughPosted = map[string]bool{
	"POST /arena/{slug}/live": true, "POST /tour": true,
	"POST /api/arenas/{id}/try": true, "POST /api/arenas/{id}/reach": true,
}

// openToAll are the addresses that anybody may ask for: all that a sign-in page
// needs, and nothing of any plan.
var openToAll = map[string]bool{
	"GET /sign-in": true, "POST /sign-in": true, "POST /sign-out": true, "POST /theme": true,
	"GET /assets/{hash}/{name}": true, "GET /favicon.ico": true,
}

// TestTableOfRoles holds every address to the rule: open ones are listed above,
// what changes something wants a planner, the rest a viewer.
func TestTableOfRoles(t *testing.T) {
	table := exampleDesk(t).table(func(http.ResponseWriter, *http.Request) {})
	if len(table) < 25 {
		t.Fatalf("only %d routes", len(table))
	}
	open := 0
	for _, r := range table {
		posted := strings.HasPrefix(r.pattern, "POST ")
		switch {
		case r.need == door.Open:
			open++
			if !openToAll[r.pattern] {
				t.Errorf("%s is open to all", r.pattern)
			}
		case posted && !readsThoughPosted[r.pattern] && r.need != people.Plan:
			t.Errorf("%s changes something and does not want a planner", r.pattern)
		case r.most <= 0 || r.most > aCall || r.answer == nil:
			t.Errorf("%s: at most %d bytes, answered %v", r.pattern, r.most, r.answer != nil)
		}
	}
	if open != len(openToAll) {
		t.Errorf("%d open routes, %d expected", open, len(openToAll))
	}
}

// TestEveryCallIsInTheTable: what the API describes can be reached, and nothing else.
func TestEveryCallIsInTheTable(t *testing.T) {
	d := exampleDesk(t)
	listed := map[string]bool{}
	for _, r := range d.table(nil) {
		if strings.Contains(r.pattern, " /api/") && !strings.HasSuffix(r.pattern, "openapi.json") {
			listed[r.pattern] = true
		}
	}
	described := 0
	for path, item := range d.spec.Paths {
		for _, op := range []*huma.Operation{item.Get, item.Post, item.Put, item.Patch, item.Delete} {
			if op == nil {
				continue
			}
			described++
			if !listed[op.Method+" "+path] {
				t.Errorf("%s %s is described and not in the table", op.Method, path)
			}
			if op.Summary == "" || op.OperationID == "" {
				t.Errorf("%s %s lacks a summary or an id", op.Method, path)
			}
		}
	}
	if described < 15 || described != len(listed) {
		t.Errorf("%d calls described, %d in the table", described, len(listed))
	}
}

// TestNothingIsReadableWithoutSignIn asks for every address as a stranger.
func TestNothingIsReadableWithoutSignIn(t *testing.T) {
	h, d, _ := ownDesk(t, true)
	asked := 0
	for _, r := range d.table(nil) {
		method, path, ok := strings.Cut(r.pattern, " ")
		if !ok {
			method, path = "GET", r.pattern
		}
		if r.need == door.Open {
			continue
		}
		path = strings.NewReplacer("{$}", "", "{slug}", "quillhaven", "{id}", "quillhaven", "{number}", "1", "{kind}", "plan.json").Replace(path)
		w := httptest.NewRecorder()
		h.ServeHTTP(w, httptest.NewRequest(method, "http://desk.example"+path, nil))
		asked++
		toSignIn := w.Code == http.StatusSeeOther && strings.HasPrefix(w.Header().Get("Location"), "/sign-in")
		if !toSignIn && w.Code != http.StatusUnauthorized {
			t.Errorf("%s %s: %d for a stranger", method, path, w.Code)
		}
		if strings.Contains(w.Body.String(), "Tidewater") {
			t.Errorf("%s %s tells a stranger of a plan", method, path)
		}
	}
	if asked < 20 {
		t.Errorf("only %d addresses asked", asked)
	}
}

// TestLargeBodiesAreRefused sends more than each address takes.
func TestLargeBodiesAreRefused(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	for path, size := range map[string]int{
		"/api/arenas/quillhaven/edits": aDocument + 1, "/api/arenas": aDocument + 1,
		"/api/arenas/quillhaven/try": aDocument + 1, "/api/arenas/quillhaven/restore": aForm + 1, "/api/arenas/quillhaven/away": aForm + 1,
	} {
		r := httptest.NewRequest("POST", "http://127.0.0.1:8417"+path, strings.NewReader(`{"base":1,"text":"`+strings.Repeat("x", size)+`"}`))
		r.Header.Set("Content-Type", "application/json")
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code != http.StatusRequestEntityTooLarge || w.Body.Len() > 4000 {
			t.Errorf("%s with %d bytes: %d, %d bytes back: %.200s", path, size, w.Code, w.Body.Len(), w.Body)
		}
	}
}
