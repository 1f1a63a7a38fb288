package desk

import (
	"bytes"
	"crypto/rand"
	"log/slog"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/store"
)

// ownDesk is a desk that a test may change.
func ownDesk(t testing.TB, signIn bool) (http.Handler, *Desk, *store.Store) {
	t.Helper()
	on, s := exampleShelf(t, t.TempDir())
	t.Cleanup(func() { s.Close() })
	d, err := New(Options{Shelf: on, Register: s, Covers: s, SignIn: signIn, Code: firstCode, Version: "test",
		Log: slog.New(slog.NewTextHandler(os.Stderr, nil)), Now: time.Now, Random: rand.Reader})
	if err != nil {
		t.Fatal(err)
	}
	return d.Handler(), d, s
}

// fillIn posts a form with parts, as a browser does.
func fillIn(t *testing.T, h http.Handler, path string, fields map[string]string) *httptest.ResponseRecorder {
	t.Helper()
	var body bytes.Buffer
	m := multipart.NewWriter(&body)
	for name, value := range fields {
		w, err := m.CreateFormField(name)
		if name == "file" || name == "photo" {
			w, err = m.CreateFormFile(name, "my.yaml")
		}
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(value)); err != nil {
			t.Fatal(err)
		}
	}
	if err := m.Close(); err != nil {
		t.Fatal(err)
	}
	r := httptest.NewRequest("POST", "http://127.0.0.1:8417"+path, &body)
	r.Header.Set("Content-Type", m.FormDataContentType())
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

func headText(t *testing.T, d *Desk, id string) (text string, version int) {
	t.Helper()
	v, err := d.shell.Shelf.Keeper().Version(t.Context(), id, 0)
	if err != nil {
		t.Fatal(err)
	}
	return v.Text, v.Number
}

// says fails unless an answer has a status and holds some words.
func says(t *testing.T, w *httptest.ResponseRecorder, status int, words ...string) {
	t.Helper()
	if w.Code != status {
		t.Errorf("%d, expected %d: %.500s", w.Code, status, w.Body)
	}
	for _, x := range words {
		if !strings.Contains(w.Body.String(), x) {
			t.Errorf("the page lacks %q", x)
		}
	}
}

func TestImportKeepsWhatWasTyped(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	text, _ := headText(t, d, "quillhaven")
	text = strings.Replace(text, "name: Tidewater Pavilion", "name: Far Rink", 1)
	broken := strings.Replace(text, "height: 42 in ", "height: 42 ", 1)
	says(t, fillIn(t, h, "/import", map[string]string{"text": strings.ReplaceAll(broken, "\n", "\r\n")}), 422,
		"Line 18, boards.height:", "name: Far Rink", `value="18" class="here"`)
	w := fillIn(t, h, "/import", map[string]string{"text": strings.ReplaceAll(text, "\n", "\r\n")})
	if w.Code != 303 || w.Header().Get("Location") != "/arena/far-rink" {
		t.Fatalf("%d to %s", w.Code, w.Header().Get("Location"))
	}
	if got, _ := headText(t, d, "far-rink"); got != text {
		t.Error("the text came in changed")
	}
	says(t, fillIn(t, h, "/import", map[string]string{"file": text, "text": "", "as": "new"}), 303)
	if got, _ := headText(t, d, "far-rink-2"); got != text {
		t.Error("the file came in changed")
	}
	says(t, fillIn(t, h, "/import", map[string]string{"text": ""}), 422, "empty")
	says(t, fillIn(t, h, "/import", map[string]string{"file": "\x00\x01\x02"}), 422, "not UTF-8")
	long := strings.Repeat("x", 100_000)
	if w := fillIn(t, h, "/import", map[string]string{"file": long}); strings.Count(w.Body.String(), "x") > len(long)+2000 {
		t.Errorf("a line of %d characters comes back twice in %d", len(long), w.Body.Len())
	}
	says(t, fillIn(t, h, "/import", map[string]string{"text": `"><script>alert(1)</script>`}), 422, "&lt;script&gt;")
	says(t, fillIn(t, h, "/import", map[string]string{"text": strings.Repeat("x", shell.Document)}), 413, "megabyte")
}

func TestTwoWhoSaveAreToldAndCanMerge(t *testing.T) {
	h, d, _ := ownDesk(t, false)
	text, _ := headText(t, d, "quillhaven")
	theirs := strings.Replace(text, "ledge: 9 in", "ledge: 10 in", 1)
	mine := strings.Replace(text, "height: 58 in", "height: 60 in", 1)
	path := "/arena/quillhaven/text"
	says(t, ask(t, h, "GET", path, ""), 200, "Tidewater Pavilion", `name="base" value="1"`, `class="ways"`)
	says(t, fillIn(t, h, path, map[string]string{"base": "1", "text": theirs, "what": "ledge measured"}), 303)
	w := fillIn(t, h, path, map[string]string{"base": "1", "text": mine})
	says(t, w, 409, "version 2", "ledge measured", "ledge: 10 in", "height: 60 in", `name="base" value="2"`)
	if now, n := headText(t, d, "quillhaven"); n != 2 || now != theirs {
		t.Fatal("the second save has overwritten the first")
	}
	clash := strings.Replace(text, "ledge: 9 in", "ledge: 11 in", 1)
	says(t, fillIn(t, h, path, map[string]string{"base": "1", "text": clash}), 409, "both changed the same lines", "ledge: 11 in")
	joined := strings.Replace(mine, "ledge: 9 in", "ledge: 10 in", 1)
	slip := strings.Replace(joined, "height: 60 in", "height: 60", 1)
	says(t, fillIn(t, h, path, map[string]string{"base": "2", "text": slip, "what": "both"}), 422, "needs its unit", `name="base" value="2"`, `value="both"`, "height: 60\n")
	says(t, fillIn(t, h, path, map[string]string{"base": "2", "text": joined}), 303)
	says(t, fillIn(t, h, path, map[string]string{"base": "2", "text": strings.Replace(joined, "height: 60 in", "height: 61 in", 1)}), 409, "version 3", `name="base" value="3"`, "height: 61 in")
	if _, n := headText(t, d, "quillhaven"); n != 3 {
		t.Errorf("version %d after the merge", n)
	}
	says(t, fillIn(t, h, path, map[string]string{"base": "3", "text": "nonsense"}), 422, "nonsense")
	says(t, fillIn(t, h, path, map[string]string{"base": "77", "text": text}), 404)
	says(t, fillIn(t, h, path, map[string]string{"base": "x", "text": text}), 400)
	says(t, fillIn(t, h, "/arena/nowhere/text", map[string]string{"base": "1", "text": text}), 404)
}

func TestVersionsPageUndoesAndRestores(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	first, _ := headText(t, d, "quillhaven")
	second := strings.Replace(first, "ledge: 9 in", "ledge: 10 in", 1)
	says(t, fillIn(t, h, "/arena/quillhaven/text", map[string]string{"base": "1", "text": second, "what": "ledge <measured>"}), 303)
	says(t, ask(t, h, "GET", "/arena/quillhaven/versions", ""), 200, "ledge &lt;measured&gt;", "-  ledge: 9 in", "&#43;  ledge: 10 in", "Undo", "take?version=2")
	says(t, ask(t, h, "GET", "/arena/quillhaven/take", ""), 200, "cut.zip?version=2", "hole.dxf?hole=B1&amp;version=2")
	says(t, ask(t, h, "POST", "/arena/quillhaven/restore", "base=2&version=1&what=undo"), 303)
	if now, n := headText(t, d, "quillhaven"); n != 3 || now != first {
		t.Error("undo did not put the first text on top")
	}
	says(t, ask(t, h, "GET", "/arena/quillhaven/versions?from=2&to=3", ""), 200, "Redo", "from version 2 to 3")
	says(t, ask(t, h, "POST", "/arena/quillhaven/restore", "base=2&version=2"), 409)
	says(t, ask(t, h, "POST", "/arena/quillhaven/restore", "base=3&version=9"), 404)
	says(t, ask(t, h, "GET", "/arena/quillhaven/versions?to=9", ""), 404)
	says(t, ask(t, h, "POST", "/arena/quillhaven/away", "away=yes"), 303)
	if strings.Contains(ask(t, h, "GET", "/arenas", "").Body.String(), `class="card" href="/arena/quillhaven"`) {
		t.Error("an arena put away is listed")
	}
	says(t, ask(t, h, "POST", "/arena/quillhaven/away", "away=no"), 303)
	says(t, ask(t, h, "GET", "/arenas", ""), 200, "Tidewater")
}

func TestPeoplePageLetsIn(t *testing.T) {
	muchComputed(t)
	h, _, s := ownDesk(t, false)
	form := func(name, role, password string) string {
		return url.Values{"name": {name}, "role": {role}, "password": {password}, "code": {" " + strings.ToLower(firstCode)}}.Encode()
	}
	says(t, ask(t, h, "GET", "/people", ""), 200, "Nobody is set up", `name="code"`)
	for _, code := range []string{"", "QX3L", firstCode + "A"} {
		says(t, ask(t, h, "POST", "/people", "name=Ada&role=planner&password=long+enough+word&code="+code), 403, "code that the terminal", `value="Ada"`)
	}
	says(t, ask(t, h, "POST", "/people", form("Bo", "viewer", "long enough word")), 422, "must be a planner", `value="Bo"`)
	says(t, ask(t, h, "POST", "/people", form("Ada", "planner", "short")), 422, "5 characters")
	says(t, ask(t, h, "POST", "/people", form("Ada", "king", "long enough word")), 422, "viewer, photographer")
	says(t, ask(t, h, "POST", "/people", form("Ada", "planner", "long enough word")), 303)
	if p, err := s.Person(t.Context(), "Ada"); err != nil || p.Role != people.Planner {
		t.Fatalf("%+v, %v", p, err)
	}
	says(t, ask(t, h, "GET", "/people", ""), 303) // everybody must sign in now
}

// TestSignInOverHTTP walks from a shut door to a page and out again.
func TestSignInOverHTTP(t *testing.T) {
	muchComputed(t)
	h, _, s := ownDesk(t, true)
	hash, err := people.Hash("long enough word", rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Alter(t.Context(), people.Adding(people.Person{Name: "Vi", Role: people.Viewer, Password: hash, Since: time.Now()}), people.Entry{}); err != nil {
		t.Fatal(err)
	}
	w := ask(t, h, "GET", "/arena/quillhaven?hole=B2", "")
	if to := w.Header().Get("Location"); w.Code != 303 || to != "/sign-in?back=%2Farena%2Fquillhaven%3Fhole%3DB2" {
		t.Fatalf("%d to %q", w.Code, to)
	}
	says(t, ask(t, h, "GET", "/sign-in", ""), 200, "Password")
	says(t, ask(t, h, "POST", "/sign-in", "name=Vi&password=wrong"), 401, "do not belong together", `value="Vi"`)
	w = ask(t, h, "POST", "/sign-in", url.Values{"name": {"Vi"}, "password": {"long enough word"}, "back": {"//evil.example"}}.Encode())
	if w.Code != 303 || w.Header().Get("Location") != "/" || len(w.Result().Cookies()) != 2 {
		t.Fatalf("%d to %q", w.Code, w.Header().Get("Location"))
	}
	as := func(method, path string) *httptest.ResponseRecorder {
		r := httptest.NewRequest(method, path, nil)
		r.AddCookie(w.Result().Cookies()[1])
		out := httptest.NewRecorder()
		h.ServeHTTP(out, r)
		return out
	}
	says(t, as("GET", "/arenas"), 200, `<a href="/account">Vi</a>, viewer`, "Sign out", "Tidewater")
	says(t, as("GET", "/import"), 403, "role does not allow")
	says(t, as("POST", "/api/arenas/quillhaven/edits"), 403, "planner")
	says(t, as("POST", "/sign-out"), 303)
	says(t, as("GET", "/arenas"), 303)
}
