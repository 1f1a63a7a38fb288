package night

import (
	"net/http"
	"time"

	"example.org/rinkpane/internal/decide/game"
)

// listPage is the games of a season, and how another season or schedule comes in.
type listPage struct {
	nightPage
	Lists []gameList
	Text  string // of a document that could not be taken in
}

// gameList is the games to come, or those that were played.
type gameList struct {
	ID, Head string
	Rows     []gameRow
}

// gameRow is a game of the list.
type gameRow struct {
	game.Game
	Asks   int
	ByHand int // seats that a hand gave
	Toward string
	URL    string
}

func (d area) listPage(w http.ResponseWriter, r *http.Request) error {
	base, err := d.open(r, "games")
	if err != nil {
		return err
	}
	return d.showList(w, r, http.StatusOK, listPage{nightPage: base})
}

func (d area) showList(w http.ResponseWriter, r *http.Request, status int, page listPage) error {
	byHand := map[string]int{}
	for _, f := range page.Season.Fixed {
		byHand[f.Game]++
	}
	next, past := gameList{ID: "to-come", Head: "Games to come"}, gameList{ID: "played", Head: "Games played"}
	for _, g := range page.Season.Games {
		row := gameRow{Game: g, Asks: len(page.Season.Asks(g)), ByHand: byHand[g.ID], Toward: Toward(g, 0), URL: page.ToGame(g.ID)}
		if g.Start.AddDate(0, 0, 1).Before(wall(page.now)) {
			past.Rows = append(past.Rows, row)
		} else {
			next.Rows = append(next.Rows, row)
		}
	}
	page.Lists = []gameList{next, past}
	return d.Page(w, r, status, "games.tmpl", page)
}

// wall is a time as a rink's wall clock shows it, without its zone.
func wall(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), 0, 0, time.UTC)
}
