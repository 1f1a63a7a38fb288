package night

import (
	"context"
	"net/http"
	"strconv"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/form"
)

// pass is whose card of which game a link opens, and until when. It opens nothing else.
type pass struct {
	Season string    `json:"s"`
	Game   string    `json:"g"`
	Who    string    `json:"w"`
	Until  time.Time `json:"u"`
	Number int       `json:"n,omitempty"` // how many of this card's links were revoked before it
}

// linkUse keeps these signatures apart from all else that the desk's secret signs.
const linkUse = "rinkpane card link\n"

// passTo makes somebody's pass to a game: until four in the morning after its day.
func (d area) passTo(season string, s game.Season, g game.Game, who string) pass {
	day := time.Date(g.Start.Year(), g.Start.Month(), g.Start.Day(), noon, 0, 0, 0, d.Now().Location())
	return pass{season, g.ID, who, custody.DayOf(day).To.UTC(), s.Revocations(g.ID, who)}
}

// noon is an hour well inside its day, whatever a clock's summer time.
const noon = 12

// token writes a pass as it stands in an address.
func (p pass) token(secret string) string { return custody.Sign(linkUse, p, secret) }

// byLink opens the pass of a link. Whatever is wrong with one is said in a line, and nothing
// of the game with it.
func (d area) byLink(r *http.Request) (p pass, err error) {
	secret, err := d.Door.Secret(r.Context())
	if err != nil {
		return p, err
	}
	if !custody.Signed(linkUse, r.PathValue("token"), secret, &p) {
		return p, shell.Refuse(http.StatusForbidden, "This link opens nothing.", "It is not one of ours: ask for a new one at the rink's desk.")
	}
	if !d.Now().Before(p.Until) {
		return p, shell.Refuse(http.StatusForbidden, "This link opens nothing.", "The game's day is over.")
	}
	return p, nil
}

// revoke makes a link to somebody's card open nothing; the card has another one then.
func revoke(p nightPage, r *http.Request) (edit, error) {
	g, err := p.gameOf(r)
	if err != nil {
		return edit{}, err
	}
	who := one(r, "who")
	put := func(name, value string) form.Field { return form.Field{Name: name, Value: form.Text(value)} }
	e := adds("revoked", "revoke the link to the card of "+p.Who(who)+", "+g.Home+" – "+g.Away, p.ToGame(g.ID), put("game", g.ID), put("who", who), put("links", "1"))
	if at, there := itemWhere(p.games.Text, "revoked", "game", g.ID, "who", who); there {
		e.touches = []string{at}
		e.make = func(doc *form.Document) (*form.Document, error) {
			return doc.Set(at+".links", form.Text(strconv.Itoa(p.Season.Revocations(g.ID, who)+1)))
		}
	}
	return e, nil
}

// links returns the links of the cards of a game, by person.
func (d area) links(ctx context.Context, page gamePage) (map[string]string, error) {
	secret, err := d.Door.Secret(ctx)
	out := map[string]string{}
	for _, a := range page.asks {
		if p := d.passTo(page.ID, page.Season, page.Game, a.ID); !a.NoShow && d.Now().Before(p.Until) {
			out[a.ID] = "/card/" + p.token(secret)
		}
	}
	return out, err
}
