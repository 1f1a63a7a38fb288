package rinkside

import (
	"encoding/json"
	"net/http"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shell"
)

// boardView is how covers stand, as a page's module shows it. Times are the desk's.
type boardView struct {
	Seq    int64         `json:"seq"`
	Now    time.Time     `json:"now"`
	Phase  custody.Phase `json:"phase"`
	Began  *time.Time    `json:"began"` // null before the first
	Rule   string        `json:"rule"`  // what the phase asks for, in words
	Within float64       `json:"within_s"`
	Covers []coverView   `json:"covers"`
	Alarms []alarmView   `json:"alarms"`
}

type coverView struct {
	ID     string        `json:"id"`
	Hole   string        `json:"hole"`
	State  custody.State `json:"state"`
	Since  time.Time     `json:"since"`
	By     string        `json:"by"`
	Seated string        `json:"seated"` // who works the hole
	Open   *float64      `json:"open_s"` // how long the hole was open today, said of its first cover; else null
}

type alarmView struct {
	Hole  string    `json:"hole"`
	Cover string    `json:"cover"`
	Words string    `json:"words"`
	Due   time.Time `json:"due"`
}

// rules say what each phase asks for.
var rules = map[custody.Phase]string{
	custody.Closed:       "All covers in, or stored and counted.",
	custody.Preparing:    "Before practice: all covers in.",
	custody.Practice:     "Out only where somebody is seated.",
	custody.WarmUp:       "Out only where somebody is seated.",
	custody.Play:         "Out only where somebody is seated.",
	custody.Intermission: "Out only where somebody is seated.",
	custody.LockUp:       "Lock-up: all covers in, or stored and counted.",
}

// wrongs say what is wrong at a hole and what to do.
var wrongs = map[custody.Reason]string{
	custody.OpenHole:   "open: put the cover in",
	custody.NotCounted: "put it in or store it",
	custody.IsMissing:  "missing: put a spare in",
	custody.IsDamaged:  "damaged: put a spare in",
}

// viewOf tells a board to a module.
func viewOf(b custody.Board) boardView {
	v := boardView{Seq: b.Seq, Now: b.At.UTC(), Phase: b.Phase, Rule: rules[b.Phase], Within: custody.RuleOf(b.Phase).Within.Seconds(), Covers: []coverView{}, Alarms: []alarmView{}}
	if !b.Began.IsZero() {
		began := b.Began.UTC()
		v.Began = &began
	}
	holes := map[string]custody.Hole{}
	for _, h := range b.Holes {
		holes[h.ID] = h
	}
	for i, c := range b.Covers {
		h := holes[c.Hole]
		view := coverView{ID: c.ID, Hole: c.Hole, State: c.State, Since: c.Since.UTC(), By: c.By, Seated: h.Seated}
		if first := i == 0 || b.Covers[i-1].Hole != c.Hole; first {
			open := h.OpenInAll().Seconds()
			view.Open = &open
		}
		v.Covers = append(v.Covers, view)
	}
	covered := map[string]bool{} // holes with an alarm about a cover of theirs: that the hole is open needs no second line
	for _, a := range b.Alarms {
		covered[a.Hole] = covered[a.Hole] || a.Cover != ""
	}
	for _, a := range b.Alarms {
		if a.Cover == "" && covered[a.Hole] {
			continue
		}
		v.Alarms = append(v.Alarms, alarmView{a.Hole, a.Cover, wrongs[a.Why], a.Due.UTC()})
	}
	return v
}

// board answers GET …/board: how the covers of the pass stand now.
func (d area) board(w http.ResponseWriter, r *http.Request, p pass) error {
	rec, err := d.Records.Of(r.Context(), p.Arena)
	if err != nil {
		return err
	}
	return d.JSON(w, r, http.StatusOK, d.now(rec))
}

// now folds a record to the board of this moment, with the day's open times.
func (d area) now(rec record) boardView {
	now := d.Now()
	return viewOf(custody.Fold(rec.History, custody.DayOf(now), now))
}

// manifest answers GET …/app.webmanifest, by which a phone installs the page.
func (d area) manifest(w http.ResponseWriter, r *http.Request, p pass) error {
	icon, err := d.Asset("icon.svg")
	if err != nil {
		return err
	}
	text, err := json.Marshal(map[string]any{
		"name": p.Name + ": covers", "short_name": "Covers", "start_url": p.Base, "scope": p.Base, "display": "standalone",
		"background_color": "#0e151b", "theme_color": "#0e151b", // --stands of the dim theme
		"icons": []map[string]string{{"src": icon, "sizes": "any", "type": "image/svg+xml"}},
	})
	if err != nil {
		return err
	}
	w.Header().Set("Cache-Control", "no-store")
	shell.Send(w, r, http.StatusOK, "application/manifest+json", text, nil)
	return nil
}
