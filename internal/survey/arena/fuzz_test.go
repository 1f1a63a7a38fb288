package arena_test

import (
	"bytes"
	"errors"
	"io/fs"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
)

// FuzzRead reads any text as an arena: nothing panics, every error is a Problem
// of the file, and what is sound keeps its promises.
func FuzzRead(f *testing.F) {
	seeds := 0
	for _, name := range names(f) {
		text, err := fs.ReadFile(examples.Files, name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
		seeds++
	}
	for _, s := range []string{start, start + "panes: [{id: P, width: 1 m, height: 1 m}]\nholes: [{id: H, place: 0.5 m, height: 1.5 m, size: 1 x 1 cm}]\n",
		"a: &a [x]\nb: [*a, *a]\n", "rinkpane: arena 1\n\tname: x\n", "\x00\x01", "- - -", "{", "rink: {length: 1e9 m, width: -1 m, corner-radius: NaN m}"} {
		f.Add([]byte(s))
		seeds++
	}
	if seeds < 10 {
		f.Fatalf("%d seeds", seeds)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		d, err := arena.Read("f.yaml", bytes.NewReader(text))
		if err != nil {
			isProblem(t, err)
			return
		}
		a, err := d.Check()
		if err != nil {
			isProblem(t, err)
			return
		}
		for _, h := range a.Holes {
			if p, ok := a.Pane(h.Pane); !ok || h.Size.W >= p.Width || h.Size.H >= p.Height {
				t.Fatalf("hole %s in pane %s: %+v", h.ID, h.Pane, h)
			}
		}
	})
}

func isProblem(t *testing.T, err error) {
	t.Helper()
	var p *form.Problem
	if !errors.As(err, &p) || p.File != "f.yaml" || p.Text == "" {
		t.Fatalf("%T: %v", err, err)
	}
}
