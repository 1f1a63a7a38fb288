package desk

import (
	"net/http"
	"strings"
	"testing"

	"example.org/rinkpane/internal/desk/shell"
)

// values stand for the variables of patterns on a desk of the examples.
var values = strings.NewReplacer("{$}", "", "{slug}", shell.SampleArena, "{id}", shell.SampleArena, "{number}", "1",
	"{kind}", "plan.json", "{part}", "rink", "{job}", "x", "{hash}", "0", "{name}", "x", "{token}", "x")

// methodAndPath returns a route's method and its pattern with the variables filled in.
func methodAndPath(t testing.TB, r shell.Route) (method, path string) {
	t.Helper()
	method, path, ok := strings.Cut(r.Pattern, " ")
	if !ok {
		method, path = http.MethodGet, r.Pattern
	}
	if path = values.Replace(path); strings.Contains(path, "{") {
		t.Errorf("%s: no value is known for its variable", r.Pattern)
	}
	return method, path
}

// samplePages are the addresses of every page of the desk, in every state that a
// route names a sample of: what tests of all pages open.
func samplePages(t testing.TB) []string {
	t.Helper()
	d := exampleDesk(t)
	var out []string
	for _, r := range d.table {
		method, path := methodAndPath(t, r)
		switch {
		case method != http.MethodGet || strings.HasPrefix(path, "/api/"), strings.Contains(path, "."): // a call, a file
		case len(r.Samples) > 0:
			out = append(out, r.Samples...)
		case !strings.Contains(r.Pattern, "{"):
			out = append(out, path)
		}
	}
	return out
}

// TestEveryPageHasASample asks every address that may be a page: what answers
// with one must be among the samples, and every sample is a page.
func TestEveryPageHasASample(t *testing.T) {
	muchComputed(t)
	d := exampleDesk(t)
	pages := samplePages(t)
	if len(pages) < 20 {
		t.Fatalf("only %d samples: %q", len(pages), pages)
	}
	isPage := func(path string) bool {
		w := ask(t, d.Handler(), "GET", path, "")
		return (w.Code == http.StatusOK || path == missingPage) && strings.HasPrefix(w.Header().Get("Content-Type"), "text/html")
	}
	for _, r := range d.table {
		if method, path := methodAndPath(t, r); method == http.MethodGet && len(r.Samples) == 0 && strings.Contains(r.Pattern, "{") && !streams(path) && isPage(path) {
			t.Errorf("%s answers with a page and has no sample: give its route one", r.Pattern)
		}
	}
	for _, path := range pages {
		if path != "/" && path != "/favicon.ico" && !isPage(path) {
			t.Errorf("the sample %s is no page", path)
		}
	}
}

// streams reports whether an address answers with events, for as long as somebody listens.
func streams(path string) bool {
	return strings.HasSuffix(path, "/live") || strings.HasSuffix(path, "/saves")
}
