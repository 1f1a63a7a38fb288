package cut

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// marks are what a sheet says across itself of what is drawn on it, in a word, and why,
// a sentence each; the zero marks are those of what is to be made as drawn.
type marks struct {
	word string
	why  []say.Sentence
	bad  bool
}

// told is what sheets say of holes beyond what is drawn, by a word, the worst first.
type told struct {
	word  word
	holes []string
	why   list
}

type word int

const (
	notPassed word = iota
	notProved
	standing
	leftOut
)

// The words across a sheet and before their reasons.
var (
	across  = [...]string{"NOT PASSED", "NOT PROVED", "EXISTS", ""}
	because = [...]string{"NOT PASSED", "NOT PROVED", "EXISTS", "NOT DRAWN, not part of this work"}
)

// told is what a job's sheets say of its hole.
func (j Job) told() (out []told) {
	add := func(w word, why ...say.Sentence) {
		for _, s := range why {
			out = append(out, told{w, []string{j.Hole.ID}, list{s}})
		}
	}
	add(notPassed, j.NotPassed...)
	add(notProved, j.NotProved...)
	if j.Exists() {
		add(standing, say.Make("nothing is cut. This sheet is to check it by"))
	}
	return out
}

// marks returns what a job's sheets say across themselves.
func (j Job) marks() (m marks) {
	for _, t := range lines(j.told()) {
		m.add(t, across[t.word], map[bool]string{true: "THE HOLE "}[t.word == standing])
	}
	return m
}

// marks are those of all holes of the pane, each told by its name where there are several.
func (j paneJob) marks() (m marks) {
	if len(j.spots) == 1 {
		return j.jobs[0].marks()
	}
	var all []told
	exist := len(j.jobs) == len(j.spots)
	for _, k := range j.jobs {
		all, exist = append(all, k.told()...), exist && k.Exists()
	}
	for _, k := range j.spots {
		if k.work == notDrawn {
			all = append(all, told{leftOut, []string{k.Hole.ID}, k.why})
		}
	}
	for _, t := range lines(all) {
		over := across[t.word]
		if t.word == standing && !exist {
			over = "" // of the pane something is made
		}
		m.add(t, over, "Hole"+map[bool]string{true: "s"}[len(t.holes) > 1]+" "+strings.Join(t.holes, ", ")+": ")
	}
	return m
}

// add adds what is told; the first one's word stands across the sheet.
func (m *marks) add(t told, over, before string) {
	if m.word == "" {
		m.word = over
	}
	m.bad = m.bad || t.word == notPassed
	m.why = append(m.why, say.Make("%s%s: %s.", before, because[t.word], t.why))
}

// lines says each reason once, with every hole that it is of, and in one line what is told
// of the same holes, the worst first.
func lines(all []told) []told {
	all = folded(all, func(a, b told) bool { return a.why.Say(unit.Metric) == b.why.Say(unit.Metric) },
		func(a *told, b told) { a.holes = append(a.holes, b.holes...) })
	all = folded(all, func(a, b told) bool { return slices.Equal(a.holes, b.holes) },
		func(a *told, b told) { a.why = append(a.why, b.why...) })
	slices.SortStableFunc(all, func(a, b told) int { return int(a.word - b.word) })
	return all
}

// folded joins what is alike under one word to the first of its kind.
func folded(all []told, alike func(a, b told) bool, join func(*told, told)) (out []told) {
	for _, t := range all {
		if i := slices.IndexFunc(out, func(o told) bool { return o.word == t.word && alike(o, t) }); i >= 0 {
			join(&out[i], t)
		} else {
			out = append(out, t)
		}
	}
	return out
}

// list is sentences said one after another.
type list []say.Sentence

// Say joins the sentences.
func (l list) Say(sys unit.System) string { return joined(l, sys) }

// mostReasons is how many letters of reasons stand at the top of a sheet at most, about
// seven lines; more have a sheet of their own. Own choice.
const mostReasons = 700

// long reports whether the reasons have a sheet of their own.
func (m marks) long(sys unit.System) bool {
	return len(strings.Join(say.All(m.why, sys), " ")) > mostReasons
}

// reasonsPage lists why a pane's sheets are marked, where that takes more room than their tops have.
func (s *set) reasonsPage(j paneJob) {
	m := j.marks()
	if !m.long(s.Arena.Units) {
		return
	}
	f := sheet.NewFlow(func() (*sheet.Drawing, sheet.Rect) {
		g := s.page(lying, "reasons", "Pane "+j.Pane.ID+": why its sheets are marked", marks{word: m.word, bad: m.bad},
			sheet.Field{Name: "Pane", Value: j.Pane.ID}, sheet.Field{Name: "Reasons", Value: fmt.Sprint(len(m.why))})
		return g.d, g.area
	})
	f.Numbered(say.All(m.why, s.Arena.Units)...)
}

// across writes the word of marks over the whole sheet and the reasons along its top, or
// where they stand; what is bad in the colour for it.
func (g *page) across(m marks) {
	if m.word != "" {
		g.overAll(m)
	}
	if len(m.why) == 0 {
		return
	}
	if m.long(g.sys) {
		m.why = []say.Sentence{say.Make("MARKED for %d reasons: they are on a sheet of their own in the pane's drawing.", len(m.why))}
	}
	t := g.group(sheet.LayerText)
	for _, s := range m.why {
		class := "status"
		if m.bad {
			class = "status status-bad"
		}
		h := t.Paragraph(class, sheet.Bold, sheet.Pt(g.area.X, g.area.Y), s.In(g.sys), sheet.SizeText, g.area.W, lineHeight)
		g.area.Y, g.area.H = g.area.Y+h, g.area.H-h
	}
	g.area.Y, g.area.H = g.area.Y+2, g.area.H-2
}

// overAll writes the word of marks over the whole sheet, pale beneath the drawing.
func (g page) overAll(m marks) {
	middle := sheet.Pt(g.area.X+g.area.W/2, g.area.Y+g.area.H/2)
	slope := math.Atan2(g.area.H, g.area.W)
	size := sheet.Bold.FitSize(m.word, g.area.H/3, sheet.SizeTitle, 0.8*math.Hypot(g.area.W, g.area.H))
	class := "across"
	if m.bad {
		class = "across across-bad"
	}
	g.group(statusLayer).Add(class, sheet.Text{At: middle, S: m.word, Size: size, Anchor: sheet.Middle, VAlign: sheet.Centre, Rotate: slope})
}
