package cut

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

var update = flag.Bool("update", false, "write the golden drawings anew; look at them before you keep them")

// TestGoldenDrawings compares each kind of drawing with the one that was
// looked at and kept. With -update they are written anew:
//
//	go test ./cut -run Golden -update
func TestGoldenDrawings(t *testing.T) {
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	metric, imperial := shopPlan(t, unit.Metric), shopPlan(t, unit.Imperial)
	bent, order := jobOf(t, imperial, "bent", DefaultOptions()), jobOf(t, metric, "order", DefaultOptions())
	template, err := metric.Template(order, "a4")
	if err != nil {
		t.Fatal(err)
	}
	low, err := metric.WindowJob(metric.Arena.Windows[0], builtInKit(t))
	if err != nil {
		t.Fatal(err)
	}
	open, err := metric.WindowJob(metric.Arena.Windows[1], builtInKit(t))
	if err != nil {
		t.Fatal(err)
	}
	bentSet, twins := imperial.Sheets(bent, paper), twinPlan(t)
	strap := DefaultOptions()
	strap.Hold = Strap
	strapped := imperial.Sheets(jobOf(t, imperial, "bent", strap), paper)
	list, err := metric.List(DefaultOptions(), DefaultSpareOptions())
	if err != nil {
		t.Fatal(err)
	}
	for name, d := range map[string]*sheet.Drawing{
		"bent-pane": bentSet[0], "bent-hole": bentSet[1], "bent-cover": bentSet[2], "bent-hold": bentSet[3], "bent-radius": bentSet[4],
		"order-hole": metric.Sheets(order, paper)[1], "order-form": metric.Sheets(order, paper)[4], "order-template": template[0],
		"window": metric.windowPages(low, paper)[0], "opening": metric.windowPages(open, paper)[0], "cut-list": metric.listPages(list, paper)[0],
		"twins-pane": twins.Sheets(jobOf(t, twins, "flat", DefaultOptions()), paper)[0], "bent-strap": strapped[3],
	} {
		path := filepath.Join("testdata", "golden", name+".svg")
		got := sheet.InlineSVG(d)
		if *update {
			if err := os.WriteFile(path, got, 0o600); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s differs from its golden drawing; look at it, then run with -update", name)
		}
	}
}

// Two runs give the same bytes, whatever the order in which holes are drawn.
func TestFolderIsReproducible(t *testing.T) {
	one, two := folder(t, shopPlan(t, unit.Metric), "a4"), folder(t, shopPlan(t, unit.Metric), "a4")
	if len(one.Files) != 60 || len(one.Files) != len(two.Files) {
		t.Fatalf("%d and %d files", len(one.Files), len(two.Files))
	}
	for i, f := range one.Files {
		if g := two.Files[i]; f.Path != g.Path || !bytes.Equal(f.Data, g.Data) {
			t.Errorf("%s differs between two runs", f.Path)
		}
	}
}

func TestPDFsAreSmall(t *testing.T) {
	const most = 2 << 20 // 2 MB
	n := 0
	for _, f := range folder(t, shopPlan(t, unit.Metric), Full).Files {
		if filepath.Ext(f.Path) == ".pdf" {
			n++
			if len(f.Data) > most {
				t.Errorf("%s has %d bytes", f.Path, len(f.Data))
			}
		}
	}
	if n < 10 {
		t.Fatalf("%d PDFs", n)
	}
}

func BenchmarkFolder(b *testing.B) {
	p := shopPlan(b, unit.Metric)
	r := Request{Paper: "a4", Options: DefaultOptions(), Spares: DefaultSpareOptions(), Kit: builtInKit(b)}
	h, _ := p.Arena.Hole("flat")
	p.Arena.Holes = nil
	for _, id := range []string{"1", "2", "3", "4", "5", "6", "7", "8"} {
		h.ID = id
		p.Arena.Holes = append(p.Arena.Holes, h)
	}
	for b.Loop() {
		if _, err := p.Folder(b.Context(), r); err != nil {
			b.Fatal(err)
		}
	}
}
