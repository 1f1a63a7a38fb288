package api_test

import (
	"errors"
	"fmt"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/measure/form"
)

// TestSeasonOnEachStore: a season is kept, changed by two planners at once, and read with its
// seats and its versions, the same in SQLite and in PostgreSQL.
func TestSeasonOnEachStore(t *testing.T) {
	seen := map[string]bool{}
	onEachStore(t, func(t *testing.T, c *caller) {
		text, err := examples.Games.ReadFile("games/" + examples.Demo)
		if err != nil {
			t.Fatal(err)
		}
		ctx := t.Context()
		v, err := c.shelf.AddGames(ctx, "quillhaven", string(text), "Ada", "added")
		if err != nil {
			t.Fatal(err)
		}
		first, err := c.shelf.OpenGames(ctx, v.Document)
		if err != nil {
			t.Fatal(err)
		}
		give := func(base int, who, hole string, touches ...string) error {
			put := func(name, value string) form.Field { return form.Field{Name: name, Value: form.Text(value)} }
			_, err := c.shelf.ChangeGames(ctx, first, base, shelf.GamesChange{Who: "Ben", What: "give " + hole, Touches: touches, Make: func(doc *form.Document) (*form.Document, error) {
				if len(touches) > 0 {
					return doc.Set(touches[0]+".hole", form.Text(hole))
				}
				return doc.Append("seats", form.Fields(put("game", "nov-28"), put("who", who), put("hole", hole)))
			}})
			return err
		}
		const cleos = "seats[#1]"
		if err := errors.Join(give(1, "ada", "A4"), give(1, "ben", "B3"), give(3, "cleo", "B3", cleos)); err != nil {
			t.Fatal(err)
		}
		var late *shelf.Late
		if err := give(1, "cleo", "B4", cleos); !errors.As(err, &late) || late.Head.Number != 4 {
			t.Errorf("two change the same seat: %v", err)
		}
		g, err := c.shelf.OpenGames(ctx, v.Document)
		if err != nil || g.Version.Number != 4 || len(g.Season.Fixed) != 3 {
			t.Fatalf("version %d with %d seats by hand, %v", g.Version.Number, len(g.Season.Fixed), err)
		}
		on, err := c.shelf.GamesOf(ctx, "quillhaven")
		if err != nil || len(on) != 1 || on[0].ID != v.Document {
			t.Errorf("seasons of the arena: %v, %v", on, err)
		}
		if all, err := c.shelf.Keeper().History(ctx, v.Document, 10); err != nil || len(all) != 4 {
			t.Errorf("%d versions, %v", len(all), err)
		}
		night, err := c.shelf.Night(ctx, g, "nov-28")
		if err != nil || len(night.Seating.Seats) < 8 {
			t.Fatalf("%d seats, %v", len(night.Seating.Seats), err)
		}
		seen[fmt.Sprint(night.Seating.Seats)] = true
	})
	if len(seen) != 1 {
		t.Errorf("the stores' seats differ: %v", seen)
	}
}
