package desk

import (
	"compress/gzip"
	"io"
	"net/http/httptest"
	"testing"
)

func TestPagesComeCompressedToThoseWhoRead(t *testing.T) {
	muchComputed(t)
	h := exampleDesk(t).Handler()
	for accept, want := range map[string]string{
		"": "", "gzip": "gzip", "br, gzip;q=0.8": "gzip", "gzip;q=0": "", "identity": "",
	} {
		r := httptest.NewRequest("GET", "http://127.0.0.1:8417"+demoPage, nil)
		r.Header.Set("Accept-Encoding", accept)
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if got := w.Header().Get("Content-Encoding"); got != want {
			t.Errorf("accepting %q: encoding %q, expected %q", accept, got, want)
		}
		if want == "gzip" {
			z, err := gzip.NewReader(w.Body)
			if err != nil {
				t.Fatal(err)
			}
			if page, err := io.ReadAll(z); err != nil || len(page) < 1000 {
				t.Errorf("unpacked %d bytes, %v", len(page), err)
			}
		}
	}
}
