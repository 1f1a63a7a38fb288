package desk

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"example.org/rinkpane/internal/desk/shell"
)

// ask sends one request to a desk of the examples, as this machine's browser would.
func ask(t *testing.T, h http.Handler, method, target, body string) *httptest.ResponseRecorder {
	t.Helper()
	r := httptest.NewRequest(method, "http://127.0.0.1:8417"+target, strings.NewReader(body))
	if body != "" {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

func TestPagesAnswer(t *testing.T) {
	h := exampleDesk(t).Handler()
	cases := []struct {
		target string
		status int
		says   string
	}{
		{"/", 303, "/arena/quillhaven"},
		{"/arenas", 200, "Tidewater Pavilion"},
		{demoPage, 200, "Hole B1"},
		{demoPage + "?hole=A2", 200, "Hole A2"},
		{demoPage + "?hole=A2&units=metric", 200, "60.96 m"},
		{demoPage + "?hole=A2&units=imperial", 200, "200 ft"},
		{demoPage + "?units=furlongs", 400, "not known"},
		{demoPage + "?hole=nobody", 404, "no hole of that name"},
		{demoPage + "?hole=" + url.QueryEscape(`"><script>alert(1)</script>`), 404, "no hole of that name"},
		{"/arena/nowhere", 404, "No arena has this address"},
		{"/arena/..%2f..%2fetc%2fpasswd", 404, "No arena"},
		{"/assets/0123/page.css", 404, "no page here"},
		{"/nothing", 404, "no page here"},
	}
	for _, c := range cases {
		w := ask(t, h, "GET", c.target, "")
		if w.Code != c.status || !strings.Contains(w.Body.String(), c.says) {
			t.Errorf("GET %s: %d, expected %d and %q in\n%.400s", c.target, w.Code, c.status, c.says, w.Body)
		}
		if strings.Contains(w.Body.String(), "<script>alert") {
			t.Errorf("GET %s repeats a script of the request", c.target)
		}
	}
}

// TestEveryAnswerCarriesItsGuards names what a browser must be told: no script
// or style inside a page, nothing from elsewhere, in no frame.
func TestEveryAnswerCarriesItsGuards(t *testing.T) {
	h := exampleDesk(t).Handler()
	wanted := map[string]string{
		"Content-Security-Policy": "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; " +
			"font-src 'self'; connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
		"X-Content-Type-Options":       "nosniff",
		"Referrer-Policy":              "no-referrer",
		"Cross-Origin-Opener-Policy":   "same-origin",
		"Cross-Origin-Resource-Policy": "same-origin",
	}
	for _, target := range []string{"/", demoPage, "/nothing", "/favicon.ico", "/sign-in", "/api/arenas", "/api/none"} {
		w := ask(t, h, "GET", target, "")
		for name, want := range wanted {
			if got := w.Header().Get(name); got != want {
				t.Errorf("GET %s: %s is %q, expected %q", target, name, got, want)
			}
		}
	}
}

// TestPolicyForbidsByDefault reads the policy as a browser does: nothing is
// allowed but what is named, and nothing named lets in a script or style from a
// page's text.
func TestPolicyForbidsByDefault(t *testing.T) {
	policy := ask(t, exampleDesk(t).Handler(), "GET", "/", "").Header().Get("Content-Security-Policy")
	if !strings.HasPrefix(policy, "default-src 'none'; ") {
		t.Errorf("the policy does not begin by forbidding everything: %s", policy)
	}
	for _, bad := range []string{"unsafe", "*", "data:", "blob:", "http:", "https:"} {
		if strings.Contains(policy, bad) {
			t.Errorf("the policy allows %s: %s", bad, policy)
		}
	}
}

func TestPagesHoldNoStyleAndNoScript(t *testing.T) {
	muchComputed(t)
	h := exampleDesk(t).Handler()
	for _, target := range samplePages(t) {
		body := ask(t, h, "GET", target, "").Body.String()
		for _, bad := range []string{"<style", " style=", "javascript:", " onclick=", "http://", "//cdn"} {
			body := strings.ReplaceAll(body, `xmlns="http://www.w3.org/2000/svg"`, "")
			if strings.Contains(body, bad) {
				t.Errorf("GET %s holds %q, which the policy forbids", target, bad)
			}
		}
		if strings.Count(body, "<script") != 1 {
			t.Errorf("GET %s holds %d scripts, expected the one module", target, strings.Count(body, "<script"))
		}
	}
}

func TestOtherHostsAreRefused(t *testing.T) {
	h := exampleDesk(t).Handler()
	for host, want := range map[string]int{
		"127.0.0.1:8417": 200, "localhost:1": 200, "[::1]:8417": 200, "127.9.9.9": 200,
		"evil.example:8417": 421, "192.0.2.7:8417": 421, "localhost.evil.example": 421, "": 421,
	} {
		r := httptest.NewRequest("GET", "/arenas", nil)
		r.Host = host
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code != want {
			t.Errorf("host %q: %d, expected %d", host, w.Code, want)
		}
	}
}

func TestThemeForm(t *testing.T) {
	h := exampleDesk(t).Handler()
	cases := []struct {
		body, leadsTo string
		status        int
	}{
		{"theme=light&back=" + url.QueryEscape(demoPage+"?hole=B2"), demoPage + "?hole=B2", 303},
		{"theme=dim&back=https://evil.example/", "/", 303},
		{"theme=dim&back=//evil.example/", "/", 303},
		{`theme=dim&back=/\evil.example/`, "/", 303},
		{"theme=neon&back=/", "", 400},
		{"theme=dim&back=" + strings.Repeat("x", 2*shell.Form), "", 413},
	}
	for _, c := range cases {
		w := ask(t, h, "POST", "/theme", c.body)
		if w.Code != c.status || w.Header().Get("Location") != c.leadsTo {
			t.Errorf("%.60s: %d to %q, expected %d to %q", c.body, w.Code, w.Header().Get("Location"), c.status, c.leadsTo)
		}
	}
}

func TestChangesFromElsewhereAreRefused(t *testing.T) {
	h := exampleDesk(t).Handler()
	r := httptest.NewRequest("POST", "http://127.0.0.1:8417/theme", strings.NewReader("theme=dim"))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Origin", "https://evil.example")
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	says(t, w, http.StatusForbidden, "another site", "Host header")
}

func TestAssetsMayBeKeptForGood(t *testing.T) {
	d := exampleDesk(t)
	h := d.Handler()
	names, err := assetFiles.ReadDir("assets")
	if err != nil || len(names) < 5 {
		t.Fatalf("found %d assets, %v", len(names), err)
	}
	// A page names its style sheets, a module the others by their names alone.
	folder := regexp.MustCompile(`/assets/[0-9a-f]+/`).FindString(ask(t, h, "GET", "/arenas", "").Body.String())
	more := []string{"sheet.css", "go-regular.ttf", "go-bold-other.ttf"}
	for _, n := range names {
		more = append(more, n.Name())
	}
	for _, name := range more {
		w := ask(t, h, "GET", folder+name, "")
		if w.Code != 200 || !strings.Contains(w.Header().Get("Cache-Control"), "immutable") || w.Header().Get("Content-Type") == "" {
			t.Errorf("GET %s: %d, %v", name, w.Code, w.Header())
		}
	}
}
