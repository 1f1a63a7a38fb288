package desk

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
)

// TestImportOffersANewVersion: an edited file goes on top of the arena that it came
// from, or beside it, as the visitor says; an unchanged one says which version it is.
func TestImportOffersANewVersion(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	text, _ := headText(t, d, "quillhaven")
	says(t, fillIn(t, h, "/import", map[string]string{"file": text}), 200, "This file is version 1 of Tidewater Pavilion, to the letter.")
	edited := strings.Replace(text, "ledge: 9 in", "ledge: 10 in", 1)
	says(t, fillIn(t, h, "/import", map[string]string{"text": edited}), 200, "seems to come from Tidewater Pavilion, version 1, edited since", "Save as a new version of Tidewater Pavilion", "ledge: 10 in")
	if _, n := headText(t, d, "quillhaven"); n != 1 {
		t.Fatal("asking has saved")
	}
	w := fillIn(t, h, "/import", map[string]string{"text": strings.ReplaceAll(edited, "\n", "\r\n"), "base": "1", "as": "quillhaven"})
	if w.Code != 303 || w.Header().Get("Location") != demoPage {
		t.Errorf("%d to %q", w.Code, w.Header().Get("Location"))
	}
	if now, n := headText(t, d, "quillhaven"); n != 2 || now != edited {
		t.Errorf("version %d", n)
	}
	// Made from version 1, while version 2 is the newest: both are shown to be joined.
	other := strings.Replace(text, "height: 42 in", "height: 41 in", 1)
	says(t, fillIn(t, h, "/import", map[string]string{"text": other, "base": "1", "as": "quillhaven"}), 409, "ledge: 10 in")
	// Two of one name are told apart.
	says(t, fillIn(t, h, "/import", map[string]string{"text": text, "as": "new"}), 303)
	says(t, ask(t, h, "GET", "/arenas", ""), 200, "Tidewater Pavilion (quillhaven)", "Tidewater Pavilion (tidewater-pavilion)")
	says(t, ask(t, h, "GET", demoPage+"/compare", ""), 200, "Tidewater Pavilion (tidewater-pavilion), version 1")
}

// TestPictureIsNoDocument: what was sent by mistake is told in a line, and nothing
// of it comes back.
func TestPictureIsNoDocument(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	for sent, says := range map[string]string{
		"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00": "This is a picture, not a document",
		"\xff\xd8\xff\xe0\x00\x10JFIF\x00":        "This is a picture, not a document",
		"%PDF-1.7\n\xff\xff":                      "This is a PDF, not a document",
		"PK\x03\x04\x14\x00\x00\x00":              "This is an archive, not a document",
	} {
		for _, path := range []string{"/import", "/library/kit"} {
			page := fillIn(t, h, path, map[string]string{"file": sent})
			if page.Code != 422 || !strings.Contains(page.Body.String(), says) || strings.Contains(page.Body.String(), "IHDR") || strings.Contains(page.Body.String(), "JFIF") {
				t.Errorf("%s: %.8q: %d\n%s", path, sent, page.Code, strings.Join(between(page.Body.String(), `role="alert"`, "</div>"), ""))
			}
		}
	}
}

// TestPuttingAwayAsks, and what is away can be found and brought back.
func TestPuttingAwayAsks(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	says(t, ask(t, h, "GET", demoPage+"/versions", ""), 200, `href="`+demoPage+`/away"`)
	says(t, ask(t, h, "GET", demoPage+"/away", ""), 200, "Put Tidewater Pavilion away?", "Nothing is deleted")
	says(t, ask(t, h, "GET", "/arenas", ""), 200, `class="card" href="`+demoPage)
	says(t, ask(t, h, "POST", demoPage+"/away", "away=yes"), 303)
	page := ask(t, h, "GET", "/arenas", "").Body.String()
	if strings.Contains(page, `class="card" href="`+demoPage) || !strings.Contains(page, "Bring Tidewater Pavilion, quillhaven, back") {
		t.Error("what is away is listed, or cannot be found")
	}
	says(t, ask(t, h, "POST", demoPage+"/away", "away=no"), 303)
	says(t, ask(t, h, "GET", "/arenas", ""), 200, `class="card" href="`+demoPage)
}

// TestEmptyDeskOffersTheDemo, and says what to do next.
func TestEmptyDeskOffersTheDemo(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	for _, id := range exampleIDs(t) {
		says(t, ask(t, h, "POST", "/arena/"+id+"/away", "away=yes"), 303)
	}
	says(t, ask(t, h, "GET", "/", ""), 200, "No arena is here yet.", `action="/demo"`, `href="/new"`, `href="/import"`)
	w := ask(t, h, "POST", "/demo", "")
	if w.Code != 303 || w.Header().Get("Location") != demoPage {
		t.Errorf("%d to %q", w.Code, w.Header().Get("Location"))
	}
	says(t, ask(t, h, "GET", "/arenas", ""), 200, "Tidewater Pavilion")
}

// TestFirstPageShowsMaps: each arena as a map with its holes' verdicts, and one
// button above the others.
func TestFirstPageShowsMaps(t *testing.T) {
	page := ask(t, exampleDesk(t).Handler(), "GET", "/arenas", "").Body.String()
	for part, n := range map[string]int{`class="card"`: len(exampleIDs(t)), `class="sheet sheet-map-`: len(exampleIDs(t)), `class="press" `: 1} {
		if got := strings.Count(page, part); got != n {
			t.Errorf("%s: %d, want %d", part, got, n)
		}
	}
	for _, status := range []rules.Status{rules.Pass, rules.Fail, rules.Unknown} {
		if !strings.Contains(page, "hole-"+string(status)) {
			t.Errorf("no hole is drawn as %s", status)
		}
	}
}

// TestRolesAreChangedOnTheWeb: by a planner, never so that nobody plans.
func TestRolesAreChangedOnTheWeb(t *testing.T) {
	muchComputed(t)
	h, _, s := ownDesk(t, false)
	says(t, ask(t, h, "GET", "/people", ""), 200, "<option selected>planner</option>") // the first can be nothing else
	first := url.Values{"name": {"Ada"}, "role": {"planner"}, "password": {"long enough word"}, "code": {firstCode}}
	says(t, ask(t, h, "POST", "/people", first.Encode()), 303)
	in := ask(t, h, "POST", "/sign-in", "name=Ada&password=long+enough+word").Result().Cookies()
	post := func(path, form string) *httptest.ResponseRecorder {
		r := httptest.NewRequest("POST", "http://127.0.0.1:8417"+path, strings.NewReader(form))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.AddCookie(in[len(in)-1])
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w
	}
	says(t, post("/people", "name=Bo&role=viewer&password=long+enough+word"), 303)
	says(t, post("/people/role", "name=Ada&role=viewer"), 422, "last planner")
	says(t, post("/people/role", "name=Bo&role=king"), 422, "write viewer, photographer, steward or planner")
	says(t, post("/people/role", "name=Nobody&role=steward"), http.StatusNotFound)
	says(t, post("/people/role", "name=Bo&role=steward"), 303)
	if bo, err := s.Person(t.Context(), "Bo"); err != nil || bo.Role != "steward" {
		t.Errorf("Bo is a %s, %v", bo.Role, err)
	}
}
