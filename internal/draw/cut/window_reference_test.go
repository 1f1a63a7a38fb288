package cut

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// TestPatchAgainstRays throws rays from the pupil's rim over the whole frame,
// bends each at the rear face as a vector (Snell in three dimensions) and takes
// the farthest places on the film.
func TestPatchAgainstRays(t *testing.T) {
	v := View{Pupil: 8.6 * mm, Behind: 37 * mm, HalfH: 37 * unit.Degree, HalfV: 26.5 * unit.Degree, Turn: 10 * unit.Degree, Index: 1.5848, Thick: 9.5 * mm}
	p, err := v.Patch(unit.Size{W: 1, H: 1})
	if err != nil || !p.Fits {
		t.Fatal(p, err)
	}
	// The camera turned by up to 10 degrees is a frame wider by 10 degrees on each side.
	maxX, maxY, n := 0.0, 0.0, 0
	tx, ty := math.Tan((v.HalfH + v.Turn).Radians()), math.Tan(v.HalfV.Radians())
	for i := -40; i <= 40; i++ {
		for k := -40; k <= 40; k++ {
			for rim := range 24 {
				s, c := math.Sincos(2 * math.Pi * float64(rim) / 24)
				d := [3]float64{tx * float64(i) / 40, ty * float64(k) / 40, 1}
				x := v.Pupil.Metres()/2*c + d[0]*v.Behind.Metres()
				y := v.Pupil.Metres()/2*s + d[1]*v.Behind.Metres()
				l := math.Sqrt(d[0]*d[0] + d[1]*d[1] + 1)
				bx, by := d[0]/l/v.Index, d[1]/l/v.Index // the part along the face keeps n sin
				bz := math.Sqrt(1 - bx*bx - by*by)
				x += bx / bz * v.Thick.Metres()
				y += by / bz * v.Thick.Metres()
				maxX, maxY = max(maxX, x), max(maxY, y)
				n++
			}
		}
	}
	if n != 81*81*24 {
		t.Fatalf("%d rays", n)
	}
	if math.Abs(p.Size.W.Metres()-2*maxX) > 1e-6 || math.Abs(p.Size.H.Metres()-2*maxY) > 1e-6 {
		t.Errorf("patch %.4f x %.4f mm, rays %.4f x %.4f", p.Size.W.Millimetres(), p.Size.H.Millimetres(), 2000*maxX, 2000*maxY)
	}
}

// Index 1 bends nothing: panel and air are one.
func TestPatchOfAir(t *testing.T) {
	v := View{Pupil: 10 * mm, Behind: 30 * mm, HalfH: 45 * unit.Degree, HalfV: 30 * unit.Degree, Index: 1, Thick: 10 * mm}
	p, err := v.Patch(unit.Size{W: 0.09, H: 0.09})
	if err != nil || math.Abs(p.Size.W.Millimetres()-90) > 1e-9 || math.Abs(p.Size.H.Millimetres()-(10+80*math.Tan(math.Pi/6))) > 1e-9 {
		t.Errorf("patch %+v, %v", p, err)
	}
	if p.Fits != (p.Size.W <= 0.09) {
		t.Errorf("fits: %v for %.12f mm", p.Fits, p.Size.W.Millimetres())
	}
	v.FilmBehind = true
	if p, _ := v.Patch(unit.Size{}); math.Abs(p.Size.W.Millimetres()-70) > 1e-9 || p.Fits {
		t.Errorf("film behind: %+v", p)
	}
}

func TestPatchRefuses(t *testing.T) {
	v := View{Pupil: 10 * mm, Behind: 30 * mm, HalfH: 60 * unit.Degree, HalfV: 30 * unit.Degree, Turn: 20 * unit.Degree, Index: 1.5}
	if _, err := v.Patch(unit.Size{}); err == nil || !strings.Contains(err.Error(), "endless patch") {
		t.Errorf("error %v", err)
	}
	l := kit.Lens{FocalMin: 24 * mm, Stop: 2.8, Nose: 87 * mm}
	_, err := ViewOf(l, unit.Size{W: 36 * mm, H: 24 * mm}, glass.Window{ID: "w", Material: glass.Acrylic})
	if err == nil || !strings.Contains(err.Error(), "thickness must be recorded") {
		t.Errorf("error %v", err)
	}
}

// By hand: 24 mm at f/2.8, nose 87 mm: pupil 8.5714 mm, half diagonal
// atan(43.2666/48) = 42.0298 deg, depth (78.3 - 8.5714)/(2 x 0.901388) = 38.679 mm, and 5 mm of gap.
func TestViewOfByHand(t *testing.T) {
	l := kit.Lens{FocalMin: 24 * mm, Stop: 2.8, Nose: 87 * mm}
	v, err := ViewOf(l, unit.Size{W: 36 * mm, H: 24 * mm}, glass.Window{Open: true})
	if err != nil || math.Abs(v.Behind.Millimetres()-43.679) > 1e-3 || math.Abs(v.Pupil.Millimetres()-8.5714) > 1e-4 {
		t.Errorf("%+v %v", v, err)
	}
	if math.Abs(v.HalfH.Degrees()-36.8699) > 1e-4 || math.Abs(v.HalfV.Degrees()-26.5651) > 1e-4 {
		t.Errorf("view %.4f x %.4f deg", v.HalfH.Degrees(), v.HalfV.Degrees())
	}
}

// The patch that is drawn clears every lens that fits the window, and is no
// larger than one of them asks for in width and one in height; none when none fits.
func TestDrawnPatchClearsEveryLensThatFits(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	w := p.Arena.Windows[0]
	seen := map[bool]int{}
	for _, side := range []float64{300, 110, 75, 40, 5} {
		w.Size = unit.Size{W: unit.Length(side) * mm, H: unit.Length(side) * mm}
		job, err := p.WindowJob(w, builtInKit(t))
		if err != nil || len(job.Patches) < 5 {
			t.Fatal(len(job.Patches), err)
		}
		var want unit.Size
		round := unit.Length(1)
		for _, l := range job.Patches {
			if s := l.Straight.Size; s.W <= w.Size.W && s.H <= w.Size.H {
				want = unit.Size{W: max(want.W, s.W), H: max(want.H, s.H)}
				round = min(round, l.Straight.Corner)
			}
		}
		got, ok := job.Clear.Get()
		seen[ok]++
		if ok != (want.W > 0) || got.Size != want || (ok && got.Corner != round) {
			t.Errorf("%g mm: drawn %+v (%v), want %v with corners %g", side, got, ok, want, round.Millimetres())
		}
	}
	if seen[true] < 2 || seen[false] < 1 {
		t.Errorf("seen %v", seen)
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
	d := p.windowPage(job, paper)[0]
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
	for _, w := range wordsOf(p.windowPage(job, paper)[0]) {
		all += w.text + " "
	}
	if !strings.Contains(all, "NO LENS'S PATCH FITS") || strings.Contains(all, "blade") {
		t.Errorf("%q", all)
	}
}

// A 70-200 mm f/2.8 looks through a pupil of 71.4 mm at its long end, wider than
// at its short end by more than its view narrows: the patch clears both ends. By
// hand, at 200 mm in an opening: 71.43 + 2 (d + 5) 18/200 wide, d the pupil's depth.
func TestPatchClearsAZoomAtBothEnds(t *testing.T) {
	body := unit.Size{W: 36 * mm, H: 24 * mm}
	l := kit.Lens{ID: "zoom", FocalMin: 70 * mm, FocalMax: 200 * mm, Stop: 2.8, StopLong: 2.8, Nose: 88 * mm, PupilDepth: unit.Known(20 * mm)}
	w := glass.Window{ID: "w", Open: true, Size: unit.Size{W: 300 * mm, H: 200 * mm}}
	got, err := lensPatch(l, body, w)
	if err != nil {
		t.Fatal(err)
	}
	wide, long := 200/2.8+2*25*18.0/200, 200/2.8+2*25*12.0/200
	if math.Abs(got.Straight.Size.W.Millimetres()-wide) > 1e-6 || math.Abs(got.Straight.Size.H.Millimetres()-long) > 1e-6 {
		t.Errorf("patch %v, want %.3f x %.3f mm", got.Straight.Size, wide, long)
	}
	for _, f := range []unit.Length{70, 85, 135, 200} {
		v, err := viewAt(l, f*mm, 2.8, body, w)
		if err != nil {
			t.Fatal(err)
		}
		if p, err := v.Patch(w.Size); err != nil || p.Size.W > got.Straight.Size.W+1e-9 || p.Size.H > got.Straight.Size.H+1e-9 {
			t.Errorf("%v mm needs %v, the patch is %v, %v", f, p.Size, got.Straight.Size, err)
		}
	}
}
