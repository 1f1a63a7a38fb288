package main

import (
	"context"
	"crypto/rand"
	"fmt"
	"net"
	"os"
	"runtime/debug"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/desk"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/health"
	"example.org/rinkpane/internal/desk/shelf"
)

func deskCommand(a *app) *cobra.Command {
	var addr string
	from := source{asksKit: true}
	var place storePlace
	var demo, show bool
	var watched deskWatched
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
		RunE: func(c *cobra.Command, args []string) error {
			if err := desk.CheckAddr(addr); err != nil {
				return err
			}
			if os.Getenv("GOMEMLIMIT") == "" {
				debug.SetMemoryLimit(deskMemory)
			}
			if err := from.outfit(a); err != nil {
				return err
			}
			imports, err := readImports(a, args)
			if err != nil {
				return err
			}
			s, err := place.open(c.Context())
			if err != nil {
				return err
			}
			defer func() { closeWithin(storeTimeout, s.Close) }()
			known, err := s.People(c.Context())
			if err != nil {
				return err
			}
			ln, err := desk.Listen(addr, len(known) > 0)
			if err != nil && show && openAlready(c.Context(), addr) {
				return showInBrowser("http://" + addr + "/")
			}
			if err != nil {
				return err
			}
			defer ln.Close()
			on := shelf.New(s, from.Maker, time.Now)
			if err := stock(c.Context(), a, on, imports); err != nil {
				return err
			}
			if demo {
				if err := loadSeason(c.Context(), a, s, on, time.Now()); err != nil {
					return err
				}
			}
			code, err := door.NewCode(rand.Reader)
			if err != nil {
				return err
			}
			ctx, end := context.WithCancel(c.Context())
			defer end()
			log, err := watched.log(a)
			if err != nil {
				return err
			}
			tracer, endTraces, err := watched.tracer(ctx, log)
			if err != nil {
				return err
			}
			defer endTraces()
			options := desk.Options{
				Shelf: on, Register: s, Covers: s, SignIn: !desk.Near(addr), Code: code, Version: version(),
				Log: log, Now: time.Now, Random: rand.Reader, Drain: watched.drain,
				Health: health.Options{Ping: s.Ping, Lines: watched.lines(log), Tracer: tracer},
			}
			if show && desk.Near(addr) {
				options.Close = end
			}
			d, err := desk.New(options)
			if err != nil {
				return err
			}
			if !desk.Near(addr) {
				fmt.Fprintln(a.err, "rinkpane: passwords and plans travel as they are: put a server that speaks TLS before this desk")
			}
			if len(known) == 0 {
				fmt.Fprintf(a.err, "rinkpane: nobody has to sign in; whoever sets up the first person, on the page People, needs the code %s\n", code)
			}
			figures, endFigures, err := watched.figures(d, s, log)
			if err != nil {
				return err
			}
			defer endFigures()
			return openDesk(ctx, a, d, ln, figures, show)
		},
	}
	c.Flags().StringVar(&addr, "addr", desk.DefaultAddr, "where to listen: this machine's own address and a port (0 picks one)")
	c.Flags().BoolVar(&demo, "demo-season", false, "fill the demo arena with an invented season of games, covers, inspections and incidents")
	c.Flags().BoolVar(&show, "open", false, "show the desk in the browser at once, where a page can close it, too")
	place.flags(c)
	from.rulesFlag(c)
	watched.flags(c)
	return c
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
