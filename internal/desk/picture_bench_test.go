package desk

import (
	"net/http"
	"net/http/httptest"
	"testing"
)

// BenchmarkPictureRequest is one step of a drag: numbers and preview; and the
// sharp picture when the hand rests.
func BenchmarkPictureRequest(b *testing.B) {
	h := exampleDesk(b).Handler()
	for name, target := range map[string]string{
		"numbers": "/picture.json?hole=B1&moment=3&pan=10&tilt=-1",
		"preview": "/picture.jpg?hole=B1&moment=3&pan=10&tilt=-1&side=480",
		"sharp":   "/picture.png?hole=B1&moment=3&pan=10&tilt=-1",
	} {
		b.Run(name, func(b *testing.B) {
			bytes := 0
			for b.Loop() {
				r := httptest.NewRequest(http.MethodGet, "http://127.0.0.1:8417"+demoPage+target, nil)
				w := httptest.NewRecorder()
				h.ServeHTTP(w, r)
				if w.Code != http.StatusOK {
					b.Fatal(w.Code)
				}
				bytes = w.Body.Len()
			}
			b.ReportMetric(float64(bytes), "bytes")
		})
	}
}
