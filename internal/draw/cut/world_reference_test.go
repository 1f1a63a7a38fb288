package cut

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// debianPython is the interpreter that sees Debian's python3-ezdxf.
const debianPython = "/usr/bin/python3"

// tool runs a program of the machine and returns its output.
func tool(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	out, err := exec.Command(name, args...).Output()
	if err != nil {
		detail := ""
		if e, ok := err.(*exec.ExitError); ok {
			detail = string(e.Stderr)
		}
		t.Fatalf("%s %v: %v %s", name, args, err, detail)
	}
	return out
}

func keep(t *testing.T, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// tracesPerMM is the resolution at which poppler draws what is measured: 2540
// dots per inch, a hundredth of a millimetre a dot.
const tracesPerMM = 100

// runs draws a strip of a PDF's first page one dot wide with poppler's
// pdftoppm and returns the dark runs along it, in millimetres from the strip's start.
func runs(t *testing.T, pdf string, x, y, w, h float64) [][2]float64 {
	t.Helper()
	px := func(mm float64) string { return strconv.Itoa(int(math.Round(mm * tracesPerMM))) }
	size := func(mm float64) string { return strconv.Itoa(max(1, int(math.Round(mm*tracesPerMM)))) }
	pgm := tool(t, "pdftoppm", "-r", "2540", "-f", "1", "-l", "1", "-gray", "-x", px(x), "-y", px(y), "-W", size(w), "-H", size(h), pdf)
	var cols, rows, most int
	n, err := fmt.Sscanf(string(pgm[:min(len(pgm), 40)]), "P5\n%d %d\n%d", &cols, &rows, &most)
	if err != nil || n != 3 || (cols != 1 && rows != 1) {
		t.Fatalf("no strip: %q, %v", pgm[:min(len(pgm), 20)], err)
	}
	dots := pgm[len(pgm)-cols*rows:]
	var out [][2]float64
	for i := 0; i < len(dots); i++ {
		if dots[i] >= 128 {
			continue
		}
		from := i
		for i < len(dots) && dots[i] < 128 {
			i++
		}
		out = append(out, [2]float64{float64(from) / tracesPerMM, float64(i) / tracesPerMM})
	}
	return out
}

// TestTemplateOnPaper measures the printed template with poppler: both check
// bars from outer edge to outer edge and the hole's outline, to 0.01 mm, in plans of both systems.
func TestTemplateOnPaper(t *testing.T) {
	for sys, papers := range map[unit.System][]string{unit.Metric: {"a4", Full}, unit.Imperial: {"letter", "tabloid"}} {
		for _, paper := range papers {
			p := shopPlan(t, sys)
			j := jobOf(t, p, "bent", DefaultOptions())
			tiles, err := p.Template(j, paper)
			if err != nil || len(tiles) != 1 {
				t.Fatalf("%s: %d sheets, %v", paper, len(tiles), err)
			}
			data, err := p.pdf(t.Context(), "template", "test", tiles)
			if err != nil {
				t.Fatal(err)
			}
			pdf := keep(t, "template.pdf", data)
			name := fmt.Sprintf("%s, %s", sys, paper)
			checkBars(t, name, pdf, tiles[0])
			checkHole(t, name, pdf, tiles[0], j)
			text := strings.Join(strings.Fields(string(tool(t, "pdftotext", pdf, "-"))), " ")
			for _, w := range []string{"Measure all bars", "100 mm", "4 in", p.Mark, "No hole without its cover"} {
				if !strings.Contains(text, w) {
					t.Errorf("%s: the page's text lacks %q", name, w)
				}
			}
			if bytes.Contains(data, []byte("UserUnit")) {
				t.Errorf("%s: the page has a UserUnit", name)
			}
		}
	}
}

func checkBars(t *testing.T, name, pdf string, d *sheet.Drawing) {
	t.Helper()
	for i, want := range []float64{100, 101.6} {
		y := sheet.Margin + pagePad + barHeight/2 + float64(i)*(barHeight+3)
		// From inside the frame's border to before the label.
		x := sheet.FilingMargin + 2
		if d.W < 209 { // a narrow sheet has no filing margin
			x = sheet.Margin + 2
		}
		got := runs(t, pdf, x, y, 106, 0)
		if len(got) != 1 {
			t.Errorf("%s: bar %d: %d dark runs", name, i, len(got))
			continue
		}
		if long := got[0][1] - got[0][0]; math.Abs(long-want) > 0.01+1e-9 {
			t.Errorf("%s: bar of %.2f mm, want %g", name, long, want)
		}
	}
}

// checkHole crosses the outline away from centre lines and pilot holes.
func checkHole(t *testing.T, name, pdf string, d *sheet.Drawing, j Job) {
	t.Helper()
	box := cutBox(t, d)
	middle := func(r [2]float64) float64 { return (r[0] + r[1]) / 2 }
	across := runs(t, pdf, box.X-3, box.Y+box.H*0.36, box.W+6, 0)
	if len(across) < 2 {
		t.Fatalf("%s: %d lines across", name, len(across))
	}
	if w := middle(across[len(across)-1]) - middle(across[0]); math.Abs(w-j.Hole.Size.W.Millimetres()) > 0.01+1e-9 {
		t.Errorf("%s: hole %.3f mm wide, want %.3f", name, w, j.Hole.Size.W.Millimetres())
	}
	down := runs(t, pdf, box.X+box.W*0.3, box.Y-3, 0, box.H+6)
	if len(down) < 2 {
		t.Fatalf("%s: %d lines down", name, len(down))
	}
	if h := middle(down[len(down)-1]) - middle(down[0]); math.Abs(h-j.Hole.Size.H.Millimetres()) > 0.01+1e-9 {
		t.Errorf("%s: hole %.3f mm high, want %.3f", name, h, j.Hole.Size.H.Millimetres())
	}
}

// cutBox returns where the drawing has its outline on layer CUT.
func cutBox(t *testing.T, d *sheet.Drawing) sheet.Rect {
	t.Helper()
	only := *d
	only.Items = nil
	for _, e := range d.Items {
		if e.Layer == sheet.LayerCut {
			only.Items = append(only.Items, e)
		}
	}
	return only.Bounds()
}
