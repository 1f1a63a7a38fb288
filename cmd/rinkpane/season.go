package main

import (
	"bytes"
	"context"
	"fmt"
	"time"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/glass"
)

// loadSeason keeps the invented season of the demo arena's cut holes, unless the store
// has events of it already.
func loadSeason(ctx context.Context, a *app, k custody.Keeper, on *shelf.Shelf, now time.Time) error {
	id := idOf(examples.Demo)
	book, err := on.Open(ctx, id, 0)
	if err != nil {
		return fmt.Errorf("--demo-season is of the demo arena %s: %w", id, err)
	}
	if err := loadGames(ctx, on, id, now); err != nil {
		return err
	}
	there, err := k.Since(ctx, id, 0, 1)
	if err != nil {
		return err
	}
	if len(there) > 0 {
		fmt.Fprintf(a.err, "rinkpane: --demo-season: %s has covers already; nothing was invented\n", id)
		return nil
	}
	plan, err := book.Arena.Check()
	if err != nil {
		return err
	}
	order := cut.NewShopOrder(plan, book.Arena.Bytes(), nil)
	season := custody.SeasonOf(id, now)
	season.Revision, season.Version = book.Revision, book.Version.Number
	for _, h := range plan.Working() {
		if h.State == glass.Cut {
			season.Holes = append(season.Holes, h.ID)
			season.Panes[h.ID] = h.Pane
			job, err := order.JobOf(h.ID, cut.DefaultOptions())
			if err != nil {
				return err
			}
			season.Drawn[h.ID] = job.Acceptance()
		}
	}
	_, err = k.Append(ctx, now, season.Events()) // all of it or nothing
	return err
}

// exampleGame is the game of the example whose frames are invented.
const exampleGame = "nov-07"

// loadGames keeps the example's games at an arena, and three more from today on, unless the
// arena has games already.
func loadGames(ctx context.Context, on *shelf.Shelf, id string, now time.Time) error {
	there, err := on.GamesOf(ctx, id)
	if err != nil || len(there) > 0 {
		return err
	}
	const name = "games/" + examples.Demo
	text, err := examples.Games.ReadFile(name)
	if err != nil {
		return err
	}
	doc, err := form.Read(name, bytes.NewReader(text), game.MaxBytes)
	for i, away := range []string{"Loons", "Terns", "Gulls"} {
		if err != nil {
			return err
		}
		const daysApart = 3
		put := func(name, value string) form.Field { return form.Field{Name: name, Value: form.Text(value)} }
		doc, err = doc.Append("games", form.Fields(put("id", fmt.Sprint("night-", i+1)), put("series", "league"),
			put("date", now.AddDate(0, 0, daysApart*i).Format(time.DateOnly)), put("start", "19:00"), put("home", "Herons"), put("away", away), put("home-attacks", "B"),
			form.Field{Name: "times", Value: form.Fields(put("warm-up", "18:25"), put("period-1", "19:00"), put("period-2", "19:45"), put("period-3", "20:30"), put("lock-up", "22:00"))}))
	}
	if err != nil {
		return err
	}
	v, err := on.AddGames(ctx, id, string(doc.Text()), importWho, "an example, invented")
	if err != nil {
		return err
	}
	return on.InventFrames(ctx, v.Document, exampleGame, importWho)
}
