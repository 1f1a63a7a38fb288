package cut

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/draw/sheet"
)

// Issue is who answers for a set of drawings and how far it has come, as whoever
// draws says it. Nothing of it is guessed: what is not said stands as "not given".
type Issue struct {
	Owner, Number, Drawn, Checked string // legal owner, document number, names
	History                       []Revision
}

// Revision is one issue of the drawings, the last of a history being the sheet's own.
type Revision struct {
	Letter string
	Date   time.Time
	What   string
}

// ParseRevision reads a revision: its letter, its date, and what changed, as in
// "A 2027-01-09 first issue".
func ParseRevision(s string) (Revision, error) {
	words := strings.Fields(s)
	if len(words) < 2 {
		return Revision{}, fmt.Errorf("issue %q: write a revision, a date and what changed, as in \"A 2027-01-09 first issue\"", s)
	}
	at, err := time.Parse(time.DateOnly, words[1])
	if err != nil {
		return Revision{}, fmt.Errorf("issue %q: the date is %q; write it as in \"A 2027-01-09 first issue\"", s, words[1])
	}
	return Revision{words[0], at, strings.Join(words[2:], " ")}, nil
}

const notGiven = "not given"

// fields are the title block's entries for identity and responsibility, by the field
// names of ISO 7200:2004 (from memory), and the general tolerances; about is of which
// pane, hole or window the document is, "" of the whole arena.
func (p ShopOrder) fields(about string) []sheet.Field {
	letter, date := "not issued", notGiven
	if n := len(p.Issue.History); n > 0 {
		letter, date = p.Issue.History[n-1].Letter, p.Issue.History[n-1].Date.Format(time.DateOnly)
	}
	number := cmp.Or(p.Issue.Number, p.Mark)
	if about != "" {
		number += "-" + about
	}
	approved := "no"
	if p.Approval.Standing == custody.Approved {
		approved = approvers(p.Approval)
	}
	return []sheet.Field{
		{Name: "Legal owner", Value: cmp.Or(p.Issue.Owner, notGiven)}, {Name: "Document number", Value: number},
		{Name: "Revision", Value: letter}, {Name: "Date of issue", Value: date},
		{Name: "Drawn", Value: cmp.Or(p.Issue.Drawn, notGiven)}, {Name: "Checked", Value: cmp.Or(p.Issue.Checked, notGiven)},
		{Name: "Approved", Value: approved}, {Name: "Tolerances", Value: "places " + tolerance(placeTolerance, p.Arena.Units)},
	}
}

func approvers(a custody.Approval) string {
	var names []string
	for _, r := range a.Replies {
		if r.Accepted {
			names = append(names, r.Approver.Name)
		}
	}
	return cmp.Or(strings.Join(names, ", "), "yes")
}

// history says what the revisions changed, a line each, the latest last.
func (p ShopOrder) history() []string {
	if len(p.Issue.History) == 0 {
		return []string{"Revisions: none issued; drawn from plan " + p.Mark + "."}
	}
	var out []string
	for _, r := range p.Issue.History {
		out = append(out, "Revision "+r.Letter+", "+r.Date.Format(time.DateOnly)+": "+cmp.Or(r.What, "no words given")+".")
	}
	return out
}
