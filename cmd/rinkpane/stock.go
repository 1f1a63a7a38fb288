package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"strings"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/arena"
)

// importWho is who imports when the desk starts.
const importWho = "desk"

// anImport is a file to be put on the desk when it opens.
type anImport struct {
	id, name string
	doc      *arena.Document
}

// readImports reads and checks the files that a user named.
func readImports(a *app, paths []string) ([]anImport, error) {
	var out []anImport
	for _, path := range paths {
		err := withInput(a, path, func(name string, r io.Reader) error {
			doc, err := arena.Read(name, r)
			if err == nil {
				_, err = doc.Check()
			}
			out = append(out, anImport{idOf(name), name, doc})
			return err
		})
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// idOf makes an id from a file's name: "My Rink.yaml" gives "my-rink".
func idOf(path string) string {
	base := filepath.Base(path)
	return revision.IDFrom(strings.TrimSuffix(base, filepath.Ext(base)))
}

// stock puts the examples on an empty shelf, and the user's files on any.
func stock(ctx context.Context, a *app, on *shelf.Shelf, files []anImport) error {
	there, err := on.Keeper().Documents(ctx, revision.Arena, true)
	if err != nil {
		return err
	}
	if len(there) == 0 {
		if err := stockExamples(ctx, on); err != nil {
			return err
		}
	}
	for _, f := range files {
		said, err := on.Import(ctx, f.id, f.doc, importWho, "import "+filepath.Base(f.name))
		if err != nil {
			return fmt.Errorf("%s: %w", f.name, err)
		}
		fmt.Fprintf(a.err, "rinkpane: %s: %s\n", printable(f.name), said)
	}
	return nil
}

func stockExamples(ctx context.Context, on *shelf.Shelf) error {
	names, err := fs.Glob(examples.Files, "*.yaml")
	if err != nil {
		return err
	}
	for _, name := range names {
		f, err := examples.Files.Open(name)
		if err != nil {
			return err
		}
		doc, err := arena.Read(name, f)
		if err != nil {
			return err
		}
		// Another desk on the same store may have been quicker.
		if _, err := on.Add(ctx, idOf(name), doc, importWho, "an example, invented"); err != nil && !errors.Is(err, revision.ErrTaken) {
			return err
		}
	}
	return nil
}
