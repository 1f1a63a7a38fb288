package main

import (
	"context"
	"fmt"
	"io"
	"io/fs"
	"log/slog"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/arena"
	"example.org/rinkpane/desk"
	"example.org/rinkpane/examples"
)

func deskCommand(a *app) *cobra.Command {
	var addr string
	var ruleNames []string
	c := &cobra.Command{
		Use:   "desk [ARENA...]",
		Short: "Open the plans on a page of this machine",
		Long: "Opens the example arenas, and those given, as pages in the browser: plan map, boards strip,\n" +
			"findings, fit and light. It reads the files once, when it starts, and changes nothing.\n" +
			"Ctrl-C closes it.",
		Example: "  rinkpane desk\n" +
			"  rinkpane desk my-rink.yaml --addr 127.0.0.1:9000",
		RunE: func(c *cobra.Command, args []string) error {
			maker, err := newMaker(a, ruleNames)
			if err != nil {
				return err
			}
			sources, err := deskSources(a, args)
			if err != nil {
				return err
			}
			d, err := desk.New(sources, maker, slog.New(slog.NewTextHandler(a.err, nil)))
			if err != nil {
				return err
			}
			return openDesk(c.Context(), a, d, addr)
		},
	}
	c.Flags().StringVar(&addr, "addr", desk.DefaultAddr, "where to listen: this machine's own address and a port (0 picks one)")
	rulesFlag(c, &ruleNames)
	return c
}

// openDesk says where the desk is, at once, and serves until Ctrl-C.
func openDesk(ctx context.Context, a *app, d *desk.Desk, addr string) error {
	ln, err := desk.Listen(addr)
	if err != nil {
		return err
	}
	url := "http://" + ln.Addr().String() + "/"
	if a.json {
		fmt.Fprintf(a.stdout, "{\"url\": %q}\n", url)
	} else {
		fmt.Fprintf(a.stdout, "The desk is open at %s\nCtrl-C closes it.\n", url)
	}
	return d.Serve(ctx, ln)
}

// deskSources reads the user's arenas, then the examples.
func deskSources(a *app, paths []string) ([]desk.Source, error) {
	var out []desk.Source
	taken := map[string]bool{}
	for _, path := range paths {
		err := withInput(a, path, func(name string, r io.Reader) error {
			doc, err := arena.Read(name, r)
			if err != nil {
				return err
			}
			out = append(out, desk.Source{Slug: slugFor(name, taken), Origin: name, Document: doc})
			_, err = doc.Check()
			return err
		})
		if err != nil {
			return nil, err
		}
	}
	names, err := fs.Glob(examples.Files, "*.yaml")
	if err != nil {
		return nil, err
	}
	for _, name := range names {
		f, err := examples.Files.Open(name)
		if err != nil {
			return nil, err
		}
		doc, err := arena.Read(name, f)
		if err != nil {
			return nil, err
		}
		out = append(out, desk.Source{Slug: slugFor(name, taken), Origin: "example, invented", Document: doc})
	}
	return out, nil
}

// slugFor makes an address from a file's name: "My Rink.yaml" gives "my-rink",
// a second one "my-rink-2".
func slugFor(path string, taken map[string]bool) string {
	base := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	words := strings.FieldsFunc(strings.ToLower(base), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	})
	slug := strings.Join(words, "-")
	if slug == "" {
		slug = "arena"
	}
	free := slug
	for n := 2; taken[free]; n++ {
		free = fmt.Sprintf("%s-%d", slug, n)
	}
	taken[free] = true
	return free
}
