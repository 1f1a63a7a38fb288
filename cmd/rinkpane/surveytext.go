package main

import (
	"fmt"
	"io"
	"strings"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/starter"
)

// surveyAnswer is what survey prints under --json.
type surveyAnswer struct {
	Name       string          `json:"name"`
	Complete   bool            `json:"complete"`
	PerimeterM float64         `json:"perimeter_m"`
	GlazedM    float64         `json:"glazed_m"`
	OpenM      float64         `json:"open_m"`
	Panes      int             `json:"panes"`
	Holes      int             `json:"holes"`
	Readings   int             `json:"readings"`
	Unsurveyed []surveyStretch `json:"unsurveyed"`
	Gaps       []surveyGap     `json:"gaps"`
}

type surveyStretch struct {
	FromM   float64 `json:"from_m"`
	ToM     float64 `json:"to_m"`
	LengthM float64 `json:"length_m"`
}

type surveyGap struct {
	Part  string   `json:"part"`
	Field string   `json:"field"`
	Of    []string `json:"of"`
	Holes []string `json:"holes"`
	Costs string   `json:"costs"`
	Cure  string   `json:"cure"`
}

func surveyJSON(a arena.Arena, rep starter.Report) surveyAnswer {
	out := surveyAnswer{
		Name: a.Name, Complete: rep.Complete(), Panes: rep.Panes, Holes: len(a.Holes), Readings: len(a.Light.Readings),
		PerimeterM: rep.Perimeter.Metres(), GlazedM: rep.Glazed.Metres(), OpenM: rep.Open.Metres(),
		Unsurveyed: []surveyStretch{}, Gaps: []surveyGap{},
	}
	for _, s := range rep.Unsurveyed {
		out.Unsurveyed = append(out.Unsurveyed, surveyStretch{a.Rink.Wrap(s.From).Metres(), a.Rink.Wrap(s.To).Metres(), s.Length().Metres()})
	}
	for _, g := range rep.Gaps {
		out.Gaps = append(out.Gaps, surveyGap{g.Part, g.Field, listed(g.Of), listed(g.Holes), g.Costs, g.Cure})
	}
	return out
}

// listed makes an empty list of none, so that JSON says [] and not null.
func listed(ids []string) []string {
	if ids == nil {
		return []string{}
	}
	return ids
}

// surveyText writes the report for people.
type surveyText struct {
	w     io.Writer
	units unit.System
}

func (t surveyText) report(a arena.Arena, rep starter.Report) {
	title := a.Name
	if a.Place != "" {
		title += ", " + a.Place
	}
	fmt.Fprintln(t.w, title)
	wrapText(t.w, "boards   ", fmt.Sprintf("%s round: %s behind %s, %s open before benches, %s not surveyed",
		rep.Perimeter.Format(t.units), rep.Glazed.Format(t.units), say.Count(rep.Panes, "pane"), rep.Open.Format(t.units), total(rep.Unsurveyed).Format(t.units)))
	fmt.Fprintf(t.w, "holes    %s\n", t.holes(a))
	fmt.Fprintf(t.w, "light    %s\n", say.Count(len(a.Light.Readings), "reading"))
	if rep.Complete() {
		fmt.Fprintln(t.w, "\nNothing is missing.")
		return
	}
	if len(rep.Unsurveyed) > 0 {
		fmt.Fprintln(t.w, "\nBoards without panes: no hole can stand there, and nothing is drawn or chosen")
		var rows [][]string
		for _, s := range rep.Unsurveyed {
			rows = append(rows, []string{a.Rink.Wrap(s.From).Format(t.units), a.Rink.Wrap(s.To).Format(t.units), s.Length().Format(t.units)})
		}
		writeTable(t.w, []string{"from station", "to station", "length"}, rows)
	}
	if len(rep.Gaps) > 0 {
		fmt.Fprintln(t.w, "\nMissing, what it costs, and what to do")
	}
	for _, g := range rep.Gaps {
		t.gap(g)
	}
}

func (t surveyText) gap(g starter.Gap) {
	head := fmt.Sprintf("%s: %s", g.Part, g.Field)
	if len(g.Of) > 0 {
		head += " of " + ranges(g.Of)
	}
	if len(g.Holes) > 0 {
		_, noun, _ := strings.Cut(say.Count(len(g.Holes), "hole"), " ")
		head += fmt.Sprintf(" (with %s %s)", noun, strings.Join(g.Holes, ", "))
	}
	wrapText(t.w, "  ", head)
	wrapText(t.w, "      ", g.Costs)
	wrapText(t.w, "      -> ", g.Cure)
}

func (t surveyText) holes(a arena.Arena) string {
	by := map[string]int{}
	for _, h := range a.Holes {
		by[string(h.State)]++
	}
	var parts []string
	for _, state := range []string{"cut", "planned", "off"} {
		if by[state] > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", by[state], state))
		}
	}
	if len(parts) == 0 {
		return "none"
	}
	return strings.Join(parts, ", ")
}

func total(list []starter.Stretch) unit.Length {
	var sum unit.Length
	for _, s := range list {
		sum += s.Length()
	}
	return sum
}

// shownIDs is how many ids a line of text names before it counts the rest.
const shownIDs = 12

// ranges names ids, the first few and how many more.
func ranges(ids []string) string {
	if len(ids) <= shownIDs {
		return strings.Join(ids, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(ids[:shownIDs-2], ", "), len(ids)-shownIDs+2)
}
