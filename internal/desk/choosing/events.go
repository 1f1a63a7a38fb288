package choosing

import (
	"fmt"
	"html/template"
	"net/http"
	"time"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
)

// Size of the search's chart, in millimetres of the drawing.
const (
	chartWide = 130
	chartHigh = 48
)

// shortestSearch is the time of a search, in seconds, below which its way is no news.
const shortestSearch = 1.0

// chartOf draws the way of the search itself: the value rises, the bound falls;
// each holds until the next report. A search that was over at once has no chart.
func chartOf(reports []Progress) template.HTML {
	value, bound := chart.Series{Name: "best so far", Steps: true}, chart.Series{Name: "no set is worth more", Steps: true}
	for _, p := range reports {
		if p.Stage == "choosing" && p.Bound > 0 && p.Value > 0 {
			value.Points = append(value.Points, chart.XY{X: p.Seconds, Y: p.Value})
			bound.Points = append(bound.Points, chart.XY{X: p.Seconds, Y: p.Bound})
		}
	}
	if n := len(value.Points); n == 0 || value.Points[n-1].X-value.Points[0].X < shortestSearch {
		return ""
	}
	return template.HTML(sheet.InlineSVG(chart.Plot{
		Name: "search", Desc: "The bound falls and the best value rises until they meet.",
		X: chart.Axis{Name: "time, s"}, Y: chart.Axis{Name: "value, no unit"}, Series: []chart.Series{value, bound},
	}.Draw(chartWide, chartHigh)))
}

// news is one event of a choice under way.
type news struct {
	Words string        `json:"words"`
	Stage int           `json:"stage"` // its place among the stages; -1 before the first
	Whole float64       `json:"whole"` // of the work as a whole, from 0 to 1
	Best  string        `json:"best"`  // so far, and how much better it can still get; "" before there is a set
	Chart template.HTML `json:"chart"`
}

// stages are what a choice does one after the other, and the share of the work
// that each is taken for; own choice after the demo arena.
var stages = []struct {
	name, words string
	share       float64
}{
	{"placing", "Looking for places along the panes", 0.05},
	{"pairing", "Asking which places are too near each other", 0.05},
	{"scoring", "Looking at every moment of the game through every place", 0.25},
	{"ranking", "Putting the places in order", 0.05},
	{"choosing", "Looking for the best set", 0.1},
	{"ladder", "Proving each step from what is cut today to the best", 0.15},
	{"frontier", "Asking what each amount of money buys", 0.15},
	{"alternatives", "Looking for the next best sets", 0.05},
	{"prices", "Asking what each rule costs", 0.1},
	{"losses", "Asking what each pane is worth", 0.05},
}

// Stages are what a choice does, in words.
func (choosePage) Stages() []string {
	out := make([]string, len(stages))
	for i, s := range stages {
		out[i] = s.words
	}
	return out
}

func newsOf(reports []Progress) news {
	if len(reports) == 0 {
		return news{Stage: -1, Words: "Waiting for its turn: other work is being done"}
	}
	last := reports[len(reports)-1]
	n := news{Chart: chartOf(reports)}
	for i, s := range stages {
		if s.name == last.Stage {
			n.Stage = i
			n.Words = fmt.Sprintf("Step %d of %d: %s", i+1, len(stages), s.words)
			n.Whole += s.share * min(1, max(0, last.Share))
			break
		}
		n.Whole += s.share
	}
	if best := lastSearch(reports); best.Value > 0 && best.Bound > 0 {
		n.Best = bestWords(best.Value, best.Bound)
	}
	return n
}

// bestWords says how good a set is, and how much better one can still be.
func bestWords(value, bound float64) string {
	words := fmt.Sprintf("Best set so far: value %.4f. ", value)
	if gap := (bound - value) / bound; gap >= 0.00005 {
		return words + fmt.Sprintf("It can still get better by %.2f %% at most.", 100*gap)
	}
	return words + "It is the best: none is worth more."
}

// lastSearch returns the last report of the search itself.
func lastSearch(reports []Progress) (last choose.Report) {
	for _, p := range reports {
		if p.Stage == "choosing" {
			last = p.Report
		}
	}
	return last
}

// eventPause is how long after one event the next goes out at the earliest.
const eventPause = 250 * time.Millisecond

// events answers GET /arena/{slug}/choose/{job}/events: server-sent events until
// the choice is done, the visitor leaves or the desk closes.
func (d area) events(w http.ResponseWriter, r *http.Request) error {
	j, err := d.job(r)
	if err != nil {
		return err
	}
	leave := j.Watch()
	defer leave()
	stream := shell.NewStream(w)
	for {
		reports, next := j.Reports()
		if !stream.Send("", "progress", newsOf(reports)) {
			return nil
		}
		select {
		case <-j.Done():
			stream.Send("", "done", struct{}{})
			return nil
		case <-r.Context().Done():
			return nil
		case <-d.jobs.Closing():
			return nil
		case <-next:
		}
		pause := time.NewTimer(eventPause)
		select {
		case <-pause.C:
		case <-j.Done():
		case <-r.Context().Done():
		}
		pause.Stop()
	}
}

// cancel answers POST /arena/{slug}/choose/{job}/cancel.
func (d area) cancel(w http.ResponseWriter, r *http.Request) error {
	j, err := d.job(r)
	if err != nil {
		return err
	}
	j.Cancel()
	return d.Goto(w, r, shell.SharedOf(j.About.Arena, r.URL.Query()).Beside("/choose", "job", j.ID))
}
