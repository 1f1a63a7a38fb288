package book

import (
	"cmp"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// signer is one who puts a name under the book, and under what.
type signer struct{ who, under string }

// signers returns the four of the book, in the order in which they sign.
func signers() []signer {
	return []signer{
		{"Rink operator", "The holes, covers and cautions are as this book says; covers are in whenever nobody works a hole."},
		{"Glass contractor", "Panes, holes and covers are made by the shop drawings of this plan revision and local codes; strength was judged by us, not by this book."},
		{"League", "The holes are allowed under our rules, with the dispensations listed."},
		{"Photographer", "I keep the cover in when I leave, nothing past the rink face during play, and the tether on."},
	}
}

// cautions sets the cautions and the dispensations given.
func (s setter) cautions(f flow) {
	f.Heading("Approval of this plan revision")
	f.Notes(words.ApprovalSentence(s.c.Plan.Approval))
	f.Heading("Cautions")
	f.Numbered(glass.Cautions()...)
	if len(s.c.Arena.Dispensations) == 0 {
		return
	}
	f.Heading("Dispensations")
	t := table.New("rule", "holes", "by", "reference", "date", "until")
	for _, d := range s.c.Arena.Dispensations {
		t.Add(d.Rule, cmp.Or(strings.Join(d.Holes, ", "), "all"), d.By, d.Reference, d.Date, d.Until)
	}
	f.Table(t, sheet.SizeTable)
}

// signOff sets the lines to sign on.
func (s setter) signOff(f flow) {
	f.Heading("Sign-off, plan revision " + s.c.Mark)
	for _, who := range signers() {
		f.Signature(who)
	}
}

// signed are what is written on a signature's lines, with their shares of the width.
var signed = []struct {
	name  string
	share float64
}{{"name", 0.36}, {"signature", 0.40}, {"date", 0.24}}
