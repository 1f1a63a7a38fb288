package cut

import (
	"context"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/words"
)

// Certificate draws the page that says what an inspection of a hole proved, by whom
// and when; who and at may be empty, for the page to be filled in by hand.
func (p ShopOrder) Certificate(ctx context.Context, j Job, found custody.Judged, who string, at time.Time, paper, creator string) ([]byte, error) {
	size, err := sheet.ParsePaper(paper)
	if err != nil {
		return nil, err
	}
	title := "Hole " + j.Hole.ID + ": inspection"
	on := "____________________"
	if !at.IsZero() {
		on = at.Format(time.DateOnly)
	}
	if who == "" {
		who = "____________________"
	}
	return p.pdf(ctx, title, creator, p.document(size, j.Hole.ID, 1, func(s *set) { s.certificate(j, found, title, who, on) }))
}

func (s *set) certificate(j Job, found custody.Judged, title, who, on string) {
	f := sheet.NewFlow(func() (*sheet.Drawing, sheet.Rect) {
		g := s.page(upright, "inspection", title, marks{}, sheet.Field{Name: "Pane", Value: j.Pane.ID}, sheet.Field{Name: "Inspected", Value: on})
		return g.d, g.area
	})
	f.Heading("Hole " + j.Hole.ID + " is " + words.InspectionVerdict(found))
	f.Notes(s.whereabouts(j.Pane.ID, j.Hole.Station))
	f.Heading("Measured, and what the drawing allows")
	f.Table(words.Inspection().Of("", found.Findings, s.Arena.Units), sheet.SizeTable)
	f.Notes(append(words.Instead(found.Findings, s.Arena.Units), words.DecisionRule())...)
	if len(found.Seen) > 0 {
		f.Heading("Looked at and tried")
		lines := make([]string, len(found.Seen))
		for i, one := range found.Seen {
			lines[i] = words.Seen(one)
		}
		f.Notes(lines...)
	}
	f.Heading("Signed")
	f.Notes("Inspected by "+who+" on "+on+".", "Signature: ________________________________")
}
