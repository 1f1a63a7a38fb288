package choosing

import (
	"encoding/json"
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

// chartOf draws the way of the search itself: the value rises, the bound falls;
// each holds until the next report.
func chartOf(reports []Progress) template.HTML {
	value, bound := chart.Series{Name: "best so far", Steps: true}, chart.Series{Name: "no set is worth more", Steps: true}
	for _, p := range reports {
		if p.Stage == "choosing" && p.Bound > 0 && p.Value > 0 {
			value.Points = append(value.Points, chart.XY{X: p.Seconds, Y: p.Value})
			bound.Points = append(bound.Points, chart.XY{X: p.Seconds, Y: p.Bound})
		}
	}
	if len(value.Points) == 0 {
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
	Share float64       `json:"share"` // of the stage, from 0 to 1
	Value string        `json:"value"`
	Bound string        `json:"bound"`
	Gap   string        `json:"gap"`
	Chart template.HTML `json:"chart"`
}

var stageWords = map[string]string{
	"placing": "Looking for places along the panes", "pairing": "Asking which places are too near each other",
	"scoring": "Scoring every place for every moment", "choosing": "Choosing: the value rises, the bound falls",
	"alternatives": "Looking for the next best sets", "prices": "Asking what each rule costs", "losses": "Asking what each pane is worth",
}

func newsOf(reports []Progress) news {
	if len(reports) == 0 {
		return news{Words: "Waiting for its turn", Value: "-", Bound: "-", Gap: "-"}
	}
	last := reports[len(reports)-1]
	n := news{Words: stageWords[last.Stage], Share: last.Share, Value: "-", Bound: "-", Gap: "-", Chart: chartOf(reports)}
	best := lastSearch(reports)
	if best.Value > 0 {
		n.Value = fmt.Sprintf("%.4f", best.Value)
	}
	if best.Bound > 0 {
		n.Bound = fmt.Sprintf("%.4f", best.Bound)
		n.Gap = fmt.Sprintf("%.2f %%", 100*max(0, best.Bound-best.Value)/best.Bound)
	}
	return n
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

// How often events go out, and how long one may take to be written.
const (
	eventPause   = 250 * time.Millisecond
	eventTimeout = 10 * time.Second
)

// events answers GET /arena/{slug}/choose/{job}/events: server-sent events until
// the choice is done, the visitor leaves or the desk closes.
func (d area) events(w http.ResponseWriter, r *http.Request) error {
	j, err := d.job(r)
	if err != nil {
		return err
	}
	leave := j.Watch()
	defer leave()
	out := http.NewResponseController(w)
	w.Header().Set("Content-Type", "text/event-stream")
	w.Header().Set("Cache-Control", "no-store")
	send := func(name string, what any) bool {
		text, err := json.Marshal(what)
		if err != nil {
			return false
		}
		_ = out.SetWriteDeadline(time.Now().Add(eventTimeout)) // a recorder in a test has no deadline
		if _, err := fmt.Fprintf(w, "event: %s\ndata: %s\n\n", name, text); err != nil {
			return false
		}
		return out.Flush() == nil
	}
	for {
		reports, next := j.Reports()
		if !send("progress", newsOf(reports)) {
			return nil
		}
		select {
		case <-j.Done():
			send("done", struct{}{})
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
