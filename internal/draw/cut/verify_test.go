package cut

import (
	"errors"
	"os"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

func folder(t testing.TB, p ShopOrder, paper string) Folder {
	t.Helper()
	f, err := p.Folder(t.Context(), Request{Paper: paper, Options: DefaultOptions(), Spares: DefaultSpareOptions(), Kit: builtInKit(t), Creator: "test"})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Every drawing carries the plan's mark; a changed document has another.
func TestEveryDrawingIsStamped(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	seen := map[Format]int{}
	for _, f := range folder(t, p, "a4").Files {
		if f.Kind == CutListTable || f.Kind == TableCSV {
			continue
		}
		mark, format, err := Verify(f.Data)
		if err != nil || mark != p.Revision {
			t.Errorf("%s: mark %q, %v, want %s", f.Path, mark, err, p.Revision)
		}
		seen[format]++
	}
	if seen[PDF] != 11 || seen[DXF] != 34 || seen[SVG] != 8 {
		t.Errorf("drawings seen: %v", seen)
	}
	text, err := os.ReadFile("testdata/shop.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if arena.Mark(append(text, '\n')) == p.Mark || arena.Mark(text) != p.Mark || len(p.Mark) != 12 {
		t.Errorf("mark %s does not follow the text", p.Mark)
	}
}

// Two plans whose short forms are the same are told apart; a drawing that
// carries the short form alone proves nothing.
func TestAShortFormProvesNothing(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	q := p
	q.Revision = p.Mark + strings.Repeat("0", len(p.Revision)-len(p.Mark))
	j := jobOf(t, p, "flat", DefaultOptions())
	mark, _, err := Verify(sheet.DXF(q.PaneOutline(j)))
	if err != nil || mark == p.Revision || mark != q.Revision || !strings.HasPrefix(mark, p.Mark) {
		t.Errorf("mark %s, %v", mark, err)
	}
	old := []byte("%PDF-1.7 rinkpane-plan-" + p.Mark + " ")
	if _, _, err := Verify(old); !errors.Is(err, ErrShort) {
		t.Errorf("a short form: %v", err)
	}
}

func TestVerifyRefuses(t *testing.T) {
	if _, _, err := Verify([]byte("rinkpane: arena 1")); !errors.Is(err, ErrNoDrawing) {
		t.Errorf("an arena file: %v", err)
	}
	if _, _, err := Verify(nil); !errors.Is(err, ErrNoDrawing) {
		t.Errorf("nothing: %v", err)
	}
	if _, _, err := Verify([]byte("%PDF-1.7 nothing in it")); !errors.Is(err, ErrNoStamp) {
		t.Errorf("a foreign PDF: %v", err)
	}
	two := "<svg>rinkpane-plan-0123456789ab0000000000000000000000000000000000000000000000000000 rinkpane-plan-ba98765432100000000000000000000000000000000000000000000000000000</svg>"
	if _, _, err := Verify([]byte(two)); err == nil || !strings.Contains(err.Error(), "two plans") {
		t.Errorf("two plans: %v", err)
	}
}

func FuzzVerify(f *testing.F) {
	f.Add([]byte("%PDF-1.7 rinkpane-plan-0123456789ab0000000000000000000000000000000000000000000000000000 "))
	f.Add([]byte("<svg>rinkpane-plan-0123456789ab0000000000000000000000000000000000000000000000000000</svg>"))
	f.Add([]byte("  0\nSECTION\n  2\nHEADER\nrinkpane-plan-0123456789abc"))
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, b []byte) {
		mark, format, err := Verify(b)
		if (err == nil) != (len(mark) == 64) || (err == nil && format == "") {
			t.Fatalf("mark %q, format %q, error %v", mark, format, err)
		}
	})
}
