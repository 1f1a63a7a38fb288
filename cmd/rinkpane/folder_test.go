package main

import (
	"archive/zip"
	"bytes"
	"io"
	"os"
	"path"
	"path/filepath"
	"testing"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/desk/parcel"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/survey/arena"
)

// TestFolderIsTheDesksArchive writes the demo's folder with the command and
// packs it on a desk: the same files, byte for byte.
func TestFolderIsTheDesksArchive(t *testing.T) {
	out := filepath.Join(t.TempDir(), "plan")
	var said, wrong bytes.Buffer
	if code := answer(t.Context(), []string{"plan", "--out", out, "--units", "metric"}, nil, &said, &wrong); code != exitDone {
		t.Fatalf("exit %d: %s", code, &wrong)
	}
	written, err := os.ReadDir(out)
	if err != nil {
		t.Fatal(err)
	}
	packed := archive(t)
	if len(packed) != 15 || len(written) != len(packed) {
		t.Errorf("the command wrote %d files, the desk packed %d; 15 are due", len(written), len(packed))
	}
	for name, data := range packed {
		if mine, err := os.ReadFile(filepath.Join(out, name)); err != nil || !bytes.Equal(mine, data) {
			t.Errorf("%s differs: %v", name, err)
		}
	}
}

// archive returns the files of the demo's plan as a desk packs them.
func archive(t *testing.T) map[string][]byte {
	t.Helper()
	s, err := store.OpenFolder(t.Context(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	from := source{asksKit: true, asksRules: true, ruleNames: []string{rules.Default}}
	if err := from.outfit(&app{}); err != nil {
		t.Fatal(err)
	}
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	on := shelf.New(s, from.Maker, time.Now)
	if _, err := on.Add(t.Context(), "demo", doc, "Ada", "x"); err != nil {
		t.Fatal(err)
	}
	b, err := on.Open(t.Context(), "demo", 0)
	if err != nil {
		t.Fatal(err)
	}
	got, err := parcel.New(on, s, "test").Pack(t.Context(), b, parcel.Folder, parcel.Wish{Units: "metric"})
	if err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(got.Data), int64(len(got.Data)))
	if err != nil {
		t.Fatal(err)
	}
	files := map[string][]byte{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		if files[path.Base(f.Name)], err = io.ReadAll(r); err != nil {
			t.Fatal(err)
		}
	}
	return files
}
