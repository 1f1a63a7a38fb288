package cut

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// The patch that is drawn clears every lens that fits the window as it is turned
// and tilted, and is no larger than one of them asks for in width and one in
// height; where none fits so, straight ahead; none when none fits. Faces at the
// nearest play are 1.2 m higher than this window: its patch is for 17 degrees up.
func TestDrawnPatchClearsEveryLensThatFits(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	w := p.Arena.Windows[0]
	seen := map[string]int{}
	for _, side := range []float64{400, 300, 150, 75, 40, 5} {
		w.Size = unit.Size{W: unit.Length(side) * mm, H: unit.Length(side) * mm}
		job, err := p.WindowJob(w, builtInKit(t))
		if err != nil || len(job.Patches) < 5 {
			t.Fatal(len(job.Patches), err)
		}
		if up := math.Atan2(1.65-w.Height.Metres(), 4); math.Abs(job.Aims.Up.Radians()-up) > 1e-9 || job.Aims.Pan != 15*unit.Degree || job.Aims.Down <= 0 {
			t.Fatalf("aims %+v, want %.4f rad up", job.Aims, up)
		}
		least := func(of func(LensPatch) unit.Maybe[fit.Patch]) (size unit.Size, round unit.Length) {
			round = 1
			for _, l := range job.Patches {
				if f, known := of(l).Get(); known && f.Size.W <= w.Size.W && f.Size.H <= w.Size.H {
					size = unit.Size{W: max(size.W, f.Size.W), H: max(size.H, f.Size.H)}
					round = min(round, f.Corner)
				}
			}
			return size, round
		}
		want, round := least(func(l LensPatch) unit.Maybe[fit.Patch] { return l.Swung })
		aims := job.Aims
		if want.W == 0 {
			want, round = least(func(l LensPatch) unit.Maybe[fit.Patch] { return l.Straight })
			aims = fit.Aims{}
		}
		got, ok := job.Clear.Get()
		switch {
		case !ok:
			seen["none"]++
		default:
			seen[aimWords(got.Aims)]++
		}
		if ok != (want.W > 0) || ok && (got.Size != want || got.Corner != round || got.Aims != aims) {
			t.Errorf("%g mm: drawn %+v (%v), want %v with corners %g", side, got, ok, want, round.Millimetres())
		}
	}
	if len(seen) != 3 || seen["straight ahead"] == 0 || seen["none"] == 0 {
		t.Errorf("seen %v", seen)
	}
}

// The sheet's words say what was traced.
func TestTheDrawingSaysItsAims(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	job, err := p.WindowJob(p.Arena.Windows[0], builtInKit(t))
	if err != nil {
		t.Fatal(err)
	}
	said := ""
	for _, w := range wordsOf(p.windowPages(job, paper)[0]) {
		said += w.text + " "
	}
	want := aimWords(job.Clear.Or(fit.Patch{}).Aims)
	if job.Clear.Or(fit.Patch{}).Aims == (fit.Aims{}) || !strings.Contains(said, "clears every lens that fits") || !strings.Contains(said, want) {
		t.Errorf("%q, want %q", said, want)
	}
}

// A low window without a printed film has nothing to cut: no file for a plotter,
// no patch drawn as a cut, and the sheet says so.
func TestNothingIsCutWithoutAFilm(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	n := 0
	for _, f := range folder(t, p, "a4").Files {
		switch {
		case f.Hole == "LW2" && f.Kind == WindowDXF:
			t.Errorf("%s would cut an opening", f.Path)
		case f.Kind == WindowDXF, f.Kind == WindowPDF:
			n++
		}
	}
	if n != 3 {
		t.Errorf("%d drawings of the two windows, want 3", n)
	}
	job, err := p.WindowJob(p.Arena.Windows[1], builtInKit(t))
	if err != nil || job.Clear.IsZero() {
		t.Fatal(job.Clear, err)
	}
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	d := p.windowPages(job, paper)[1]
	said := false
	for _, w := range wordsOf(d) {
		said = said || strings.Contains(w.text, "NOTHING IS CUT")
		if strings.Contains(w.text, "blade") {
			t.Errorf("%q", w.text)
		}
	}
	if !said || strings.Contains(d.Title, "film") {
		t.Errorf("title %q, nothing is cut: %v", d.Title, said)
	}
}

// A window that no lens's patch fits has nothing to cut either, and says so.
func TestNothingIsCutWhereNoPatchFits(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	p.Arena.Windows[0].Size = unit.Size{W: 20 * mm, H: 20 * mm}
	for _, f := range folder(t, p, "a4").Files {
		if f.Kind == WindowDXF {
			t.Errorf("%s has nothing to cut", f.Path)
		}
	}
	job, err := p.WindowJob(p.Arena.Windows[0], builtInKit(t))
	if err != nil {
		t.Fatal(err)
	}
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	all := ""
	for _, w := range wordsOf(p.windowPages(job, paper)[0]) {
		all += w.text + " "
	}
	if !strings.Contains(all, "NO LENS'S PATCH FITS") || strings.Contains(all, "blade") {
		t.Errorf("%q", all)
	}
}
