package rinkside

import (
	"errors"
	"net/http"
	"slices"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// inspectionsPage is when holes are due, what the last inspection of one found, and
// where the next is written down.
type inspectionsPage struct {
	servicePage
	Due  []dueRow
	Says []string // what the rules in force ask
	Hole string   // that the rest of the page is about; "" for none
	Why  string   // why it cannot be inspected; ""
	Asks []ask
	Sees []custody.Sight
	Last *lastFound
	Base int // the version that is judged against
}

// dueRow is a hole with the day of its next inspection.
type dueRow struct {
	custody.Due
	Verdict custody.Verdict // of the last one, "" for none
	Overdue bool
	URL     string
}

// ask is a quantity that the drawing bounds.
type ask struct {
	custody.Quantity
	Limits string
	With   []with
}

// with is an instrument to choose, with its uncertainty in millimetres.
type with struct{ Name, MM string }

// lastFound is the last inspection, judged against the drawing of now.
type lastFound struct {
	When                time.Time
	Who, Verdict, Words string
	Table               table.Table
	Notes               []string
	Photos              []string
	Certificate         string
	Takes               bool // there is something for the survey to take over
}

func (d area) inspectionsPage(w http.ResponseWriter, r *http.Request) error {
	return d.showInspections(w, r, http.StatusOK, "")
}

func (d area) showInspections(w http.ResponseWriter, r *http.Request, status int, message string) error {
	base, err := d.service(r, "inspections")
	if err != nil {
		return err
	}
	base.Message = message
	page := inspectionsPage{servicePage: base, Hole: r.FormValue("hole"), Sees: custody.Sights(), Base: base.book.Version.Number}
	a, err := base.book.Arena.Check()
	if err != nil {
		return err
	}
	all := custody.InspectionsDue(base.record.History, a, base.book.Maker.Rules)
	page.Says = words.Services(all)
	for _, due := range all {
		_, last, _ := lastInspection(base.record.History, due.Hole)
		page.Due = append(page.Due, dueRow{due, last.Verdict, due.Over(d.Now()), base.Address.Beside("/inspections", "hole", due.Hole)})
	}
	if page.Hole != "" {
		err = d.fillInspection(r, &page)
	}
	var no *shell.Refusal
	if errors.As(err, &no) {
		page.Why, err = no.Error(), nil
	}
	if err != nil {
		return err
	}
	return d.Page(w, r, status, "inspections.tmpl", page)
}

// fillInspection shows what is asked of a hole and what was found last.
func (d area) fillInspection(r *http.Request, page *inspectionsPage) error {
	h, err := d.drawnHole(r, "inspections", page.Hole)
	if err != nil {
		return err
	}
	sys := page.Address.Units(h.order.Arena.Units)
	limits := h.job.Acceptance()
	for _, l := range limits {
		a := ask{Quantity: l.What, Limits: words.Limits(l, sys)}
		for _, i := range custody.Instruments() {
			if slices.Contains(i.For, l.What) {
				a.With = append(a.With, with{i.Name, mm(i.U)})
			}
		}
		page.Asks = append(page.Asks, a)
	}
	e, f, is := lastInspection(page.record.History, page.Hole)
	if !is {
		return nil
	}
	found := custody.Inspect(page.Hole, limits, custody.Readings(f.Measured), f.Seen)
	last := lastFound{When: e.When, Who: e.Who, Verdict: words.InspectionVerdict(found), Words: f.Words, Notes: words.Instead(found.Findings, sys),
		Photos: f.Photos(), Certificate: page.Address.Beside("/certificate.pdf", "hole", page.Hole), Takes: len(custody.TakeOver(h.order.Arena, found)) > 0}
	if len(found.Findings) > 0 {
		last.Table = words.Inspection().Of("", found.Findings, sys)
	}
	for _, s := range found.Seen {
		last.Notes = append(last.Notes, words.Seen(s))
	}
	page.Last = &last
	return nil
}

// mm writes an uncertainty in millimetres, without a unit.
func mm(l unit.Length) string { return strings.TrimSuffix(l.Exact(unit.Metric), " mm") }

// lastInspection returns the last inspection of a hole.
func lastInspection(h custody.History, hole string) (e custody.Entry, f custody.Inspected, is bool) {
	custody.Facts(h, func(at custody.Entry, one custody.Inspected) {
		if one.Hole == hole {
			e, f, is = at, one, true
		}
	})
	return e, f, is
}

// inspect answers POST /arena/{slug}/inspections: what was measured and seen at a hole.
func (d area) inspect(w http.ResponseWriter, r *http.Request) error {
	hole := r.PostFormValue("hole")
	h, err := d.drawnHole(r, "inspections", hole)
	if err != nil {
		return err
	}
	measured, seen, err := readFindings(r)
	if err == nil && len(measured)+len(seen) == 0 {
		err = errors.New("nothing was measured or looked at: fill in at least one line")
	}
	if err != nil {
		return d.showInspections(w, r, http.StatusUnprocessableEntity, shell.Sentence(err.Error()))
	}
	found := custody.Inspect(hole, h.job.Acceptance(), custody.Readings(measured), seen)
	f := custody.Inspected{Hole: hole, Revision: h.order.Revision, Verdict: found.Verdict, Measured: measured, Seen: seen, Words: r.PostFormValue("words")}
	key, err := d.photo(r, "photo")
	if err == nil && key != "" {
		f.Attach(key, r.PostFormValue("of"))
	}
	if err == nil {
		err = d.tell(r, said{custody.ID(r.PostFormValue("id")), f})
	}
	var no *shell.Refusal
	if errors.As(err, &no) {
		return d.showInspections(w, r, no.Status, no.Cure)
	}
	if err != nil {
		return err
	}
	return d.Goto(w, r, h.Address.Beside("/inspections", "hole", hole)+"#last")
}

// readFindings reads a form's lines as a file of measurements is read: what is left
// empty was not measured.
func readFindings(r *http.Request) (m []custody.Measured, seen []custody.Seen, err error) {
	var file strings.Builder
	file.WriteString("what,value_mm,uncertainty_mm\n")
	lines := 0
	line := func(what, value, u string) {
		if value == "" {
			return
		}
		lines++
		quote := func(s string) string { return `"` + strings.ReplaceAll(s, `"`, `""`) + `"` }
		file.WriteString(quote(what) + "," + quote(strings.Replace(value, ",", ".", 1)) + "," + quote(strings.Replace(u, ",", ".", 1)) + "\n")
	}
	for _, q := range custody.Quantities() {
		line(string(q), r.PostFormValue("mm-"+string(q)), r.PostFormValue("u-"+string(q)))
	}
	for _, s := range custody.Sights() {
		line(string(s), r.PostFormValue("is-"+string(s)), "")
	}
	if lines == 0 {
		return nil, nil, nil
	}
	m, seen, err = custody.ReadMeasured("form", strings.NewReader(file.String()))
	if err != nil { // the form's line is not the reader's
		_, why, _ := strings.Cut(err.Error(), ": ")
		err = errors.New(why)
	}
	return m, seen, err
}

// takeOver answers POST /arena/{slug}/inspections/take-over: the survey takes over
// what the last inspection of a hole measured, as a new version.
func (d area) takeOver(w http.ResponseWriter, r *http.Request) error {
	hole := r.PostFormValue("hole")
	h, err := d.drawnHole(r, "inspections", hole)
	if err != nil {
		return err
	}
	e, f, _ := lastInspection(h.record.History, hole)
	edits := custody.TakeOver(h.order.Arena, custody.Inspect(hole, h.job.Acceptance(), custody.Readings(f.Measured), f.Seen))
	if len(edits) == 0 {
		return shell.Refuse(http.StatusUnprocessableEntity, "There is nothing to take over.", "Nothing was measured at this hole that the survey holds.")
	}
	from, err := d.Base(r)
	if err != nil {
		return err
	}
	if _, err := d.Edit(r, from, "hole "+hole+" as measured on "+e.When.In(time.Local).Format(time.DateOnly), edits...); err != nil {
		return err
	}
	return d.Goto(w, r, h.Address.Pick(hole).URL())
}
