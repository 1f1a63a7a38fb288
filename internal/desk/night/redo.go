package night

import (
	"context"
	"fmt"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// redo is a seat that hands gave and that the arena's plan has changed under.
type redo struct{ Who, Hole, Periods, Why string }

// toRedo lists the seats of a game that hands gave before the arena's plan changed under
// them, and the version of the arena that they were given by. Nothing is moved.
func (d area) toRedo(ctx context.Context, p nightPage, g game.Game) (out []redo, since int, err error) {
	given := p.Season.ByHand(g)
	if len(given) == 0 {
		return nil, 0, nil
	}
	at, err := d.givenAt(ctx, p.games, g.ID)
	if err != nil {
		return nil, 0, err
	}
	if since, err = d.Shelf.ArenaAt(ctx, p.Address.Slug, at.Version.At); err != nil {
		return nil, 0, err
	}
	was, _, err := d.standings(ctx, p.Address.Slug, since)
	if err != nil {
		return nil, 0, err
	}
	is, around, err := d.standings(ctx, p.Address.Slug, 0)
	if err != nil {
		return nil, 0, err
	}
	for _, s := range seat.Stale(given, was, is, around, seat.Stirred) {
		why := map[seat.Touched]string{seat.Gone: "is gone", seat.IsOff: "is turned off", seat.Refused: "breaks a rule now"}[s.Why]
		if s.Why == seat.Moved {
			why = "moved by " + s.By.Format(p.Units())
		}
		period := fmt.Sprint(s.Seat.Period)
		if k := len(out) - 1; k >= 0 && out[k].Who == p.Who(s.Seat.Who) && out[k].Hole == s.Seat.Hole {
			out[k].Periods += ", " + period
			continue
		}
		out = append(out, redo{p.Who(s.Seat.Who), s.Seat.Hole, period, why})
	}
	return out, since, nil
}

// mostGiven is how many versions back the giving of a seat is looked for.
const mostGiven = 60

// givenAt returns the version of a season since which the seats that hands gave in a game
// are as they are.
func (d area) givenAt(ctx context.Context, g shelf.Games, id string) (shelf.Games, error) {
	now, err := game.Part(g.Document.ID, g.Version.Text, "seats")
	if err != nil {
		return g, err
	}
	want := seatsText(now, id)
	versions, err := d.Shelf.Keeper().History(ctx, g.Document.ID, mostGiven)
	for _, v := range versions {
		if v.Number == g.Version.Number || err != nil {
			continue
		}
		old, readErr := d.Shelf.Keeper().Version(ctx, g.Document.ID, v.Number)
		if readErr != nil {
			return g, readErr
		}
		doc, readErr := game.Part(g.Document.ID, old.Text, "seats")
		if readErr != nil || seatsText(doc, id) != want {
			return g, nil
		}
		g.Version = old
	}
	return g, err
}

// seatsText is what a document says of the seats of a game.
func seatsText(doc *form.Document, id string) string {
	var out strings.Builder
	for _, at := range itemsWhere(doc, "seats", "game", id) {
		fmt.Fprintf(&out, "%s %s:", doc.Value(at+".who"), doc.Value(at+".hole"))
		for _, period := range doc.Items(at + ".periods") {
			out.WriteString(" " + doc.Value(period))
		}
		out.WriteByte('\n')
	}
	return out.String()
}

// standings says how the holes of a version of an arena stand, and how long its boards are.
func (d area) standings(ctx context.Context, slug string, version int) (map[string]seat.Standing, unit.Length, error) {
	b, err := d.Shelf.Open(ctx, slug, version)
	if err != nil {
		return nil, 0, err
	}
	a, err := b.Arena.Check()
	if err != nil {
		return nil, 0, err
	}
	proof, err := d.Shelf.Proof(ctx, b)
	return game.Standings(a, proof.Findings), a.Rink.Perimeter(), err
}
