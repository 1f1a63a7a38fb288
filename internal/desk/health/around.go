package health

import (
	"fmt"
	"net/http"
	"strings"
	"time"

	"github.com/VictoriaMetrics/metrics"
	"go.opentelemetry.io/otel/attribute"
	"go.opentelemetry.io/otel/codes"
	"go.opentelemetry.io/otel/propagation"
	"go.opentelemetry.io/otel/trace"
)

// bounds are the upper bounds of the times told, in seconds: a drag's step, a page,
// a drawing, a book.
var bounds = []float64{0.01, 0.05, 0.1, 0.25, 1, 5, 25, 60}

// Around counts, times, traces and writes down what a route answers.
func (m *Monitor) Around(route string, next http.Handler) http.Handler {
	took := m.figures.NewPrometheusHistogramExt(fmt.Sprintf(`rinkpane_request_seconds{route=%q}`, route), bounds)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		begun := m.Now()
		out := &answer{ResponseWriter: w, m: m}
		r, end := m.span(route, r)
		defer func() {
			out.close()
			passed := m.Now().Sub(begun)
			if !out.stream { // which lasts as long as its listener likes
				took.Update(passed.Seconds())
			}
			m.count(route, out.status).Inc()
			end(out.status)
			m.line(route, r, out, passed)
		}()
		next.ServeHTTP(out, r)
	})
}

func (m *Monitor) count(route string, status int) *metrics.Counter {
	return m.figures.GetOrCreateCounter(fmt.Sprintf(`rinkpane_requests_total{route=%q,status="%d"}`, route, status))
}

// line writes what was asked and answered, without who asked.
func (m *Monitor) line(route string, r *http.Request, out *answer, passed time.Duration) {
	if m.Lines == nil {
		return
	}
	fields := []any{"route", route, "status", out.status, "bytes", out.bytes, "ms", passed.Milliseconds()}
	if s := trace.SpanContextFromContext(r.Context()); s.HasTraceID() {
		fields = append(fields, "trace", s.TraceID().String())
	}
	m.Lines.InfoContext(r.Context(), "request", fields...)
}

// span begins a trace's span for a request, under the one that a server before this
// desk names in traceparent (W3C Trace Context). Its attributes are named as in
// OpenTelemetry's conventions for HTTP servers.
func (m *Monitor) span(route string, r *http.Request) (*http.Request, func(status int)) {
	if m.Tracer == nil {
		return r, func(int) {}
	}
	ctx := propagation.TraceContext{}.Extract(r.Context(), propagation.HeaderCarrier(r.Header))
	path := route[strings.IndexByte(route, ' ')+1:]
	ctx, span := m.Tracer.Start(ctx, r.Method+" "+path, trace.WithSpanKind(trace.SpanKindServer), trace.WithAttributes(
		attribute.String("http.request.method", r.Method), attribute.String("http.route", path)))
	return r.WithContext(ctx), func(status int) {
		span.SetAttributes(attribute.Int("http.response.status_code", status))
		if status >= http.StatusInternalServerError {
			span.SetStatus(codes.Error, http.StatusText(status))
		}
		span.End()
	}
}

// answer remembers what was answered.
type answer struct {
	http.ResponseWriter
	m      *Monitor
	status int
	bytes  int64
	stream bool // of events, while it is open
}

// Unwrap gives [http.ResponseController] the writer below.
func (a *answer) Unwrap() http.ResponseWriter { return a.ResponseWriter }

func (a *answer) WriteHeader(status int) {
	if a.status == 0 && status >= http.StatusOK {
		a.status = status
		if a.Header().Get("Content-Type") == "text/event-stream" {
			a.stream = true
			a.m.streams.Add(1)
		}
	}
	a.ResponseWriter.WriteHeader(status)
}

func (a *answer) Write(data []byte) (int, error) {
	if a.status == 0 {
		a.WriteHeader(http.StatusOK)
	}
	n, err := a.ResponseWriter.Write(data)
	a.bytes += int64(n)
	return n, err
}

// close ends what was open; an answer without a word is 200.
func (a *answer) close() {
	if a.status == 0 {
		a.status = http.StatusOK
	}
	if a.stream {
		a.m.streams.Add(-1)
	}
}
