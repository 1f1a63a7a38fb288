// Package night is a season's games on the desk: who asks for which hole, who gets it and
// why, what was fair so far, and the card that each takes along.
//
//	games document --shelf--> season --seats--> page of a game
//	      ^                                         |
//	      '---------- a form changes the text ------'--> card, sheet, lists, by a link
//
// The model: a season is a document like an arena, kept in versions, read with the arena
// that it names; a form is an edit of its text. Seats are worked out whenever they are
// asked for and are the same as the command's; what a hand gives stands in the document
// and stays. Where the arena changed so that the document no longer fits, pages show the
// seats with the last plan that it fits, and list what to redo: nothing moves by itself.
//
//	/arena/{slug}/games     the games of a season, and how another comes in
//	/arena/{slug}/game      one game
//	/card/{token}           somebody's card of one game, without an account
package night

import (
	"embed"
	"time"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

//go:embed *.tmpl
var templates embed.FS

// Options is what the area needs beside the shell.
type Options struct {
	Door    *door.Door // whose secret signs the links of cards
	Records *shelf.Records
	Now     func() time.Time
	// Creator stands in files as the program that made them.
	Creator string
}

type area struct {
	*shell.Shell
	Options
}

// New returns the area.
func New(s *shell.Shell, o Options) shell.Area {
	d := area{s, o}
	const arena, demo = "/arena/{slug}", "/arena/" + shell.SampleArena
	page := func(path string, answer shell.Answer, samples ...string) shell.Route {
		for i := range samples {
			samples[i] = demo + path + samples[i]
		}
		return shell.Route{Pattern: "GET " + arena + path, Need: people.Read, Most: shell.Form, Answer: answer, Samples: samples}
	}
	form := func(path string, most int64, answer shell.Answer) shell.Route {
		return shell.Route{Pattern: "POST " + arena + path, Need: people.Plan, Most: most, Answer: answer}
	}
	heavy := func(r shell.Route) shell.Route { r.Heavy = true; return r }
	return shell.Area{Templates: templates, Routes: []shell.Route{
		page("/games", d.listPage, ""),
		form("/games", shell.Document, d.takeIn),
		form("/games/change", shell.Form, d.change),
		form("/games/out", shell.Form, d.giveAll),
		page("/games/text", d.textPage, ""),
		form("/games/text", shell.Document, d.saveText),
		page("/game", d.gamePage, "?game=nov-07", "?game=nov-07&who=ada"),
		{Pattern: "GET /card/{token}", Need: door.Open, Most: shell.Form, Answer: d.cardPage},
		{Pattern: "GET /card/{token}/card.pdf", Need: door.Open, Most: shell.Form, Answer: d.cardPDF, Heavy: true},
		{Pattern: "GET /card/{token}/game.ics", Need: door.Open, Most: shell.Form, Answer: d.cardCalendar},
		page("/ledger", d.ledgerPage, ""),
		page("/visit", d.visitPage, "", "?hole=B1", "?lens=70-200&follows=home"),
		heavy(page("/seats.pdf", d.seatsPDF)),
		page("/seats.csv", d.seatsCSV),
		heavy(page("/cards.pdf", d.cardsPDF)),
		heavy(page("/games.ics", d.calendar)),
		page("/requests", d.requestsPage, "", "?who=ada"),
	}}
}
