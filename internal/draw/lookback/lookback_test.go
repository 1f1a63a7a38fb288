package lookback_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/draw/lookback"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// report is of a game with two holes, 40 frames, and light by end and zone.
func report(t *testing.T) lookback.Report {
	t.Helper()
	paper, err := sheet.ParsePaper("a4")
	if err != nil {
		t.Fatal(err)
	}
	begin := time.Date(2026, 11, 28, 19, 0, 0, 0, time.UTC)
	a := recap.Answer{Evening: recap.Evening{Title: "Herons - Otters", Stages: []recap.Stage{{Name: "period-1", Period: 1, From: begin, To: begin.Add(40 * time.Minute)}}}}
	for i := range 40 {
		a.Frames = append(a.Frames, recap.Matched{At: begin.Add(time.Duration(i) * time.Minute), Hole: []string{"B1", "A1"}[i%2], Stage: "period-1", Sure: recap.Certain})
	}
	lux := recap.Spread{Low: 600, Median: 800, High: 1000, N: 20}
	a.Light = []recap.Seen{{Lux: lux}, {End: "B", Lux: lux}, {End: "B", Stage: "period-1", Lux: lux}, {Zone: "slot-B", Lux: lux}, {Zone: "slot-B", Stage: "period-1", Lux: lux}}
	for _, hole := range []string{"A1", "B1"} {
		a.Uses = append(a.Uses, recap.Use{Hole: hole, Frames: 20, Taken: recap.Taken{Bursts: 25, Kept: 4}, InPlay: recap.Taken{Bursts: 20, Kept: 3}, Hours: 2. / 3, PerHour: unit.Known(recap.Rated{Rate: 4.5, Low: 0.9, High: 13})})
	}
	return lookback.Report{Answer: a, Units: unit.Metric, Paper: paper, Creator: "test"}
}

// TestReport draws timeline, keepers and light, and says them on its pages.
func TestReport(t *testing.T) {
	r := report(t)
	var titles []string
	for _, p := range r.Plots(178) {
		titles = append(titles, p.Title)
	}
	if want := "Frames of each hole over time|Keepers in an hour worked|Light by exposures, 80 of 100 frames"; strings.Join(titles, "|") != want {
		t.Errorf("plots %q", titles)
	}
	pdf, err := r.PDF(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "r.pdf")
	if err := os.WriteFile(path, pdf, 0o666); err != nil {
		t.Fatal(err)
	}
	said, err := exec.Command("pdftotext", "-layout", path, "-").Output()
	if err != nil {
		t.Fatalf("pdftotext: %v (Debian package poppler-utils)", err)
	}
	for _, want := range []string{"Herons - Otters", "end B", "slot-B", "3 of 20 kept", "What each hole gave"} {
		if !bytes.Contains(said, []byte(want)) {
			t.Errorf("%q is not on the pages:\n%s", want, said)
		}
	}
}

// TestNothingToDraw: no frames, no plots, and still a page.
func TestNothingToDraw(t *testing.T) {
	r := report(t)
	r.Answer = recap.Answer{}
	if got := r.Plots(178); len(got) != 0 {
		t.Errorf("%d plots of nothing", len(got))
	}
	if pdf, err := r.PDF(t.Context()); err != nil || len(pdf) == 0 {
		t.Errorf("%d bytes, %v", len(pdf), err)
	}
}

// TestLightIsDrawnByPeriod, not by intermission, in the reader's unit.
func TestLightIsDrawnByPeriod(t *testing.T) {
	r := report(t)
	lux := recap.Spread{Low: 600, Median: 800, High: 1000, N: 20}
	r.Answer.Light = append(r.Answer.Light, recap.Seen{End: "B", Stage: "intermission-1", Lux: lux})
	for units, axis := range map[unit.System]string{unit.Metric: "lux", unit.Imperial: "foot-candles"} {
		r.Units = units
		plots := r.Plots(178)
		said := string(sheet.SVG(plots[len(plots)-1]))
		if strings.Contains(said, "intermission") || !strings.Contains(said, "period-1") || !strings.Contains(said, axis) {
			t.Errorf("units %v: %d bytes of a plot without period-1 or %s, or with an intermission", units, len(said), axis)
		}
	}
}
