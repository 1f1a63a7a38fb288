package night

import (
	"net/http"
	"slices"
	"strconv"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/form"
)

// giveSeat fixes a seat by hand: a hole to somebody in a game, for all periods or for one;
// what they were given for other periods stays.
func giveSeat(p nightPage, r *http.Request) (edit, error) {
	g, err := p.gameOf(r)
	if err != nil {
		return edit{}, err
	}
	who, hole := one(r, "who"), one(r, "hole")
	only, _ := strconv.Atoi(one(r, "period")) // none: all
	holes := byHand(p.Season, g, who)
	for k := range holes {
		if only == 0 || only == k+1 {
			holes[k] = hole
		}
	}
	gone := itemsWhere(p.games.Text, "seats", "game", g.ID, "who", who)
	what := "give " + hole + " to " + p.Who(who) + ", " + g.Home + " – " + g.Away
	return edit{touches: gone, what: what, then: p.ToGame(g.ID), make: func(doc *form.Document) (*form.Document, error) {
		doc, err := without(doc, gone)
		if err != nil {
			return nil, err
		}
		return withSeats(doc, g, who, holes)
	}}, nil
}

// byHand returns the holes that hands gave somebody in a game, by period, "" for none.
func byHand(s game.Season, g game.Game, who string) []string {
	out := make([]string, g.Periods)
	for _, at := range s.ByHand(g) {
		if at.Who == who {
			out[at.Period-1] = at.Hole
		}
	}
	return out
}

// withSeats writes the holes that somebody is given in a game, by period, each once.
func withSeats(doc *form.Document, g game.Game, who string, holes []string) (_ *form.Document, err error) {
	for k, hole := range holes {
		if hole == "" || slices.Index(holes, hole) < k {
			continue
		}
		var periods []form.Entry
		for n, h := range holes {
			if h == hole {
				periods = append(periods, form.Text(strconv.Itoa(n+1)))
			}
		}
		fields := []form.Field{{Name: "game", Value: form.Text(g.ID)}, {Name: "who", Value: form.Text(who)}, {Name: "hole", Value: form.Text(hole)}}
		if len(periods) < len(holes) {
			fields = append(fields, form.Field{Name: "periods", Value: form.Items(periods...)})
		}
		if doc, err = doc.Append("seats", form.Fields(fields...)); err != nil {
			return nil, err
		}
	}
	return doc, nil
}

// freeSeat takes back what hands gave somebody in a game.
func freeSeat(p nightPage, r *http.Request) (edit, error) {
	g, err := p.gameOf(r)
	if err != nil {
		return edit{}, err
	}
	who := one(r, "who")
	paths := itemsWhere(p.games.Text, "seats", "game", g.ID, "who", who)
	if len(paths) == 0 {
		return edit{}, shell.Refuse(http.StatusUnprocessableEntity, "No seat of theirs was given by hand.", "Look at the game again.")
	}
	return removes("leave the seat of "+p.Who(who)+" to the rule again", p.ToGame(g.ID), paths...), nil
}

// giveAll answers POST /arena/{slug}/games/out: all seats of a game are handed out.
func (d area) giveAll(w http.ResponseWriter, r *http.Request) error {
	page, err := d.openGame(r)
	if err != nil {
		return err
	}
	if page.Trouble != "" {
		return shell.Refuse(http.StatusUnprocessableEntity, "Nobody is seated at this game.", page.Trouble)
	}
	return d.save(w, r, page.nightPage, handOut(page.nightPage, page.Game, page.night.Seating))
}

// handOut writes all seats of a game into the document, so that they stay whatever changes.
func handOut(p nightPage, g game.Game, seats seat.Seating) edit {
	gone := itemsWhere(p.games.Text, "seats", "game", g.ID)
	return edit{touches: gone, what: "hand out the seats of " + g.Home + " – " + g.Away, then: p.ToGame(g.ID), make: func(doc *form.Document) (*form.Document, error) {
		doc, err := without(doc, gone)
		for _, o := range seats.People {
			if err == nil {
				doc, err = withSeats(doc, g, o.Who, seats.Holes(o.Who, g.Periods))
			}
		}
		return doc, err
	}}
}
