package desk

import (
	"compress/gzip"
	"io"
	"net/http/httptest"
	"strings"
	"testing"
)

// TestCallsAreCompressed reads answers of the API back: text is compressed for
// those who take it, archives never, and nothing else changes.
func TestCallsAreCompressed(t *testing.T) {
	muchComputed(t)
	h := exampleDesk(t).Handler()
	get := func(path, takes string) *httptest.ResponseRecorder {
		r := httptest.NewRequest("GET", "http://127.0.0.1:8417"+path, nil)
		r.Header.Set("Accept-Encoding", takes)
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w
	}
	for _, path := range []string{"/api/arenas/quillhaven", "/api/openapi.json", "/api/arenas/quillhaven/text", "/api/arenas/nowhere"} {
		plain, packed := get(path, ""), get(path, "gzip, br")
		if plain.Header().Get("Content-Encoding") != "" || packed.Header().Get("Content-Encoding") != "gzip" || packed.Code != plain.Code {
			t.Errorf("%s: %q and %q, %d and %d", path, plain.Header().Get("Content-Encoding"), packed.Header().Get("Content-Encoding"), plain.Code, packed.Code)
			continue
		}
		z, err := gzip.NewReader(packed.Body)
		if err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		text, err := io.ReadAll(z)
		if err != nil || string(text) != plain.Body.String() {
			t.Errorf("%s comes back as %.80q, %v", path, text, err)
		}
	}
	if w := get("/api/arenas/quillhaven/files/plan.zip", "gzip"); w.Header().Get("Content-Encoding") != "" || !strings.HasPrefix(w.Body.String(), "PK") {
		t.Error("an archive was compressed again")
	}
}
