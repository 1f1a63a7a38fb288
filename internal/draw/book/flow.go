package book

import (
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/table"
)

// flow is what the book is written into: sheets of paper, or a page for a browser.
type flow interface {
	Heading(s string)
	Notes(lines ...string)
	Numbered(lines ...string)
	Table(t table.Table, size float64) // type in millimetres
	Figures(row ...figure)             // side by side
	Photos(row ...View)
	Facts(facts ...fact)
	Signature(who signer)
}

// figure is a drawing made for the room that it gets: scaled down whole, its words
// could not be read.
type figure struct {
	draw  func(width float64) *sheet.Drawing // width in millimetres
	wide  float64                            // on a page for a browser, mm
	share float64                            // of the height of a sheet that it takes at most; 0: all of it
}

// fact is what a reader in a hurry looks for: a few words large, and what they are.
type fact struct{ name, value string }

// part writes one thing of a chapter.
type part func(flow)

// column is parts below one another.
type column struct {
	share float64 // of the width, from 0 to 1
	parts []part
}

// leaf is how parts stand on a sheet; what does not fit goes on behind it.
type leaf struct {
	title   string // "" is the chapter's
	columns []column
}

// chapter is a part of the book. The pages and the page for a browser are made of
// the same chapters.
type chapter struct {
	id, title string
	level     int // 0, or 1 for a hole under "Holes"
	leaves    []leaf
}

// whole is a leaf of one column.
func whole(parts ...part) leaf { return leaf{columns: []column{{1, parts}}} }

// chapters are all of the book behind its cover, in the order in which they are read.
func (s setter) chapters() []chapter {
	out := []chapter{
		{id: "summary", title: "Summary", leaves: []leaf{{columns: []column{{summaryShare, []part{s.summary}}, {1 - summaryShare, nil}}}}},
		{id: "plan", title: "Plan with stations", leaves: []leaf{whole(s.planMap)}},
		{id: "boards", title: "Boards and glass, unrolled", leaves: []leaf{whole(s.strip)}},
	}
	if s.c.Light != nil {
		out = append(out, chapter{id: "light", title: "Light on the ice", leaves: []leaf{whole(s.lightMap)}})
	}
	for _, h := range s.c.Plan.Holes {
		out = append(out, s.hole(h))
	}
	return append(out,
		chapter{id: "covers", title: "Covers, tethers and kit", leaves: []leaf{whole(s.covers, s.kit)}},
		chapter{id: "rules", title: "Rule findings", leaves: []leaf{whole(s.rules)}},
		chapter{id: "guard", title: "Guard: what an open hole lets through", leaves: []leaf{{columns: []column{
			{rankingShare, []part{s.ranking}}, {1 - rankingShare, []part{s.sectors}}}},
			{title: "To be kept clear while a cover is out, hole by hole", columns: []column{{1, []part{s.eachSector}}}}}},
		chapter{id: "sign-off", title: "Cautions and sign-off", leaves: []leaf{whole(s.cautions, s.signOff)}},
	)
}

// Shares of the width: the summary's, beside the contents, and the table of the guard's
// beside its map.
const (
	summaryShare = 0.74
	rankingShare = 0.42
)
