package parcel_test

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/parcel"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

func demoBook(t *testing.T) (*parcel.Packer, shelf.Book) {
	t.Helper()
	s, err := store.OpenFolder(t.Context(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	set, err := rules.Shipped(rules.Default)
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	on := shelf.New(s, plan.Maker{Kit: k, Rules: sets}, time.Now)
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := on.Add(t.Context(), "demo", doc, "Ada", "x"); err != nil {
		t.Fatal(err)
	}
	b, err := on.Open(t.Context(), "demo", 0)
	if err != nil {
		t.Fatal(err)
	}
	return parcel.New(on, s, "rinkpane test"), b
}

// TestParcelsTellTheirRevision packs every kind: its name carries the arena,
// version and mark, its bytes begin as such a file does, and are the same twice.
func TestParcelsTellTheirRevision(t *testing.T) {
	p, b := demoBook(t)
	begins := map[parcel.Kind]string{
		parcel.Document: "rinkpane: arena 1", parcel.PlanJSON: "{", parcel.Map: "<svg", parcel.Strip: "<svg", parcel.Outline: "999\n",
		parcel.Cut: "PK", parcel.Book: "%PDF-", parcel.BookPage: "<!", parcel.Folder: "PK", parcel.Tables: "PK", parcel.Archive: "PK",
	}
	if len(begins) != len(parcel.Kinds()) {
		t.Fatalf("%d kinds", len(parcel.Kinds()))
	}
	for _, k := range parcel.Kinds() {
		got, err := p.Pack(t.Context(), b, k, parcel.Wish{Hole: "B1"})
		if err != nil {
			t.Fatalf("%s: %v", k, err)
		}
		want := "demo-v1-" + b.Mark + "-" + string(k)
		if k == parcel.Outline {
			want = "demo-v1-" + b.Mark + "-hole-B1.dxf" // of several holes, several files
		}
		if got.Name != want || got.Media == "" || k.Words() == "" {
			t.Errorf("%s is named %s, %s", k, got.Name, got.Media)
		}
		start := strings.TrimPrefix(string(got.Data[:min(200, len(got.Data))]), `<?xml version="1.0" encoding="UTF-8"?>`+"\n")
		if !strings.HasPrefix(strings.ToLower(start), strings.ToLower(begins[k])) {
			t.Errorf("%s begins %.60q", k, start)
		}
		again, err := p.Pack(t.Context(), b, k, parcel.Wish{Hole: "B1"})
		if err != nil || !bytes.Equal(got.Data, again.Data) {
			t.Errorf("%s is another the second time, %v", k, err)
		}
	}
}

// TestCutZipHoldsDrawingsOfThisPlan reads the revision back from the drawings.
func TestCutZipHoldsDrawingsOfThisPlan(t *testing.T) {
	p, b := demoBook(t)
	got, err := p.Pack(t.Context(), b, parcel.Cut, parcel.Wish{Paper: "a3"})
	if err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(got.Data), int64(len(got.Data)))
	if err != nil {
		t.Fatal(err)
	}
	drawings, mark := 0, arena.Revision(b.Arena.Bytes())
	for _, f := range z.File {
		if !f.Modified.Equal(b.Version.At.Truncate(time.Second)) {
			t.Errorf("%s is of %v, the version of %v", f.Name, f.Modified, b.Version.At)
		}
		if !strings.HasPrefix(f.Name, "demo-v1-"+b.Mark+"/") || strings.Contains(f.Name, "..") || strings.Contains(f.Name, `\`) {
			t.Errorf("a file named %s", f.Name)
		}
		if !strings.HasSuffix(f.Name, ".pdf") && !strings.HasSuffix(f.Name, ".dxf") {
			continue
		}
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		data, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if m, _, err := cut.Verify(data); err != nil || m != mark {
			t.Errorf("%s is of %s, %v, expected %s", f.Name, m, err, mark)
		}
		drawings++
	}
	if drawings < 16 {
		t.Errorf("only %d drawings for 8 holes", drawings)
	}
}

func TestWishesThatCannotBeMet(t *testing.T) {
	p, b := demoBook(t)
	for _, x := range []struct {
		kind parcel.Kind
		wish parcel.Wish
		says string
	}{
		{"passwd", parcel.Wish{}, "choose one of"},
		{parcel.Outline, parcel.Wish{}, "none of that name"},
		{parcel.Outline, parcel.Wish{Hole: "../B1"}, "none of that name"},
		{parcel.Cut, parcel.Wish{Paper: "papyrus"}, "paper"},
		{parcel.Map, parcel.Wish{Units: "furlongs"}, "units"},
	} {
		_, err := p.Pack(t.Context(), b, x.kind, x.wish)
		var wish *parcel.Error
		if !errors.As(err, &wish) || !strings.Contains(err.Error(), x.says) {
			t.Errorf("%s %+v: %v, expected %q", x.kind, x.wish, err, x.says)
		}
	}
	metric, err := p.Pack(t.Context(), b, parcel.PlanJSON, parcel.Wish{Units: "metric"})
	if err != nil || !json.Valid(metric.Data) {
		t.Errorf("plan.json: %v", err)
	}
}

// A person who is about to take drawings away reads which letters of the arena's
// names their fonts lack; nothing where they hold all.
func TestLackIsTold(t *testing.T) {
	_, b := demoBook(t)
	if said := parcel.Lack(b); said != "" {
		t.Errorf("nothing is missing, yet: %s", said)
	}
	for _, of := range [][2]string{
		{"name: Tidewater Pavilion", "name: 冰场 Pavilion"},
		{"place: Quillhaven", "place: 冰场"},
		{"note: Behind the goal line", "note: 冰场 behind the goal line"},
	} {
		text := strings.Replace(string(b.Arena.Bytes()), of[0], of[1], 1)
		doc, err := arena.Read("foreign.yaml", strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		if said := parcel.Lack(shelf.Book{Arena: doc}); !strings.Contains(said, "lack 2 letters of: 冰场;") {
			t.Errorf("%s: told %q", of[1], said)
		}
	}
}
