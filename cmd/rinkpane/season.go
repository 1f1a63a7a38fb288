package main

import (
	"context"
	"fmt"
	"time"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/draw/cut"
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
