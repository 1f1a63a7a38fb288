package desk

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

// BenchmarkLiveStep is the desk's part of a drag step: the drawings and tables that follow.
func BenchmarkLiveStep(b *testing.B) {
	h := exampleDesk(b).Handler()
	i := 0
	step := func() *httptest.ResponseRecorder {
		i++
		r := httptest.NewRequest("POST", "http://127.0.0.1:8417"+demoPage+"/live", strings.NewReader(fmt.Sprintf(
			`{"base":1,"state":"hole=B2","edits":[{"do":"move","hole":"B2","to":{"station_m":%.4f,"height_m":1.4732}}]}`, 20+float64(i%300)/100)))
		r.Header.Set("Content-Type", "application/json")
		r.Header.Set("Origin", "http://127.0.0.1:8417")
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w
	}
	w := step()
	if w.Code != http.StatusOK {
		b.Fatalf("%d %.300s", w.Code, w.Body)
	}
	for b.Loop() {
		step()
	}
	b.ReportMetric(float64(w.Body.Len()), "bytes")
}
