package desk

import (
	"encoding/json"
	"fmt"
	"net/http"
	"time"

	"example.org/rinkpane/internal/decide/choose"
)

// chartView is the way of a search as a small chart: value rises, bound falls.
type chartView struct {
	Value  string `json:"value"`  // points of the line, in the chart's view box
	Bound  string `json:"bound"`  // points of the line
	Top    string `json:"top"`    // the value at the chart's top
	Bottom string `json:"bottom"` // and at its foot
	End    string `json:"end"`    // seconds at its right end
}

// The chart's view box, in its own units.
const (
	chartWide = 600.0
	chartHigh = 140.0
)

// chartOf draws the reports of the search itself.
func chartOf(reports []progress) chartView {
	var seen []progress
	for _, p := range reports {
		if p.Stage == "choosing" && p.Bound > 0 && p.Value > 0 {
			seen = append(seen, p)
		}
	}
	if len(seen) == 0 {
		return chartView{}
	}
	first, last := seen[0], seen[len(seen)-1]
	low, high := first.Value, first.Bound
	for _, p := range seen {
		low, high = min(low, p.Value), max(high, p.Bound)
	}
	room := max(high-low, 1e-6)
	span := max(last.Seconds-first.Seconds, 0.1)
	v := chartView{Top: fmt.Sprintf("%.4f", high), Bottom: fmt.Sprintf("%.4f", low), End: fmt.Sprintf("%.1f s", span)}
	for i, p := range seen {
		until := chartWide // each holds until the next
		if i+1 < len(seen) {
			until = (seen[i+1].Seconds - first.Seconds) / span * chartWide
		}
		x := (p.Seconds - first.Seconds) / span * chartWide
		y := func(v float64) float64 { return 4 + (high-v)/room*(chartHigh-8) }
		v.Value += fmt.Sprintf("%.1f,%.1f %.1f,%.1f ", x, y(p.Value), until, y(p.Value))
		v.Bound += fmt.Sprintf("%.1f,%.1f %.1f,%.1f ", x, y(p.Bound), until, y(p.Bound))
	}
	return v
}

// news is one event of a choice under way.
type news struct {
	Words string    `json:"words"`
	Share float64   `json:"share"` // of the stage, from 0 to 1
	Value string    `json:"value"`
	Bound string    `json:"bound"`
	Gap   string    `json:"gap"`
	Chart chartView `json:"chart"`
}

var stageWords = map[string]string{
	"placing": "Looking for places along the panes", "pairing": "Asking which places are too near each other",
	"scoring": "Scoring every place for every moment", "choosing": "Choosing: the value rises, the bound falls",
	"alternatives": "Looking for the next best sets", "prices": "Asking what each rule costs", "losses": "Asking what each pane is worth",
}

func newsOf(reports []progress) news {
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
func lastSearch(reports []progress) (last choose.Report) {
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

// choiceEvents answers GET /arena/{slug}/choose/{job}/events: server-sent events
// until the choice is done, the visitor leaves or the desk closes.
func (d *Desk) choiceEvents(w http.ResponseWriter, r *http.Request) {
	j, ok := d.choices.get(r.PathValue("job"), r.PathValue("slug"))
	if !ok {
		d.nowhere(w, r)
		return
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
			return
		}
		select {
		case <-j.Done():
			send("done", struct{}{})
			return
		case <-r.Context().Done():
			return
		case <-d.bench.Closing():
			return
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

// cancelChoice answers POST /arena/{slug}/choose/{job}/cancel.
func (d *Desk) cancelChoice(w http.ResponseWriter, r *http.Request) {
	j, ok := d.choices.get(r.PathValue("job"), r.PathValue("slug"))
	if !ok {
		d.nowhere(w, r)
		return
	}
	j.Cancel()
	http.Redirect(w, r, sharedOf(j.arena, r.URL.Query()).Beside("/choose", "job", j.ID), http.StatusSeeOther)
}
