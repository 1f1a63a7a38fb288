package main

import (
	"context"
	"errors"
	"fmt"
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

	"example.org/rinkpane/internal/desk"
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

// log makes the desk's log.
func (o *deskWatched) log(a *app) (*slog.Logger, error) {
	switch {
	case o.drain < 0 || o.drain > mostDrain:
		return nil, fmt.Errorf("--drain %s: write up to %s", o.drain, mostDrain)
	case o.format == "text":
		return slog.New(slog.NewTextHandler(a.err, nil)), nil
	case o.format == "json":
		return slog.New(slog.NewJSONHandler(a.err, nil)), nil
	}
	return nil, fmt.Errorf("--log-format %q: write text or json", o.format)
}

// mostDrain is the longest a closing desk may go on; own choice.
const mostDrain = 5 * time.Minute

// lines returns the log if each request is to have a line, or nil.
func (o *deskWatched) lines(log *slog.Logger) *slog.Logger {
	if o.each {
		return log
	}
	return nil
}

// tracer begins to send traces; end sends the last. Both do nothing unless asked for.
func (o *deskWatched) tracer(ctx context.Context, log *slog.Logger) (t trace.Tracer, end func(), err error) {
	if o.trace == "" {
		return nil, func() {}, nil
	}
	if at, err := url.Parse(o.trace); err != nil || at.Host == "" || at.Scheme != "http" && at.Scheme != "https" {
		return nil, nil, fmt.Errorf("--trace %q: write the address of a collector, such as http://127.0.0.1:4318", o.trace)
	}
	to, err := otlptracehttp.New(ctx, otlptracehttp.WithEndpointURL(o.trace+"/v1/traces"))
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

// figures serves a desk's figures, and those of its store, at an address of their own,
// "" unless asked for; end stops it.
func (o *deskWatched) figures(d *desk.Desk, s *store.Store, log *slog.Logger) (at string, end func(), err error) {
	if o.metrics == "" {
		return "", func() {}, nil
	}
	m := d.Health()
	m.Gauge("rinkpane_store_connections", func() float64 { atWork, _ := s.Connections(); return float64(atWork) })
	m.Gauge("rinkpane_store_wait_seconds", func() float64 { _, waited := s.Connections(); return waited.Seconds() })
	ln, err := net.Listen("tcp", o.metrics)
	if err != nil {
		return "", nil, fmt.Errorf("--metrics: %w: choose another address", err)
	}
	mux := http.NewServeMux()
	mux.Handle("GET /metrics", m.Metrics())
	server := &http.Server{Handler: mux, ReadHeaderTimeout: 10 * time.Second, WriteTimeout: 10 * time.Second, MaxHeaderBytes: 16 << 10}
	go func() {
		if err := server.Serve(ln); !errors.Is(err, http.ErrServerClosed) {
			log.Error("metrics", "stopped", err)
		}
	}()
	return "http://" + ln.Addr().String() + "/metrics", func() { _ = server.Close() }, nil
}
