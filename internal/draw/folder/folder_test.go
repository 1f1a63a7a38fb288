package folder_test

import (
	"bytes"
	"encoding/json"
	"io/fs"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/folder"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/wire"
)

// whole is the whole plan of an example, as the command makes it.
func whole(t testing.TB, name string) plan.Plan {
	t.Helper()
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
	text, err := examples.Files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := arena.Read(name, bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	m := plan.Maker{Kit: k, Rules: sets}
	p, err := m.Make(t.Context(), doc)
	if err != nil {
		t.Fatal(err)
	}
	if p, err = m.Whole(t.Context(), p, true); err != nil {
		t.Fatal(err)
	}
	return p
}

func files(t testing.TB, p plan.Plan, sys unit.System) []folder.File {
	t.Helper()
	out, err := folder.Files(p, sys)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// inches finds a length in inches or feet in words or in JSON; "H1 in" is none.
var inches = regexp.MustCompile(`[\s"(>][0-9][0-9/ ]* (in|ft)\b`)

// metres finds a length in metres or millimetres. Lenses are told in mm everywhere.
var metres = regexp.MustCompile(`[0-9] m\b`)

// TestEveryFileSpeaksTheAskedUnits writes the folder of each example in both
// systems: no text, drawing or sentence of one system is in the other's.
func TestEveryFileSpeaksTheAskedUnits(t *testing.T) {
	names, err := fs.Glob(examples.Files, "*.yaml")
	if err != nil || len(names) < 3 {
		t.Fatalf("examples: %v, %v", names, err)
	}
	lines := 0
	for _, name := range names {
		p := whole(t, name)
		for sys, foreign := range map[unit.System]*regexp.Regexp{unit.Metric: inches, unit.Imperial: metres} {
			made := files(t, p, sys)
			if len(made) < 8 {
				t.Errorf("%s: %d files", name, len(made))
			}
			for _, f := range made {
				if at := foreign.FindIndex(f.Data); at != nil {
					t.Errorf("%s in %s, %s: %q", name, sys, f.Name, f.Data[max(0, at[0]-60):min(len(f.Data), at[1]+20)])
				}
				if strings.HasSuffix(f.Name, ".txt") {
					lines += checkLines(t, name+" in "+sys.String()+", "+f.Name, string(f.Data))
				}
			}
		}
	}
	if lines < 500 {
		t.Errorf("read %d lines", lines)
	}
}

// checkLines wants every line to fit its columns, and no blank at its end.
func checkLines(t *testing.T, name, text string) (lines int) {
	t.Helper()
	for line := range strings.Lines(text) {
		lines++
		line = strings.TrimSuffix(line, "\n")
		if n := utf8.RuneCountInString(line); n > table.Width {
			t.Errorf("%s: %d columns: %s", name, n, line)
		}
		if strings.TrimRight(line, " ") != line {
			t.Errorf("%s: space at the end of %q", name, line)
		}
	}
	return lines
}

// TestFilesAreTheSameToTheByte makes a plan on one core and on several.
func TestFilesAreTheSameToTheByte(t *testing.T) {
	first := files(t, whole(t, examples.Demo), unit.Metric)
	before := runtime.GOMAXPROCS(1)
	t.Cleanup(func() { runtime.GOMAXPROCS(before) })
	second := files(t, whole(t, examples.Demo), unit.Metric)
	if len(first) != len(second) || len(first) != 15 {
		t.Fatalf("%d files, then %d", len(first), len(second))
	}
	for i := range first {
		if first[i].Name != second[i].Name || !bytes.Equal(first[i].Data, second[i].Data) {
			t.Errorf("%s differs from one run to the next", first[i].Name)
		}
	}
}

// TestChoiceAndGuardAreInTheFolder reads both back as a program would.
func TestChoiceAndGuardAreInTheFolder(t *testing.T) {
	p := whole(t, examples.Demo)
	drawn := chart.OfChoice(*p.Choice, 0, unit.Metric)
	if len(drawn.Arena.Holes) != 8 || len(drawn.Others) == 0 {
		t.Errorf("%d holes and %d alternatives on the map", len(drawn.Arena.Holes), len(drawn.Others))
	}
	var choice wire.Choice
	var guards []struct {
		Hole  string
		Share float64 `json:"share_of_shots"`
	}
	into := map[string]any{"choice.json": &choice, "guard.json": &guards}
	for _, f := range files(t, p, unit.Metric) {
		if v, ok := into[f.Name]; ok {
			if err := json.Unmarshal(f.Data, v); err != nil {
				t.Errorf("%s: %v", f.Name, err)
			}
		}
	}
	if choice.Status != string(solve.Optimal) || len(choice.Holes) != 8 || len(choice.Alternatives) != 2 {
		t.Errorf("choice: %s, %d holes, %d alternatives", choice.Status, len(choice.Holes), len(choice.Alternatives))
	}
	if len(guards) != 8 || guards[0].Share <= 0 {
		t.Errorf("guard: %+v", guards)
	}
}

// BenchmarkFiles writes the demo's folder, drawings and all, to memory.
func BenchmarkFiles(b *testing.B) {
	p := whole(b, examples.Demo)
	for b.Loop() {
		files(b, p, unit.Metric)
	}
}
