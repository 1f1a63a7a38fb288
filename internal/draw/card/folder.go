package card

import (
	"bytes"
	"context"
	"path"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/draw/sheet"
)

// File is one file of the sheets, its name with slashes.
type File struct {
	Name string
	Data []byte
}

// Night is a game that was seated.
type Night struct {
	Game  game.Game
	Seats []seat.Seat
}

// Files makes the sheets of some games: for each a folder with the wall's seat sheet, the
// seats as CSV, and the cards for phones, in light and dark, and for paper; beside them an
// iCalendar file a person over all the games. stamped is when they are made.
func Files(ctx context.Context, r Rink, nights []Night, paper sheet.Paper, o Options, stamped time.Time) ([]File, error) {
	var out []File
	var all []Card
	for _, n := range nights {
		cards, err := r.Cards(n.Game, n.Seats, nil)
		if err != nil {
			return nil, err
		}
		all = append(all, cards...)
		made, err := r.files(ctx, n, cards, paper, o)
		if err != nil {
			return nil, err
		}
		out = append(out, made...)
	}
	for _, p := range r.season.People {
		out = append(out, File{"calendars/" + p.ID + ".ics", []byte(Calendar(p, all, stamped))})
	}
	return out, nil
}

// files makes the folder of one game.
func (r Rink) files(ctx context.Context, n Night, cards []Card, paper sheet.Paper, o Options) (out []File, err error) {
	dir := folderOf(n.Game.ID)
	put := func(name string, data []byte, e error) {
		if err == nil {
			out, err = append(out, File{path.Join(dir, name), data}), e
		}
	}
	o.Paper = paper
	wall := Wall{r.season, n.Game, n.Seats}
	data, e := WallPDF(ctx, wall, o)
	put("seats.pdf", data, e)
	var csv bytes.Buffer
	e = wall.Table().CSV(&csv)
	put("seats.csv", csv.Bytes(), e)
	if len(cards) == 0 || err != nil {
		return out, err
	}
	data, e = PDF(ctx, cards, o)
	put("cards-paper.pdf", data, e)
	o.Paper = sheet.Paper{}
	data, e = PDF(ctx, cards, o)
	put("cards-phone.pdf", data, e)
	o.Dark = true
	data, e = PDF(ctx, cards, o)
	put("cards-phone-dark.pdf", data, e)
	return out, err
}

// folderOf names a game's folder: its id, with a dash for what a file's name cannot hold.
func folderOf(id string) string {
	name := strings.Map(func(r rune) rune {
		if r < 128 && (r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || strings.ContainsRune(".-_", r)) {
			return r
		}
		return '-'
	}, id)
	return "game-" + name
}
