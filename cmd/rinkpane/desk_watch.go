package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"net/url"
	"time"

	"github.com/spf13/cobra"
	"go.opentelemetry.io/otel/attribute"
	"go.opentelemetry.io/otel/exporters/otlp/otlptrace/otlptracehttp"
	"go.opentelemetry.io/otel/sdk/resource"
	sdktrace "go.opentelemetry.io/otel/sdk/trace"
	"go.opentelemetry.io/otel/trace"

	"example.org/rinkpane/internal/desk/health"
	"example.org/rinkpane/internal/keep/store"
)

// deskWatched is how whoever runs a desk for others watches it: all off unless asked for.
type deskWatched struct {
	metrics string // address
	trace   string // URL
	format  string
	each    bool
	drain   time.Duration
}

func (o *deskWatched) flags(c *cobra.Command) {
	c.Flags().StringVar(&o.metrics, "metrics", "", "serve figures for Prometheus at /metrics of this address, such as 127.0.0.1:9417")
	c.Flags().StringVar(&o.trace, "trace", "", "send traces of requests to this OpenTelemetry collector, such as http://127.0.0.1:4318")
	c.Flags().StringVar(&o.format, "log-format", "text", "how the log is written: text or json")
	c.Flags().BoolVar(&o.each, "log-requests", false, "write a line to the log for each request: no names, no addresses")
	c.Flags().DurationVar(&o.drain, "drain", 0, "when told to close, go on answering for so long while /ready says no")
}

// mostDrain is the longest a closing desk may go on; own choice.
const mostDrain = 5 * time.Minute

// deskWatch is what a desk is watched through. Whoever opened it closes it.
type deskWatch struct {
	log       *slog.Logger
	lines     *slog.Logger // gets a line for each request; nil for none
	tracer    trace.Tracer // nil for none
	endTraces func()       // sends the last; nil for none
	metrics   net.Listener // where figures are served; nil for nowhere
}

// open opens what was asked for, before anything is stored.
func (o *deskWatched) open(ctx context.Context, to io.Writer) (w deskWatch, err error) {
	if o.drain < 0 || o.drain > mostDrain {
		return w, fmt.Errorf("--drain %s: write up to %s", o.drain, mostDrain)
	}
	switch o.format {
	case "text":
		w.log = slog.New(slog.NewTextHandler(to, nil))
	case "json":
		w.log = slog.New(slog.NewJSONHandler(to, nil))
	default:
		return w, fmt.Errorf("--log-format %q: write text or json", o.format)
	}
	if o.each {
		w.lines = w.log
	}
	if o.trace != "" {
		if w.tracer, w.endTraces, err = tracerTo(ctx, o.trace, w.log); err != nil {
			return w, err
		}
	}
	if o.metrics != "" {
		if w.metrics, err = net.Listen("tcp", o.metrics); err != nil {
			w.close()
			return w, fmt.Errorf("--metrics: %w: choose another address", err)
		}
	}
	return w, nil
}

func (w deskWatch) close() {
	if w.metrics != nil {
		_ = w.metrics.Close() // ends the serving of figures
	}
	if w.endTraces != nil {
		w.endTraces()
	}
}

// tracerTo begins to send traces to a collector's URL; end sends the last.
func tracerTo(ctx context.Context, collector string, log *slog.Logger) (t trace.Tracer, end func(), err error) {
	if at, err := url.Parse(collector); err != nil || at.Host == "" || at.Scheme != "http" && at.Scheme != "https" {
		return nil, nil, fmt.Errorf("--trace %q: write the address of a collector, such as http://127.0.0.1:4318", collector)
	}
	to, err := otlptracehttp.New(ctx, otlptracehttp.WithEndpointURL(collector+"/v1/traces"))
	if err != nil {
		return nil, nil, fmt.Errorf("--trace: %w", err)
	}
	all := sdktrace.NewTracerProvider(sdktrace.WithBatcher(to), sdktrace.WithResource(resource.NewSchemaless(
		attribute.String("service.name", "rinkpane"), attribute.String("service.version", version()))))
	return all.Tracer("rinkpane"), func() {
		ctx, stop := context.WithTimeout(context.WithoutCancel(ctx), storeTimeout)
		defer stop()
		if err := all.Shutdown(ctx); err != nil {
			log.Warn("traces", "left unsent", err)
		}
	}, nil
}

// figures serves a desk's figures, and those of its store, where that was asked for; it
// returns the address, "" for nowhere.
func (w deskWatch) figures(m *health.Monitor, s *store.Store) (at string) {
	if w.metrics == nil {
		return ""
	}
	m.Gauge("rinkpane_store_connections", func() float64 { atWork, _ := s.Connections(); return float64(atWork) })
	m.Gauge("rinkpane_store_wait_seconds", func() float64 { _, waited := s.Connections(); return waited.Seconds() })
	mux := http.NewServeMux()
	mux.Handle("GET /metrics", m.Metrics())
	server := &http.Server{Handler: mux, ReadHeaderTimeout: 10 * time.Second, WriteTimeout: 10 * time.Second, MaxHeaderBytes: 16 << 10}
	go func() {
		if err := server.Serve(w.metrics); !errors.Is(err, net.ErrClosed) {
			w.log.Error("metrics", "stopped", err)
		}
	}()
	return "http://" + w.metrics.Addr().String() + "/metrics"
}
