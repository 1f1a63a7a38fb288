package rinkside

import (
	"fmt"
	"math"
	"net/http"
	"slices"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shell"
)

// coversPage is the board: where every cover is, what is wrong, and who has a day link.
type coversPage struct {
	servicePage
	Board  boardView
	States []custody.State
	Phases []custody.Phase
	Bare   []string // holes without a cover
	Links  []linkRow
	Today  string
}

// linkRow is a day link that still opens something.
type linkRow struct {
	custody.Link
	Path string
}

func (d area) coversPage(w http.ResponseWriter, r *http.Request) error {
	base, err := d.service(r, "covers")
	if err != nil {
		return err
	}
	page := coversPage{servicePage: base, Board: d.now(base.record), States: custody.States(), Phases: custody.Phases(), Today: custody.DayOf(d.Now()).Date()}
	holes, err := base.holes()
	if err != nil {
		return err
	}
	for _, h := range holes {
		if !slices.ContainsFunc(page.Board.Covers, func(c coverView) bool { return c.Hole == h }) {
			page.Bare = append(page.Bare, h)
		}
	}
	if page.Plans {
		if page.Links, err = d.links(r, base.record); err != nil {
			return err
		}
	}
	return d.Page(w, r, http.StatusOK, "covers.tmpl", page)
}

// links lists an arena's day links that are neither over nor revoked.
func (d area) links(r *http.Request, rec record) (out []linkRow, err error) {
	secret, err := d.Door.Secret(r.Context())
	custody.Facts(rec.History, func(_ custody.Entry, f custody.LinkMade) {
		if d.Now().Before(f.Until) && !rec.History.Revoked(f.Link) {
			out = append(out, linkRow{f.Link, "/day/" + f.Link.Token(secret)})
		}
	})
	return out, err
}

// Opened says how long a cover's hole was open today, once for each hole.
func (c coverView) Opened() string {
	if c.Open == nil {
		return ""
	}
	return fmt.Sprintf("%.0f min", math.Floor(*c.Open/time.Minute.Seconds()))
}

// mark answers POST /arena/{slug}/covers: a state of a cover, a phase, who sits at a
// hole, or a first cover for each hole that has none.
func (d area) mark(w http.ResponseWriter, r *http.Request) error {
	base, err := d.service(r, "covers")
	if err != nil {
		return err
	}
	var facts []said
	switch r.PostFormValue("do") {
	case "cover":
		facts = []said{{fact: custody.Moved{Cover: r.PostFormValue("cover"), State: custody.State(r.PostFormValue("state"))}}}
	case "phase":
		facts = []said{{fact: custody.Began{Phase: custody.Phase(r.PostFormValue("phase"))}}}
	case "label":
		facts, err = d.labels(base)
	default:
		err = shell.ErrIncomplete
	}
	if err == nil {
		err = d.tell(r, facts...)
	}
	if err != nil {
		return err
	}
	return d.Goto(w, r, base.Address.Beside("/covers"))
}

// labels gives each hole without a cover its first.
func (d area) labels(p servicePage) (facts []said, err error) {
	holes, err := p.holes()
	has := d.now(p.record).Covers
	for _, h := range holes {
		if !slices.ContainsFunc(has, func(c coverView) bool { return c.Hole == h }) {
			facts = append(facts, said{fact: custody.Issued{Cover: h + "-1", Hole: h}})
		}
	}
	return facts, err
}

// giveLink answers POST /arena/{slug}/links: a day link for a steward without an account.
func (d area) giveLink(w http.ResponseWriter, r *http.Request) error {
	base, err := d.service(r, "covers")
	if err != nil {
		return err
	}
	day, err := time.ParseInLocation(time.DateOnly, r.PostFormValue("day"), d.Now().Location())
	if err != nil {
		return shell.Refuse(http.StatusUnprocessableEntity, "No link was made.", "Write the day as "+custody.DayOf(d.Now()).Date()+".")
	}
	id, err := d.pen.id(d.Random)
	if err != nil {
		return err
	}
	link := custody.LinkFor(string(id), base.Address.Slug, r.PostFormValue("name"), custody.DayOf(day.Add(noon)))
	if !d.Now().Before(link.Until) {
		return shell.Refuse(http.StatusUnprocessableEntity, "No link was made.", "That day is over: choose today or a later one.")
	}
	if err := d.tell(r, said{fact: custody.LinkMade{Link: link}}); err != nil {
		return err
	}
	return d.Goto(w, r, base.Address.Beside("/covers")+"#links")
}

// noon is well inside its day, whatever a clock's summer time.
const noon = 12 * time.Hour

// revokeLink answers POST /arena/{slug}/links/revoke.
func (d area) revokeLink(w http.ResponseWriter, r *http.Request) error {
	base, err := d.service(r, "covers")
	if err == nil {
		err = d.tell(r, said{fact: custody.LinkRevoked{Link: r.PostFormValue("link")}})
	}
	if err != nil {
		return err
	}
	return d.Goto(w, r, base.Address.Beside("/covers")+"#links")
}
