package shelf

import (
	"context"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/form"
)

// InventFrames keeps invented readings of a game's frames, says in the season's document
// whose the invented bodies are, and sets their clocks, for somebody who tries the desk.
func (s *Shelf) InventFrames(ctx context.Context, season, id, who string) error {
	g, err := s.OpenGames(ctx, season)
	if err != nil {
		return err
	}
	of, _ := g.Season.Game(id)
	night, err := s.Night(ctx, g, id)
	if err != nil {
		return err
	}
	evening := recap.EveningOf(g.Season, of).Seated(g.Season, night.Seating)
	made := recap.Invented(evening, g.Season.Arena, g.Season.Kit, 1)
	var text strings.Builder
	if err := made.CSV(&text); err != nil {
		return err
	}
	if err := s.KeepFrames(ctx, g, of, text.String(), false, who); err != nil {
		return err
	}
	_, err = s.ChangeGames(ctx, g, g.Version.Number, GamesChange{Who: who, What: "invented bodies and clocks", Make: func(doc *form.Document) (_ *form.Document, err error) {
		return inventedBodies(doc, of, made)
	}})
	return err
}

// inventedBodies says of each body whose it is, and sets its clock by its first frame.
func inventedBodies(doc *form.Document, of game.Game, made recap.Readings) (_ *form.Document, err error) {
	put := func(name, value string) form.Field { return form.Field{Name: name, Value: form.Text(value)} }
	known := map[string]bool{}
	for _, f := range made.Frames {
		if known[f.Body] {
			continue
		}
		known[f.Body] = true
		if doc, err = doc.Append("bodies", form.Fields(put("body", f.Body), put("who", strings.TrimPrefix(f.Body, recap.InventedBody)))); err != nil {
			return nil, err
		}
		shows := f.Taken.Add(-recap.InventedAhead).Format(time.TimeOnly)
		if doc, err = doc.Append("clocks", form.Fields(put("game", of.ID), put("frame", f.File), put("shows", shows))); err != nil {
			return nil, err
		}
	}
	return doc, nil
}
