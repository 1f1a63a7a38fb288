package desk

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

// readsThoughPosted are the calls that send a body and change nothing, or nothing
// but what is the visitor's own.
var readsThoughPosted = map[string]bool{
	"POST /arena/{slug}/frame": true, "POST /arena/{slug}/frame/told": true, // marks are solved, a file's first bytes are read, and neither is kept
	"POST /arena/{slug}/live": true, "POST /tour": true, "POST /account": true, "POST /account/session": true,
	"POST /arena/{slug}/approvals/answer": true, // it counts from those who were asked, whatever their role
	"POST /api/arenas/{id}/try":           true, "POST /api/arenas/{id}/reach": true,
}

// openToAll are the addresses that anybody may ask for: all that a sign-in page
// needs, and nothing of any plan.
var openToAll = map[string]bool{
	"GET /sign-in": true, "POST /sign-in": true, "POST /sign-out": true, "POST /theme": true,
	"GET /assets/{hash}/{name}": true, "GET /favicon.ico": true,
	// The file that keeps the page at the glass, and that page behind the signature of a day link.
	"GET /card/{token}": true, "GET /card/{token}/card.pdf": true, "GET /card/{token}/game.ics": true, // somebody's card, behind the signature of its link
	"GET /phone.js": true, "GET /day/{token}": true, "GET /day/{token}/board": true, "GET /day/{token}/live": true, "POST /day/{token}/events": true, "GET /day/{token}/app.webmanifest": true,
}

// stewards are the calls that change where covers are, and nothing of any plan.
var stewards = map[string]bool{"POST /phone/{slug}/events": true, "POST /arena/{slug}/covers": true,
	"POST /arena/{slug}/inspections": true, "POST /arena/{slug}/incidents": true}

// TestTableOfRoles holds every address to the rule: open ones are listed above,
// what changes something wants a planner, the rest a viewer.
func TestTableOfRoles(t *testing.T) {
	table := exampleDesk(t).table
	if len(table) < 25 {
		t.Fatalf("only %d routes", len(table))
	}
	open := 0
	for _, r := range table {
		posted := !strings.HasPrefix(r.Pattern, "GET ") && r.Pattern != "/"
		switch {
		case r.Need == door.Open:
			open++
			if !openToAll[r.Pattern] {
				t.Errorf("%s is open to all", r.Pattern)
			}
		case stewards[r.Pattern] && r.Need == people.MindCovers:
		case posted && !readsThoughPosted[r.Pattern] && r.Need != people.Plan:
			t.Errorf("%s changes something and does not want a planner", r.Pattern)
		case r.Most <= 0 || r.Most > shell.Call || r.Answer == nil:
			t.Errorf("%s: at most %d bytes, answered %v", r.Pattern, r.Most, r.Answer != nil)
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
	for _, r := range d.table {
		if strings.Contains(r.Pattern, " /api/") && !strings.HasSuffix(r.Pattern, "openapi.json") {
			listed[r.Pattern] = true
		}
	}
	var spec struct {
		Paths map[string]map[string]struct{ Summary, OperationID string }
	}
	if err := json.Unmarshal(ask(t, d.Handler(), "GET", "/api/openapi.json", "").Body.Bytes(), &spec); err != nil {
		t.Fatal(err)
	}
	described := 0
	for path, item := range spec.Paths {
		for method, op := range item {
			described++
			if !listed[strings.ToUpper(method)+" "+path] {
				t.Errorf("%s %s is described and not in the table", method, path)
			}
			if op.Summary == "" || op.OperationID == "" {
				t.Errorf("%s %s lacks a summary or an id", method, path)
			}
		}
	}
	if described < 20 || described != len(listed) {
		t.Errorf("%d calls described, %d in the table", described, len(listed))
	}
}

// TestNothingIsReadableWithoutSignIn asks for every address as a stranger.
func TestNothingIsReadableWithoutSignIn(t *testing.T) {
	h, d, _ := ownDesk(t, true)
	asked := 0
	for _, r := range d.table {
		method, path := methodAndPath(t, r)
		if r.Need == door.Open {
			continue
		}
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
		"/api/arenas/quillhaven/edits": shell.Document + 1, "/api/arenas": shell.Document + 1, "/api/arenas/quillhaven/reach": shell.Call + 1,
		"/api/arenas/quillhaven/try": shell.Document + 1, "/api/arenas/quillhaven/restore": shell.Form + 1, "/api/arenas/quillhaven/away": shell.Form + 1,
	} {
		r := httptest.NewRequest("POST", "http://127.0.0.1:8417"+path, strings.NewReader(`{"base":1,"text":"`+strings.Repeat("x", size)+`"}`))
		r.Header.Set("Content-Type", "application/json")
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code != http.StatusRequestEntityTooLarge || w.Body.Len() > 4000 || strings.Contains(w.Body.String(), "Readings") {
			t.Errorf("%s with %d bytes: %d, %d bytes back: %.200s", path, size, w.Code, w.Body.Len(), w.Body)
		}
	}
}

// TestHeavyWorkWaitsForATurn: what may take the machine for seconds waits for its
// asker's turn; what a hand waits for, a drag and its preview, does not.
func TestHeavyWorkWaitsForATurn(t *testing.T) {
	heavy := map[string]bool{
		"GET /arena/{slug}/certificate.pdf": true, "GET /arena/{slug}/labels.pdf": true, "GET /arena/{slug}/replacement.pdf": true,
		"GET /arena/{slug}/seats.pdf": true, "GET /arena/{slug}/cards.pdf": true, "GET /arena/{slug}/games.ics": true, "GET /card/{token}/card.pdf": true,
		"GET /arena/{slug}/reach.png": true, "GET /arena/{slug}/guard": true, "GET /arena/{slug}/paper": true, "GET /arena/{slug}/picture.png": true, "GET /arena/{slug}/picture.svg": true,
		"POST /api/arenas/{id}/try": true, "GET /api/arenas/{id}/reach": true, "POST /api/arenas/{id}/reach": true, "GET /api/arenas/{id}/plan": true,
		"POST /arena/{slug}/frame": true, "POST /arena/{slug}/frame/take": true, "GET /arena/{slug}/frame/example.jpg": true,
		"GET /arena/{slug}/frames": true, "GET /arena/{slug}/frames.pdf": true, "GET /arena/{slug}/frames.csv": true, "GET /arena/{slug}/frames/readings.csv": true, "GET /arena/{slug}/frames/learnt.yaml": true,
		"GET /arena/{slug}/choose/{job}/letter": true, "GET /api/arenas/{id}/files/{kind}": true, "GET /api/arenas/{id}/diff": true, "POST /api/arenas/{id}/edits": true,
	}
	met := 0
	for _, r := range exampleDesk(t).table {
		if r.Heavy != heavy[r.Pattern] {
			t.Errorf("%s: heavy %v", r.Pattern, r.Heavy)
		}
		if r.Heavy {
			met++
		}
	}
	if met != len(heavy) {
		t.Errorf("%d heavy addresses, expected %d", met, len(heavy))
	}
}
