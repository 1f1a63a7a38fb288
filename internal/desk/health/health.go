// Package health answers: does this desk live, is it ready for visitors, and how
// busy is it?
//
//	balancer  -> GET /health, /ready -.
//	visitor   -> [Monitor.Front] -----+-> door -> a route within [Monitor.Around]
//	collector -> [Monitor.Metrics], at an address of its own
//
// The model: whatever a visitor asks for is counted by its route and status, timed,
// and, where wanted, traced and written as a line. Routes are patterns, so what is
// kept does not grow with what is asked. Nothing here names a person, an address or
// an arena: figures travel further than plans.
//
// A desk lives as long as it answers; it is ready while its store answers and it is
// not closing, so that a balancer sends visitors elsewhere before it goes.
package health

import (
	"context"
	"log/slog"
	"net/http"
	"sync"
	"sync/atomic"
	"time"

	"github.com/VictoriaMetrics/metrics"
	"go.opentelemetry.io/otel/trace"
)

// Options is what a monitor needs.
type Options struct {
	Ping   func(ctx context.Context) error // whether the store answers; nil for one that always does
	Now    func() time.Time
	Lines  *slog.Logger // gets a line for each request; nil for none
	Tracer trace.Tracer // nil for none
}

// Monitor watches a desk. Make one with [New]; it is safe for many requests at once.
type Monitor struct {
	Options
	figures *metrics.Set
	streams atomic.Int64
	closing atomic.Bool

	mu     sync.Mutex // guards what the store answered last
	asked  time.Time
	answer error
}

// New makes a monitor.
func New(o Options) *Monitor {
	m := &Monitor{Options: o, figures: metrics.NewSet()}
	m.Gauge("rinkpane_streams_open", func() float64 { return float64(m.streams.Load()) })
	m.Gauge("rinkpane_ready", func() float64 {
		if m.ready(context.Background()) != nil {
			return 0
		}
		return 1
	})
	return m
}

// Gauge adds a figure that is asked for when the figures are collected. It is named
// as Prometheus names them: the unit last, in base units.
func (m *Monitor) Gauge(name string, value func() float64) { m.figures.NewGauge(name, value) }

// Close says that the desk is about to close: it is ready no more.
func (m *Monitor) Close() { m.closing.Store(true) }

// Metrics serves the figures in the text format of Prometheus, those of the process,
// its open files and Go among them.
func (m *Monitor) Metrics() http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/plain; version=0.0.4; charset=utf-8")
		m.figures.WritePrometheus(w)
		metrics.WriteProcessMetrics(w)
		metrics.WriteFDMetrics(w)
	})
}
