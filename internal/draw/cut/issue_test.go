package cut

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// Every framed sheet says who answers for it, in the fields of ISO 7200, and which
// sheet of its set it is; what nobody gave stands as not given, the date first of all.
func TestTitleBlockSaysWhoAnswers(t *testing.T) {
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	p := shopPlan(t, unit.Metric)
	fields := []string{"Legal owner", "Document number", "Revision", "Date of issue", "Drawn", "Checked", "Approved", "Tolerances", "Sheet"}
	first, err := ParseRevision("A 2027-01-09 first issue")
	if err != nil {
		t.Fatal(err)
	}
	given := Issue{Owner: "Test Rink", Number: "TR-7", Drawn: "Ann", Checked: "Ben", History: []Revision{first, {"B", first.Date.AddDate(0, 0, 1), "corner"}}}
	for _, c := range []struct {
		issue Issue
		words []string
	}{
		{Issue{}, []string{"not issued", notGiven, p.Mark + "-P1", "Ada"}},
		{given, []string{"Test Rink", "TR-7-P1", "B", "2027-01-10", "Ann", "Ben", "Ada"}},
	} {
		p.Issue = c.issue
		sheets := p.Sheets(jobOf(t, p, "flat", DefaultOptions()), paper)
		for i, d := range sheets {
			var said []string
			for _, w := range wordsOf(d) {
				said = append(said, w.text)
			}
			for _, w := range append(append(fields, c.words...), strconv.Itoa(i+1)+" of "+strconv.Itoa(len(sheets))) {
				if !slices.Contains(said, w) {
					t.Errorf("%s lacks %q", d.Title, w)
				}
			}
			if today := time.Now().Format(time.DateOnly); slices.Contains(said, today) {
				t.Errorf("%s says today's date", d.Title)
			}
		}
	}
	for _, s := range []string{"", "A", "A 9.1.2027 first"} {
		if _, err := ParseRevision(s); err == nil {
			t.Errorf("%q is read as a revision", s)
		}
	}
}

// In brackets stands the governing number again, to within a tenth of what the drawing
// allows; the allowance in brackets never allows more.
func TestBracketsDoNotContradict(t *testing.T) {
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(strings.TrimPrefix(strings.Fields(s)[0], "±"), 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for um := 500; um < 400_000; um += 1_357 {
		l := unit.Length(um) * unit.Millimetre / 1000
		text, _, _ := strings.Cut(both(l).Say(unit.Metric), " (")
		_, inches := sheet.Measure(l)
		if strings.Contains(inches, ".") && !strings.Contains(inches, "/") {
			if off := math.Abs(number(text) - 25.4*number(inches)); off > 0.1 {
				t.Errorf("%s and %s differ by %.3f mm", text, inches, off)
			}
		}
	}
	for _, l := range []unit.Length{0.25 * mm, 0.5 * mm, 1 * mm, 1.9 * mm, 2 * mm} {
		for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
			a, b, _ := strings.Cut(tolerance(l, sys), " (")
			if sys == unit.Imperial {
				a, b = b, a
			}
			if number(a) > l.Millimetres()+1e-9 || 25.4*number(b) > l.Millimetres()+1e-9 {
				t.Errorf("%s allows more than %g mm", tolerance(l, sys), l.Millimetres())
			}
		}
	}
}

// Every drawing to scale has a scale of ISO 5455:1979 (from memory).
func TestScalesAreStandard(t *testing.T) {
	want := []string{"50:1", "20:1", "10:1", "5:1", "2:1", "1:1", "1:2", "1:5", "1:10", "1:20", "1:50", "1:100", "1:200", "1:500", "1:1000"}
	for _, s := range scales() {
		if !slices.Contains(want, scaleText(s)) {
			t.Errorf("scale %s", scaleText(s))
		}
	}
	for _, paper := range sheet.Papers() {
		for side := unit.Length(0.001); side < 40; side *= 1.7 {
			s := set{growth: paper.Growth()}
			if k := s.scaleFor(side, side/2, 80, 60, 10); !slices.Contains(want, scaleText(k)) || k > scales()[len(scales())-1] && side.Millimetres()*k > 80*s.growth {
				t.Errorf("%s on %s is drawn at %s", side.FormatFine(unit.Metric), paper.Name, scaleText(k))
			}
		}
	}
}
