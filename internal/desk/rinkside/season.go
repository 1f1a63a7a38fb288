package rinkside

import (
	"fmt"
	"html/template"
	"net/http"
	"slices"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// seasonPage is how often something happened, with what is known of it.
type seasonPage struct {
	servicePage
	Since time.Time // of the first event
	Chart template.HTML
	Rates table.Table // by hole and phase
	Above []string    // holes that see more than the rest
}

// auditPage is who did what, the newest first.
type auditPage struct {
	servicePage
	Who  string   // only theirs; "" for all
	All  []string // who did something
	Rows []auditRow
	More int // that are not shown
}

type auditRow struct {
	When              time.Time
	Who, What, Device string
	Late              string // how long after it happened it was kept; "" when at once
}

func (d area) seasonPage(w http.ResponseWriter, r *http.Request) error {
	base, err := d.service(r, "season")
	if err != nil {
		return err
	}
	now := d.Now()
	rates := custody.RatesOf(base.record.History, custody.Window{To: now})
	page := seasonPage{servicePage: base, Chart: chartOf(custody.RatesByHole(rates))}
	if len(base.record.History) > 0 {
		page.Since = base.record.History[0].When
	}
	told := slices.DeleteFunc(slices.Clone(rates), func(r custody.Rate) bool { return r.Incidents == 0 && r.Open < time.Hour })
	page.Rates = words.Rates().Of("", told, base.Address.Units(unit.Metric))
	for _, o := range custody.Outliers(rates) {
		if o.Above() {
			page.Above = append(page.Above, words.Above(o))
		}
	}
	return d.Page(w, r, http.StatusOK, "season.tmpl", page)
}

// Size of the season's chart, in millimetres of the drawing.
const (
	seasonWide = 180
	seasonRow  = 9
	seasonHead = 26
)

// chartOf draws each hole's rate with its interval.
func chartOf(rates []custody.Rate) template.HTML {
	c := chart.Intervals{Name: "season", Title: "Incidents by hole", Axis: "incidents in 1000 hours open, with the 95 % interval",
		Desc: "One line a hole: the mark is the rate, the bar is what the true rate may be."}
	for _, r := range rates {
		if p, known := r.PerOpen.Get(); known {
			c.Rows = append(c.Rows, chart.Interval{Name: r.Hole, Note: fmt.Sprintf("%d in %.0f h", r.Incidents, r.Open.Hours()), At: p.Rate, Low: p.Low, High: p.High})
		}
	}
	if len(c.Rows) == 0 {
		return ""
	}
	return template.HTML(sheet.InlineSVG(c.Draw(seasonWide, seasonHead+seasonRow*float64(len(c.Rows)))))
}

// mostRows is how many events the page lists.
const mostRows = 200

func (d area) auditPage(w http.ResponseWriter, r *http.Request) error {
	base, err := d.service(r, "audit")
	if err != nil {
		return err
	}
	page := auditPage{servicePage: base, Who: shell.CutShort(r.FormValue("who"), mostRows)}
	for _, e := range slices.Backward(base.record.Events) {
		if !slices.Contains(page.All, e.Who) {
			page.All = append(page.All, e.Who)
		}
		switch {
		case page.Who != "" && page.Who != e.Who:
		case len(page.Rows) == mostRows:
			page.More++
		default:
			page.Rows = append(page.Rows, d.auditRow(e))
		}
	}
	slices.Sort(page.All)
	return d.Page(w, r, http.StatusOK, "audit.tmpl", page)
}

func (d area) auditRow(e custody.Event) auditRow {
	what := words.Happened(e.Fact)
	if e.Corrects != "" {
		what += " (corrects an earlier mark)"
	}
	row := auditRow{When: e.At(), Who: e.Who, What: what, Device: e.ID.Device()}
	if late := e.Kept.Sub(e.At()); late >= time.Minute {
		row.Late = late.Round(time.Minute).String()
	}
	return row
}
