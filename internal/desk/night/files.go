package night

import (
	"bytes"
	"net/http"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/card"
	"example.org/rinkpane/internal/draw/sheet"
)

// wall opens the seat sheet of a request's game.
func (d area) wall(r *http.Request) (card.Wall, error) {
	page, err := d.openGame(r)
	if err == nil && page.Trouble != "" {
		err = shell.Refuse(http.StatusUnprocessableEntity, "Nobody is seated at this game.", page.Trouble)
	}
	return card.Wall{Season: page.Season, Game: page.Game, Seats: page.night.Seating.Seats}, err
}

// paperOf is what a season's sheets are printed on.
func paperOf(w card.Wall) (sheet.Paper, error) {
	return sheet.ParsePaper(sheet.UsualPaper(w.Season.Arena.Units))
}

// seatsPDF answers GET /arena/{slug}/seats.pdf?game=: the sheet for the wall.
func (d area) seatsPDF(w http.ResponseWriter, r *http.Request) error {
	wall, err := d.wall(r)
	if err != nil {
		return err
	}
	paper, err := paperOf(wall)
	if err != nil {
		return err
	}
	data, err := card.WallPDF(r.Context(), wall, card.Options{Paper: paper, Creator: d.Creator})
	if err == nil {
		shell.Send(w, r, http.StatusOK, "application/pdf", data, nil)
	}
	return err
}

// seatsCSV answers GET /arena/{slug}/seats.csv?game=.
func (d area) seatsCSV(w http.ResponseWriter, r *http.Request) error {
	wall, err := d.wall(r)
	if err != nil {
		return err
	}
	var text bytes.Buffer
	if err := wall.Table().CSV(&text); err != nil {
		return err
	}
	shell.SendFile(w, r, "text/csv; charset=utf-8", "seats-"+wall.Game.ID+".csv", text.Bytes())
	return nil
}

// cardsPDF answers GET /arena/{slug}/cards.pdf?game=: everybody's card, four on a sheet.
func (d area) cardsPDF(w http.ResponseWriter, r *http.Request) error {
	wall, err := d.wall(r)
	if err != nil {
		return err
	}
	page, err := d.openSeason(r, "games")
	if err != nil {
		return err
	}
	cards, err := d.cardsOf(r.Context(), page.games, wall.Game)
	if err == nil && len(cards) == 0 {
		err = shell.Refuse(http.StatusNotFound, "There is no card to draw.", "Nobody has a seat at this game.")
	}
	if err != nil {
		return err
	}
	paper, err := paperOf(wall)
	if err != nil {
		return err
	}
	data, err := card.PDF(r.Context(), cards, card.Options{Units: page.Units(), Paper: paper, Creator: d.Creator})
	if err == nil {
		shell.Send(w, r, http.StatusOK, "application/pdf", data, nil)
	}
	return err
}

// calendar answers GET /arena/{slug}/games.ics?who=: somebody's games of the season.
func (d area) calendar(w http.ResponseWriter, r *http.Request) error {
	page, err := d.openSeason(r, "games")
	if err != nil {
		return err
	}
	who, there := page.Season.Person(r.FormValue("who"))
	if !there {
		return shell.Refuse(http.StatusNotFound, "Nobody of that name is in this season.", "Look at the list of people.")
	}
	mine, err := d.cardsTo(r.Context(), page.games, who.ID)
	if err != nil {
		return err
	}
	shell.SendFile(w, r, "text/calendar; charset=utf-8", who.ID+".ics", []byte(card.Calendar(who, mine, d.Now())))
	return nil
}
