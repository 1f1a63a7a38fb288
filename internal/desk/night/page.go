package night

import (
	"context"
	"net/http"
	"slices"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/unit"
)

// nightPage is what the pages of a season have in common.
type nightPage struct {
	shell.Frame
	Way     string // which of the arena's pages this is
	Tab     string // which of these
	Address shell.Address
	Name    string // of the arena
	Seasons []revision.Document
	Season  game.Season // zero where the arena has none
	ID      string      // of the season, "" for none
	Base    int         // its version
	Unfit   string      // why it no longer fits its arena; ""
	Fits    int         // the version of the arena that it fits
	Problem *shell.Problem
	games   shelf.Games
	now     time.Time
}

// tabs are the pages of a season: what stands in the address, and the name.
var tabs = []struct{ Path, Name string }{{"games", "Games"}, {"requests", "People and requests"}, {"ledger", "Ledger"}, {"visit", "Before the journey"}, {"games/text", "Document"}}

// Tabs are the ways to the pages of a season.
func (p nightPage) Tabs() []shell.Option {
	var out []shell.Option
	for _, t := range tabs {
		if p.ID != "" || t.Path == "games" || t.Path == "visit" { // what needs no season
			out = append(out, shell.Option{Name: t.Name, URL: p.To("/" + t.Path), Chosen: t.Path == p.Tab})
		}
	}
	return out
}

// To returns a page of the season, with some fields of its own.
func (p nightPage) To(below string, fields ...string) string {
	if p.ID != "" {
		fields = append([]string{"season", p.ID}, fields...)
	}
	return p.Address.Beside(below, fields...)
}

// ToGame returns the page of a game.
func (p nightPage) ToGame(id string) string { return p.To("/game", "game", id) }

// Action is where forms that change the season go to.
func (p nightPage) Action() string { return p.To("/games/change") }

// Units returns the units to print in.
func (p nightPage) Units() unit.System { return p.Address.Units(p.Season.Arena.Units) }

// Who returns somebody's name, the id where nobody of that id is known.
func (p nightPage) Who(id string) string {
	if one, ok := p.Season.Person(id); ok {
		return one.Name
	}
	return id
}

// Follow says whom somebody follows.
func (p nightPage) Follow(f game.Follow) string {
	return map[game.Follow]string{
		"": "as usual", game.Home: "home", game.Away: "the guests", game.Both: "both teams",
		game.HomeGoalkeeper: "home's goalkeeper", game.AwayGoalkeeper: "the guests' goalkeeper", game.EndA: "end A", game.EndB: "end B",
	}[f]
}

// Works says how somebody works.
func (p nightPage) Works(of game.Person) string {
	out := string(of.Camera)
	if of.Works.Posture != "" {
		out += ", " + string(of.Works.Posture)
	}
	if eye, known := of.Works.Eye.Get(); known {
		out += ", eye at " + eye.Format(p.Units())
	}
	if of.Works.LeftEye {
		out += ", left eye"
	}
	return out
}

// open opens the season of a request: the one that its address names, else the arena's first.
func (d area) open(r *http.Request, tab string) (nightPage, error) {
	at, err := shell.ReadAddress(r.PathValue("slug"), r.URL.Query())
	if err != nil {
		return nightPage{}, err
	}
	b, err := d.Book(r, at.Slug, 0)
	if err != nil {
		return nightPage{}, err
	}
	page := nightPage{Frame: d.Frame(r, b.Document.Name+": games"), Way: "games", Tab: tab, Address: at.Shared(), Name: b.Document.Name, now: d.Now()}
	if page.Seasons, err = d.Shelf.GamesOf(r.Context(), at.Slug); err != nil {
		return page, err
	}
	id := r.FormValue("season")
	if id == "" && len(page.Seasons) > 0 {
		id = page.Seasons[0].ID
	}
	if id == "" {
		return page, nil
	}
	if !slices.ContainsFunc(page.Seasons, func(s revision.Document) bool { return s.ID == id }) {
		return page, errNoSeason
	}
	return page, d.fill(r.Context(), &page, id)
}

var errNoSeason = shell.Refuse(http.StatusNotFound, "This arena has no such season.", "Look at the list of its games.")

// fill opens a season for a page.
func (d area) fill(ctx context.Context, page *nightPage, id string) (err error) {
	page.ID = id
	page.games, err = d.Shelf.OpenGames(ctx, id)
	page.Season, page.Base, page.Fits = page.games.Season, page.games.Version.Number, page.games.Arena.Version.Number
	if page.games.Unfit != nil {
		page.Unfit = shell.WhyNot(page.games.Unfit)
	}
	return err
}

// openSeason opens the season of a request that needs one.
func (d area) openSeason(r *http.Request, tab string) (nightPage, error) {
	page, err := d.open(r, tab)
	if err == nil && page.ID == "" {
		err = errNoSeason
	}
	return page, err
}

// gameOf returns the game that a request is about.
func (p nightPage) gameOf(r *http.Request) (game.Game, error) {
	g, ok := p.Season.Game(r.FormValue("game"))
	if !ok {
		return g, shell.Refuse(http.StatusNotFound, "This season has no such game.", "Look at the list of games.")
	}
	return g, nil
}

// Day and clock of the rink, as games have them.
const (
	dayWords  = "Mon 2 Jan 2006"
	timeWords = "15:04"
)

// Day tells a game's day.
func (nightPage) Day(t time.Time) string { return t.Format(dayWords) }

// Clock tells a time of day.
func (nightPage) Clock(t time.Time) string { return t.Format(timeWords) }

// Toward says toward which end a team plays, by period: "A B A".
func Toward(g game.Game, team int) string {
	ends := make([]string, g.Periods)
	for k := range ends {
		ends[k] = "A"
		if g.Ends.Attacks(team, k+1) > 0 {
			ends[k] = "B"
		}
	}
	return strings.Join(ends, " ")
}
