package desk

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"strings"
	"time"

	"example.org/rinkpane/internal/desk/door"
)

// DefaultAddr is where the desk opens unless told otherwise.
const DefaultAddr = "127.0.0.1:8417"

// How long one request may take. Writing leaves room for the first plan of a
// large arena.
const (
	headTimeout   = 10 * time.Second
	readTimeout   = 30 * time.Second // a megabyte over a slow line
	writeTimeout  = 60 * time.Second
	idleTimeout   = 2 * time.Minute
	closeTimeout  = 4 * time.Second // for requests under way when the desk closes
	cancelTimeout = time.Second     // for what was cancelled then
	mostHeader    = 16 << 10        // bytes
)

// Near reports whether an address can be reached from this machine only.
func Near(addr string) bool {
	host, _, err := net.SplitHostPort(addr)
	return err == nil && door.LoopbackHost(host)
}

// CheckAddr refuses what is no address to listen at.
func CheckAddr(addr string) error {
	if _, _, err := net.SplitHostPort(addr); err != nil {
		return fmt.Errorf("address %q: write host:port, such as %s", addr, DefaultAddr)
	}
	return nil
}

// Listen opens the address. While nobody can sign in, only this machine's own
// addresses are taken: on any other, everybody near could change the plans.
func Listen(addr string, canSignIn bool) (net.Listener, error) {
	if err := CheckAddr(addr); err != nil {
		return nil, err
	}
	if !Near(addr) && !canSignIn {
		return nil, fmt.Errorf("address %q: no sign-in is set up, so the desk opens on this machine only: use 127.0.0.1:%s, "+
			"or first let somebody sign in with rinkpane people add NAME --role planner", addr, addr[strings.LastIndexByte(addr, ':')+1:])
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
// finish, cancels those that do not, and returns nil: within [closeTimeout] and
// twice [cancelTimeout], whatever is at work.
func (d *Desk) Serve(ctx context.Context, ln net.Listener) error {
	requests, giveUp := context.WithCancel(context.WithoutCancel(ctx))
	defer giveUp()
	server := &http.Server{
		Handler:           d.handler,
		BaseContext:       func(net.Listener) context.Context { return requests },
		ReadTimeout:       readTimeout,
		ReadHeaderTimeout: headTimeout,
		WriteTimeout:      writeTimeout,
		IdleTimeout:       idleTimeout,
		MaxHeaderBytes:    mostHeader,
	}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(ln) }()
	select {
	case err := <-ended:
		d.closeJobs()
		return err
	case <-ctx.Done():
	}
	d.health.Close()
	time.Sleep(d.drain)
	jobs := d.closeJobs() // its watchers leave, so that Shutdown need not wait for them
	d.shell.Shelf.Close()
	last, cancel := context.WithTimeout(requests, closeTimeout)
	defer cancel()
	time.AfterFunc(closeTimeout, giveUp)
	if server.Shutdown(last) != nil {
		time.Sleep(cancelTimeout) // those that were cancelled end
		if err := server.Close(); err != nil {
			return err
		}
		d.shell.Log.Warn("desk", "closed", "while requests were at work")
	}
	select {
	case <-jobs:
	case <-time.After(cancelTimeout):
		d.shell.Log.Warn("desk", "closed", "while a choice or a job was at work")
	}
	return nil
}

// closeJobs cancels the jobs; the channel closes when they have ended.
func (d *Desk) closeJobs() <-chan struct{} {
	ended := make(chan struct{})
	go func() {
		d.jobs.Close()
		if d.backlog != nil {
			d.backlog.Close()
		}
		close(ended)
	}()
	return ended
}
