package main

import (
	"cmp"
	"context"
	"crypto/rand"
	"fmt"
	"net"
	"net/netip"
	"os"
	"runtime/debug"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/desk"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/health"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/store"
)

// deskFlags are what a user says about a desk.
type deskFlags struct {
	addr       string
	from       source
	place      storePlace
	behind     []string
	servers    []netip.Prefix // those, read
	demo, show bool
	watched    deskWatched
	jobs       deskJobs
}

func deskCommand(a *app) *cobra.Command {
	f := deskFlags{from: source{asksKit: true}}
	c := &cobra.Command{
		Use:   "desk [ARENA...]",
		Short: "Open the planning desk in the browser of this machine",
		Long: "Opens the arenas that the desk keeps as pages in the browser: plan map, boards strip, findings,\n" +
			"fit and light. The first start brings the example arenas. Files that are named are imported: a new\n" +
			"one as a new arena, a changed one as a new version on top of the arena of its name. The files\n" +
			"themselves are never written. Ctrl-C closes the desk.",
		Example: "  rinkpane desk\n" +
			"  rinkpane desk my-rink.yaml --addr 127.0.0.1:9000\n" +
			"  rinkpane desk --db postgres://rinkpane@localhost/rinkpane",
		RunE: func(c *cobra.Command, args []string) error { return f.run(c.Context(), a, args) },
	}
	c.Flags().StringVar(&f.addr, "addr", desk.DefaultAddr, "where to listen: this machine's own address and a port (0 picks one)")
	c.Flags().StringSliceVar(&f.behind, "behind", nil, "servers before the desk (addresses or networks, such as 10.0.0.5,10.1.0.0/16) that are believed when they name a visitor's address")
	c.Flags().BoolVar(&f.demo, "demo-season", false, "fill the demo arena with an invented season of games, covers, inspections and incidents")
	c.Flags().BoolVar(&f.show, "open", false, "show the desk in the browser at once, where a page can close it, too")
	f.place.flags(c)
	f.from.rulesFlag(c)
	f.watched.flags(c)
	f.jobs.flags(c)
	return c
}

// run is the desk's life: what the user said is checked before a store is opened or made.
func (f *deskFlags) run(ctx context.Context, a *app, files []string) error {
	imports, err := f.check(a, files)
	if err != nil {
		return err
	}
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(deskMemory)
	}
	if f.show && openAlready(ctx, f.addr) {
		return showInBrowser("http://" + f.addr + "/")
	}
	watch, err := f.watched.open(ctx, a.err)
	if err != nil {
		return err
	}
	defer watch.close()
	s, err := f.place.open(ctx)
	if err != nil {
		return err
	}
	defer closeWithin(storeTimeout, s.Close)
	known, err := s.People(ctx)
	if err != nil {
		return err
	}
	ln, err := desk.Listen(f.addr, len(known) > 0)
	if err != nil {
		return err
	}
	defer ln.Close()
	on, err := f.stocked(ctx, a, s, imports)
	if err != nil {
		return err
	}
	code, err := door.NewCode(rand.Reader)
	if err != nil {
		return err
	}
	ctx, end := context.WithCancel(ctx)
	defer end()
	o := f.options(s, on, watch, code, end)
	if err := f.jobsOf(ctx, &o); err != nil {
		return err
	}
	d, err := desk.New(o)
	if err != nil {
		return err
	}
	f.warn(a, code, len(known) == 0)
	return openDesk(ctx, a, d, ln, watch.figures(d.Health(), s), f.show)
}

// check refuses what no desk can be opened with, and reads the files to be imported.
func (f *deskFlags) check(a *app, files []string) ([]anImport, error) {
	err := cmp.Or(desk.CheckAddr(f.addr), f.jobs.check())
	if err != nil {
		return nil, err
	}
	if f.servers, err = door.ParseServers(f.behind); err != nil {
		return nil, fmt.Errorf("--behind: %w", err)
	}
	if err := f.from.outfit(a); err != nil {
		return nil, err
	}
	return readImports(a, files)
}

// stocked returns the shelf over a store, with what the desk is to open with on it.
func (f *deskFlags) stocked(ctx context.Context, a *app, s *store.Store, imports []anImport) (*shelf.Shelf, error) {
	on := shelf.New(s, f.from.Maker, time.Now)
	err := stock(ctx, a, on, imports)
	if err == nil && f.demo {
		err = loadSeason(ctx, a, s, on, time.Now())
	}
	return on, err
}

func (f *deskFlags) options(s *store.Store, on *shelf.Shelf, watch deskWatch, code string, end func()) desk.Options {
	o := desk.Options{
		Shelf: on, Register: s, Covers: s, SignIn: !desk.Near(f.addr), Behind: f.servers, Code: code, Version: version(),
		Log: watch.log, Now: time.Now, Random: rand.Reader, Drain: f.watched.drain,
		Health: health.Options{Ping: s.Ping, Lines: watch.lines, Tracer: watch.tracer},
	}
	if f.show && desk.Near(f.addr) {
		o.Close = end
	}
	return o
}

// warn says what is unsafe about the desk as it opens.
func (f *deskFlags) warn(a *app, code string, nobody bool) {
	if !desk.Near(f.addr) {
		fmt.Fprintln(a.err, "rinkpane: passwords and plans travel as they are: put a server that speaks TLS before this desk")
	}
	if nobody {
		fmt.Fprintf(a.err, "rinkpane: nobody has to sign in; whoever sets up the first person, on the page People, needs the code %s\n", code)
	}
}

// deskMemory is when the desk starts to look harder for memory to give back, in
// bytes; GOMEMLIMIT sets another. Own choice: a shared server holds many programs.
const deskMemory = 120 << 20

// storeTimeout is how long a closing desk waits for its store. With what the desk
// itself waits for, it ends within ten seconds. A store that is left at work loses
// nothing: what was acknowledged is written.
const storeTimeout = 2 * time.Second

// closeWithin closes something, and leaves it to the process's end when that takes longer.
func closeWithin(limit time.Duration, end func() error) {
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		_ = end()
	}()
	select {
	case <-ended:
	case <-time.After(limit):
	}
}

// openDesk says where the desk is, at once, and where its figures are, unless that is
// "", and serves until Ctrl-C.
func openDesk(ctx context.Context, a *app, d *desk.Desk, ln net.Listener, figures string, show bool) error {
	url := "http://" + ln.Addr().String() + "/"
	switch {
	case a.json && figures != "":
		fmt.Fprintf(a.stdout, "{\"url\": %q, \"metrics\": %q}\n", url, figures)
	case a.json:
		fmt.Fprintf(a.stdout, "{\"url\": %q}\n", url)
	default:
		fmt.Fprintf(a.stdout, "The desk is open at %s\n", url)
		if figures != "" {
			fmt.Fprintf(a.stdout, "Its figures are at %s\n", figures)
		}
		fmt.Fprintln(a.stdout, "Ctrl-C closes it.")
	}
	if show {
		if err := showInBrowser(url); err != nil {
			fmt.Fprintln(a.err, "rinkpane: "+err.Error())
		}
	}
	return d.Serve(ctx, ln)
}
