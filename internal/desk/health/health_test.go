package health

import (
	"bytes"
	"context"
	"errors"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	sdktrace "go.opentelemetry.io/otel/sdk/trace"
	"go.opentelemetry.io/otel/sdk/trace/tracetest"
)

func ask(h http.Handler, path string, headers ...string) *httptest.ResponseRecorder {
	r := httptest.NewRequest("GET", path, nil)
	for i := 0; i < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

// TestReadiness follows a desk whose store comes and goes, until it closes; that it
// lives is told all along, and a store is not asked anew within a second.
func TestReadiness(t *testing.T) {
	now, asked, store := time.Unix(1e9, 0), 0, error(nil)
	m := New(Options{
		Now:  func() time.Time { return now },
		Ping: func(context.Context) error { asked++; return store },
	})
	h := m.Front(http.NotFoundHandler())
	for _, step := range []struct {
		name   string
		do     func()
		status int
		words  string
		asked  int
	}{
		{"the store answers", func() {}, 200, "well", 1},
		{"it went away just now", func() { store = errors.New("gone") }, 200, "well", 1},
		{"a second later", func() { now = now.Add(time.Second) }, 503, "the store does not answer", 2},
		{"it is back", func() { store, now = nil, now.Add(time.Second) }, 200, "well", 3},
		{"the desk closes", m.Close, 503, "closing", 3},
	} {
		step.do()
		w := ask(h, "/ready")
		if w.Code != step.status || strings.TrimSpace(w.Body.String()) != step.words || asked != step.asked {
			t.Errorf("%s: %d %q after %d questions, want %d %q after %d", step.name, w.Code, w.Body, asked, step.status, step.words, step.asked)
		}
		if w := ask(h, "/health"); w.Code != 200 {
			t.Errorf("%s: the desk is said not to live", step.name)
		}
	}
	if w := ask(h, "/arenas"); w.Code != 404 {
		t.Errorf("what is the desk's was answered with %d", w.Code)
	}
}

// TestFigures asks three times and reads the figures as a collector does (Prometheus,
// "Exposition formats"): by route, never by what stood in an address.
func TestFigures(t *testing.T) {
	now := time.Unix(1e9, 0)
	m := New(Options{Now: func() time.Time { return now }})
	m.Gauge("rinkpane_heavy_waiting", func() float64 { return 7 })
	status := 200
	h := m.Around("GET /arena/{slug}", http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		now = now.Add(80 * time.Millisecond)
		w.WriteHeader(status)
	}))
	ask(h, "/arena/quillhaven")
	ask(h, "/arena/brennholm")
	status = 404
	ask(h, "/arena/secret")
	figures := ask(m.Metrics(), "/metrics").Body.String()
	for _, want := range []string{
		`rinkpane_requests_total{route="GET /arena/{slug}",status="200"} 2`,
		`rinkpane_requests_total{route="GET /arena/{slug}",status="404"} 1`,
		`rinkpane_request_seconds_bucket{route="GET /arena/{slug}",le="0.05"} 0`,
		`rinkpane_request_seconds_bucket{route="GET /arena/{slug}",le="0.1"} 3`,
		`rinkpane_request_seconds_count{route="GET /arena/{slug}"} 3`,
		"rinkpane_heavy_waiting 7", "rinkpane_ready 1", "rinkpane_streams_open 0", "process_resident_memory_bytes ", "process_open_fds ", "go_goroutines ",
	} {
		if !strings.Contains(figures, "\n"+want) && !strings.HasPrefix(figures, want) {
			t.Errorf("%s is not among the figures", want)
		}
	}
	if strings.Contains(figures, "secret") || strings.Contains(figures, "quillhaven") {
		t.Error("the figures name an arena")
	}
}

// TestListenersAreCounted counts who listens while they do; how long is no time of an answer.
func TestListenersAreCounted(t *testing.T) {
	m := New(Options{Now: time.Now})
	open, shut := make(chan struct{}), make(chan struct{})
	h := m.Around("GET /day/{token}/live", http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/event-stream")
		_, _ = w.Write([]byte(":\n\n"))
		if http.NewResponseController(w).Flush() != nil {
			t.Error("a stream cannot be flushed")
		}
		close(open)
		<-shut
	}))
	done := make(chan struct{})
	go func() { ask(h, "/day/x/live"); close(done) }()
	<-open
	if n := m.streams.Load(); n != 1 {
		t.Errorf("%d listen, want 1", n)
	}
	close(shut)
	<-done
	figures := ask(m.Metrics(), "/metrics").Body.String()
	for _, want := range []string{"rinkpane_streams_open 0", `rinkpane_requests_total{route="GET /day/{token}/live",status="200"} 1`} {
		if !strings.Contains(figures, want) {
			t.Errorf("%s is not among the figures", want)
		}
	}
	if strings.Contains(figures, `rinkpane_request_seconds_count{route="GET /day/{token}/live"} 1`) {
		t.Error("a listener's stay is told as the time of an answer")
	}
}

// TestLinesAndSpans writes a line and a span for each request, under the trace that a
// server before the desk began, and neither says who asked or for what arena.
func TestLinesAndSpans(t *testing.T) {
	spans := tracetest.NewInMemoryExporter()
	var lines bytes.Buffer
	m := New(Options{
		Now: time.Now, Lines: slog.New(slog.NewTextHandler(&lines, nil)),
		Tracer: sdktrace.NewTracerProvider(sdktrace.WithSyncer(spans)).Tracer("test"),
	})
	h := m.Around("GET /arena/{slug}/book", http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		http.Error(w, "no", http.StatusInternalServerError)
	}))
	const before = "0af7651916cd43dd8448eb211c80319c" // the example of W3C Trace Context, section 3.2.2
	ask(h, "/arena/quillhaven/book?hole=B2", "Traceparent", "00-"+before+"-b7ad6b7169203331-01")
	all := spans.GetSpans()
	if len(all) != 1 || all[0].Name != "GET /arena/{slug}/book" || all[0].SpanContext.TraceID().String() != before || all[0].Status.Code.String() != "Error" {
		t.Errorf("spans %+v", all)
	}
	for _, want := range []string{"msg=request", `route="GET /arena/{slug}/book"`, "status=500", "bytes=3", "trace=" + before} {
		if !strings.Contains(lines.String(), want) {
			t.Errorf("%s is not in the line %s", want, lines.String())
		}
	}
	for _, private := range []string{"quillhaven", "B2", "192.0.2.1"} {
		if strings.Contains(lines.String(), private) {
			t.Errorf("the line names %s", private)
		}
	}
}
