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

// sign sets the cautions and the lines to sign on.
func (s setter) sign() chapter {
	const title = "Cautions and sign-off"
	f := s.flow("sign-off", title)
	s.cautions(f)
	f.Heading(signTitle + s.c.Mark)
	for _, who := range signers() {
		s.signature(f, who)
	}
	return chapter{title: title, pages: f.Sheets()}
}

const signTitle = "Sign-off, plan revision "

// signHigh is the room of one signature, mm.
const signHigh = 22.0

// signature sets what is signed and three lines: name, signature, date.
func (s setter) signature(f *sheet.Flow, who signer) {
	f.Need(signHigh)
	room := f.Room()
	g := f.Group()
	g.Add("text strong", sheet.Text{At: sheet.Pt(room.X, room.Y), S: who.who, Size: sheet.SizeText, VAlign: sheet.Top})
	g.Paragraph("note", sheet.Regular, sheet.Pt(room.X+34, room.Y), who.under, sheet.SizeText, room.W-34, 4)
	y := room.Y + signHigh - 6
	x := room.X
	for _, part := range []struct {
		name  string
		share float64
	}{{"name", 0.36}, {"signature", 0.40}, {"date", 0.24}} {
		w := room.W * part.share
		g.Add("sign-line", sheet.Line{A: sheet.Pt(x, y), B: sheet.Pt(x+w-4, y)})
		g.Add("caption", sheet.Text{At: sheet.Pt(x, y+1.2), S: part.name, VAlign: sheet.Top})
		x += w
	}
	f.Skip(signHigh)
}
