package night

import (
	"context"
	"html/template"
	"net/http"
	"slices"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/card"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// cardPage is somebody's card of a game, on the phone: a phone keeps it and opens it
// without a network.
type cardPage struct {
	shell.Frame
	Base     string // path of the page; its files are below
	GameLine string
	Who      string
	Turns    []cardTurn
	None     string // why there is no seat; ""
	Mounts   []string
	Ends     [2][]string // who attacks end A and end B, in which periods
	Map      template.HTML
	Exposure table.Table
	Nexts    []string
	Duties   []string
	Assumed  []string
}

// cardTurn is where somebody is in a period.
type cardTurn struct {
	card.Turn
	When string // the clock as the period begins; "" where nobody said
	At   string // the same with its date, for the page's module
	Set  string // shutter, stop and ISO before the goal; "" where the light is not known
}

// cardPage answers GET /card/{token}.
func (d area) cardPage(w http.ResponseWriter, r *http.Request) error {
	p, err := d.byLink(r)
	if err != nil {
		return err
	}
	mine, season, err := d.cardOf(r.Context(), p)
	if err != nil {
		return err
	}
	page := cardPage{Frame: d.Frame(r, mine.Game.Home+" – "+mine.Game.Away).Dim(), Base: "/card/" + r.PathValue("token")}
	page.GameLine, page.Who = mine.Head()
	sys := season.Arena.Units
	switch {
	case mine.Game.Off:
		page.None = "The game is called off."
	case len(mine.Posts) == 0:
		page.None = "You have no seat at this game."
	default:
		page.fill(mine, sys)
	}
	return d.Page(w, r, http.StatusOK, "card.tmpl", page)
}

func (p *cardPage) fill(c card.Card, sys unit.System) {
	for _, t := range c.Turns {
		turn := cardTurn{Turn: t}
		if !t.At.IsZero() {
			turn.When, turn.At = t.At.Format(timeWords), t.At.Format("2006-01-02T15:04")
		}
		turn.Set = exposure(c, t, sys)
		p.Turns = append(p.Turns, turn)
	}
	for _, post := range c.Posts {
		p.Mounts = append(p.Mounts, post.Mount())
	}
	p.Ends = [2][]string{c.Ends(-1), c.Ends(+1)}
	p.Exposure, p.Nexts, p.Duties = c.Exposure(sys), c.Nexts(), c.Duties(sys)
	for _, s := range c.Assumed() {
		p.Assumed = append(p.Assumed, s.In(sys))
	}
	p.Map = template.HTML(sheet.InlineSVG(mapOf(c)))
}

// exposure is what to set in a turn for the ice before the goal.
func exposure(c card.Card, t card.Turn, sys unit.System) string {
	for _, post := range c.Posts {
		for _, row := range post.Light {
			if post.Hole == t.Hole && post.Lens.ID == t.Lens.ID && row.Zone == "slot-"+post.End {
				cells := words.Light().Pick("shutter", "stop", "face_iso_nominal").Of("", []light.Row{row}, sys).Rows[0]
				return cells[0].Text + " " + cells[1].Text + " ISO " + cells[2].Text
			}
		}
	}
	return ""
}

// labelIn is how far inside the boards a hole's name stands on the small map, in metres.
const labelIn = 4.5

// mapOf draws the rink with the card's holes and their names.
func mapOf(c card.Card) *sheet.Drawing {
	a := c.Arena
	a.Holes = slices.DeleteFunc(slices.Clone(a.Holes), func(h glass.Hole) bool {
		return !slices.ContainsFunc(c.Posts, func(p card.Post) bool { return p.Hole == h.ID })
	})
	m, frame := chart.SmallMap("rink", a, nil), chart.SmallFrame(a)
	m.Layers = append(m.Layers, sheet.LayerText)
	for _, h := range a.Holes {
		at := a.Rink.Point(h.Station).Add(a.Rink.Normal(h.Station).Scale(labelIn))
		m.Add(sheet.LayerText, "hole-label", sheet.Text{At: frame.At(at.X, at.Y), S: h.ID, Size: sheet.SizeText, Anchor: sheet.Middle, VAlign: sheet.Centre})
	}
	return m
}

// cardOf makes the card of a pass as the season stands now; one without posts where there
// is no seat.
func (d area) cardOf(ctx context.Context, p pass) (card.Card, game.Season, error) {
	games, err := d.Shelf.OpenGames(ctx, p.Season)
	if err != nil {
		return card.Card{}, game.Season{}, err
	}
	s := games.Season
	g, _ := s.Game(p.Game)
	who, there := s.Person(p.Who)
	if g.ID == "" || !there {
		return card.Card{}, s, shell.Refuse(http.StatusNotFound, "This card is no longer there.", "The game or the name was taken out: ask at the rink's desk.")
	}
	if p.Number != s.Revocations(p.Game, p.Who) {
		return card.Card{}, s, shell.Refuse(http.StatusForbidden, "This link opens nothing.", "It was revoked: ask for a new one at the rink's desk.")
	}
	none := card.Card{Game: g, Person: who, Arena: s.Arena}
	cards, err := d.cardsOf(ctx, games, g)
	k := slices.IndexFunc(cards, func(c card.Card) bool { return c.Person.ID == p.Who })
	if err != nil || k < 0 {
		return none, s, err
	}
	return cards[k], s, nil
}

// cardsOf makes all cards of a game.
func (d area) cardsOf(ctx context.Context, games shelf.Games, g game.Game) ([]card.Card, error) {
	if g.Off {
		return nil, nil
	}
	night, err := d.Shelf.Night(ctx, games, g.ID)
	if err != nil {
		return nil, shell.Because(http.StatusUnprocessableEntity, "Nobody is seated at this game.", err)
	}
	rink, err := d.Shelf.Cards(ctx, games)
	if err != nil {
		return nil, err
	}
	covers, err := d.covers(ctx, games.Arena.Document.ID)
	if err != nil {
		return nil, err
	}
	return rink.Cards(g, night.Seating.Seats, covers)
}

// cardsTo makes somebody's cards of all games of a season that are played.
func (d area) cardsTo(ctx context.Context, games shelf.Games, who string) (out []card.Card, err error) {
	seatings, err := d.Shelf.Seatings(ctx, games)
	if err != nil {
		return nil, shell.Because(http.StatusUnprocessableEntity, "Nobody is seated at one of the games.", err)
	}
	rink, err := d.Shelf.Cards(ctx, games)
	if err != nil {
		return nil, err
	}
	for _, s := range seatings {
		g, _ := games.Season.Game(s.Game)
		c, seated, err := rink.Card(g, s.Seats, nil, who)
		if err != nil {
			return nil, err
		}
		if seated {
			out = append(out, c)
		}
	}
	return out, nil
}

// covers names the cover of each hole that is in use, from what is kept of the holes in
// service.
func (d area) covers(ctx context.Context, arena string) (map[string]string, error) {
	record, err := d.Records.Of(ctx, arena)
	if err != nil {
		return nil, err
	}
	out := map[string]string{}
	for _, c := range custody.Fold(record.History, custody.DayOf(d.Now()), d.Now()).Covers {
		if _, there := out[c.Hole]; !there || c.State == custody.In {
			out[c.Hole] = c.ID
		}
	}
	return out, nil
}

// cardPDF answers GET /card/{token}/card.pdf: the card as a page of a phone's shape.
func (d area) cardPDF(w http.ResponseWriter, r *http.Request) error {
	mine, season, err := d.linked(r)
	if err != nil {
		return err
	}
	data, err := card.PDF(r.Context(), []card.Card{mine}, card.Options{Units: season.Arena.Units, Dark: true, Creator: d.Creator})
	if err == nil {
		shell.Send(w, r, http.StatusOK, "application/pdf", data, nil)
	}
	return err
}

// cardCalendar answers GET /card/{token}/game.ics: the game as a calendar's event.
func (d area) cardCalendar(w http.ResponseWriter, r *http.Request) error {
	mine, _, err := d.linked(r)
	if err == nil {
		shell.SendFile(w, r, "text/calendar; charset=utf-8", mine.Game.ID+".ics", []byte(card.Calendar(mine.Person, []card.Card{mine}, d.Now())))
	}
	return err
}

// linked returns the card of a link, which must have a seat.
func (d area) linked(r *http.Request) (mine card.Card, s game.Season, err error) {
	p, err := d.byLink(r)
	if err == nil {
		mine, s, err = d.cardOf(r.Context(), p)
	}
	if err == nil && len(mine.Posts) == 0 {
		err = shell.Refuse(http.StatusNotFound, "There is no seat to draw.", "Look at the card again.")
	}
	return mine, s, err
}
