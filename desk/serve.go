package desk

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"time"
)

// DefaultAddr is where the desk opens unless told otherwise.
const DefaultAddr = "127.0.0.1:8417"

// How long one request may take. Reading is short, since nothing is sent to
// the desk; writing leaves room for the first plan of a large arena.
const (
	readTimeout  = 10 * time.Second
	writeTimeout = 60 * time.Second
	idleTimeout  = 2 * time.Minute
	closeTimeout = 5 * time.Second // for requests under way when the desk closes
	mostHeader   = 16 << 10        // bytes
)

// Listen opens the address. Only this machine's own addresses are taken: on
// any other, everybody near could read the plans, since nobody signs in.
func Listen(addr string) (net.Listener, error) {
	host, port, err := net.SplitHostPort(addr)
	if err != nil {
		return nil, fmt.Errorf("address %q: write host:port, such as %s", addr, DefaultAddr)
	}
	if !loopbackHost(host) {
		return nil, fmt.Errorf("address %q: the desk has no sign-in, so it opens on this machine only; use 127.0.0.1:%s", addr, port)
	}
	ln, err := net.Listen("tcp", addr)
	if err != nil {
		return nil, fmt.Errorf("address %q: %w; close what uses it, or choose another port with --addr", addr, reason(err))
	}
	return ln, nil
}

// reason takes the call's name and address off a network error.
func reason(err error) error {
	var op *net.OpError
	if errors.As(err, &op) {
		return op.Err
	}
	return err
}

// Serve answers on the listener until ctx ends, then lets requests under way
// finish and returns nil.
func (d *Desk) Serve(ctx context.Context, ln net.Listener) error {
	server := &http.Server{
		Handler:           d.Handler(),
		ReadTimeout:       readTimeout,
		ReadHeaderTimeout: readTimeout,
		WriteTimeout:      writeTimeout,
		IdleTimeout:       idleTimeout,
		MaxHeaderBytes:    mostHeader,
	}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(ln) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	last, cancel := context.WithTimeout(context.WithoutCancel(ctx), closeTimeout)
	defer cancel()
	if err := server.Shutdown(last); err != nil {
		return errors.Join(err, server.Close())
	}
	return nil
}
