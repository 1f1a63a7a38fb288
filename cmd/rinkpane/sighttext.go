package main

import (
	"fmt"
	"io"
	"math"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// writeSight tables the reach of each hole, and of each lens when one hole is asked for.
func writeSight(w io.Writer, ar arena.Arena, reaches []sight.Reach, scores []float64) {
	fmt.Fprintf(w, "%s: what the holes see\n\n", ar.Name)
	if len(reaches) == 0 {
		fmt.Fprintln(w, "There is no working hole.")
		return
	}
	head := []string{"hole"}
	for _, l := range reaches[0].Layers {
		head = append(head, heightWord(l.Height, ar.Units))
	}
	head = append(head, "blind strip", "mean", "by the boards", "score")
	var rows [][]string
	for i, r := range reaches {
		row := []string{r.Hole}
		for _, l := range r.Layers {
			row = append(row, percent(l.Share))
		}
		rows = append(rows, append(append(row, blindWords(r.Blind, ar.Units)...), scoreWord(scores, i)))
	}
	writeTable(w, head, rows)
	if len(reaches) == 1 {
		writeLenses(w, ar, reaches[0])
	}
	fmt.Fprintln(w)
	wrapText(w, "", fmt.Sprintf("Shares are of the ice, at the height of a puck (%s) and of a face (%s), where some lens can be aimed "+
		"with half of its light or more. The blind strip is the ice along the near boards that no lens sees: straight ahead, and its mean over %s "+
		"of boards; the next column is what the boards' top alone hides. The score, 0 to 1, is the mean of the view's worth over moments "+
		"of a game by their news weight (see docs/moments.md).",
		sight.PuckHeight.Format(ar.Units), sight.FaceHeight.Format(ar.Units), (2*sight.StripSide).Format(ar.Units)))
	var assumed []arena.Assumption
	for _, r := range reaches {
		assumed = append(assumed, r.Assumed...)
	}
	writeAssumed(w, assumed, ar.Units)
}

// writeLenses tables each lens of one hole.
func writeLenses(w io.Writer, ar arena.Arena, r sight.Reach) {
	fmt.Fprintln(w)
	rows := make([][]string, 0, len(r.Lenses))
	for _, l := range r.Lenses {
		fits := "yes"
		if !l.Fits {
			fits = "no"
		}
		row := []string{l.ID, l.Focal.Format(unit.Metric), l.Stop.Format(), fits}
		for _, s := range l.Share {
			row = append(row, percent(s))
		}
		rows = append(rows, append(row, blindWords(l.Blind, ar.Units)[:2]...))
	}
	head := []string{"lens", "focal", "stop", "enters"}
	for _, l := range r.Layers {
		head = append(head, heightWord(l.Height, ar.Units))
	}
	writeTable(w, append(head, "blind strip", "mean"), rows)
}

func heightWord(z unit.Length, sys unit.System) string {
	switch z {
	case sight.PuckHeight:
		return "puck"
	case sight.FaceHeight:
		return "face"
	}
	return "at " + z.Format(sys)
}

func percent(share float64) string { return fmt.Sprintf("%.1f %%", 100*share) }

func blindWords(b sight.Blind, sys unit.System) []string {
	ledge := "all"
	if !math.IsInf(b.Ledge, 0) {
		ledge = unit.Length(b.Ledge).Format(sys)
	}
	return []string{unit.Length(b.Ahead).Format(sys), unit.Length(b.Mean).Format(sys), ledge}
}

func scoreWord(scores []float64, i int) string {
	if scores == nil {
		return "-"
	}
	return fmt.Sprintf("%.3f", scores[i])
}
