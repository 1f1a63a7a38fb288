package results

import (
	"html/template"
	"net/http"
	"slices"
	"strconv"
	"time"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/lookback"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// framesPage is what the frames of one game said.
type framesPage struct {
	shell.Frame
	Way     string
	Address shell.Address
	Name    string // of the arena
	Game    game.Game
	Season  game.Season
	ID      string // of the season
	Base    int    // its version
	Stars   int    // from which a frame is a keeper
	Noted   int    // the version of the arena that the light was just noted in; 0
	Frames  shelf.Frames
	Recap   shelf.Recap
	Problem *shell.Problem // of a file that was sent

	Head    string
	Doubts  table.Table // frames that are matched to no hole, or near a border
	Sure    table.Table // the others
	Bodies  []bodyRow
	Plots   []plot
	Tables  []table.Table
	Notes   []string
	Best    table.Table
	Differs string // from the best set by what was assumed; "" while nobody asked
	games   shelf.Games
}

// plot is a drawing with its name.
type plot struct {
	Name string
	SVG  template.HTML
}

// bodyRow is a camera of the game, and whose it may be said to be.
type bodyRow struct {
	Name, Model, Clock string
	Frames             int
	Whose              []shell.Choice
}

// To returns a page or a file of the game's frames, with some fields of its own.
func (p framesPage) To(below string, fields ...string) string {
	fields = append([]string{"season", p.ID, "game", p.Game.ID}, fields...)
	if p.Stars > 1 {
		fields = append(fields, "stars", strconv.Itoa(p.Stars))
	}
	return p.Address.Beside("/frames"+below, fields...)
}

// ToGame returns the game's page.
func (p framesPage) ToGame() string {
	return p.Address.Beside("/game", "season", p.ID, "game", p.Game.ID)
}

// Units returns the units to print in.
func (p framesPage) Units() unit.System { return p.Address.Units(p.Season.Arena.Units) }

// Day tells the game's day.
func (p framesPage) Day() string { return p.Game.Start.Format("Mon 2 Jan 2006, 15:04") }

// Clocks are the frames that show the scoreboard, of this game.
func (p framesPage) Clocks() (out []game.Clocked) {
	for _, c := range p.Season.Clocks {
		if c.Game == p.Game.ID {
			out = append(out, c)
		}
	}
	return out
}

// report is what is drawn of the answer.
func (p framesPage) report() lookback.Report {
	return lookback.Report{Answer: p.Recap.Answer, Units: p.Units()}
}

// plotWidth is that of a plot, in millimetres of the drawing: a page scales it.
const plotWidth = 178.0

// open opens the game of a request with what is kept of its frames.
func (d area) open(r *http.Request) (p framesPage, err error) {
	b, at, err := d.Newest(r)
	if err != nil {
		return p, err
	}
	p = framesPage{Way: "games", Address: at.Shared(), Name: b.Document.Name, ID: r.FormValue("season"), Stars: 1}
	if p.games, err = d.Shelf.OpenGames(r.Context(), p.ID); err != nil {
		return p, shell.Because(http.StatusNotFound, "This arena has no such season.", err)
	}
	p.Season, p.Base = p.games.Season, p.games.Version.Number
	there := false
	if p.Game, there = p.Season.Game(r.FormValue("game")); !there || p.games.Arena.Document.ID != at.Slug {
		return p, shell.Refuse(http.StatusNotFound, "This arena has no such game.", "Look at the list of its games.")
	}
	if stars := r.FormValue("stars"); stars != "" {
		if p.Stars, err = strconv.Atoi(stars); err != nil || p.Stars < 1 || p.Stars > 5 {
			return p, shell.Refuse(http.StatusBadRequest, "A keeper has 1 to 5 stars.", "Pick a number from the list.")
		}
	}
	p.Noted, _ = strconv.Atoi(r.FormValue("noted"))
	p.Frame = d.Frame(r, "Frames of "+p.Game.Teams())
	p.Frames, err = d.Shelf.Frames(r.Context(), p.games, p.Game.ID)
	return p, err
}

// asked is open with the answer.
func (d area) asked(r *http.Request) (framesPage, error) {
	p, err := d.open(r)
	if err != nil || p.Frames.Version.Number == 0 {
		return p, err
	}
	kept, err := d.Records.Of(r.Context(), p.Address.Slug)
	if err != nil {
		return p, err
	}
	o := recap.Options{KeptFrom: p.Stars}
	if len(kept.History) > 0 {
		o.Open = recap.EveningOf(p.Season, p.Game).Open(kept.History, d.Now().Location())
	}
	p.Recap, err = d.Shelf.Recap(r.Context(), p.games, p.Game, p.Frames, o)
	return p, err
}

// askedFor is asked of a game that has frames: for files.
func (d area) askedFor(r *http.Request) (framesPage, error) {
	p, err := d.asked(r)
	if err == nil && p.Frames.Version.Number == 0 {
		err = shell.Refuse(http.StatusNotFound, "Nothing is kept of this game's frames.", "Bring their readings on the page of its frames.")
	}
	return p, err
}

// page answers GET /arena/{slug}/frames?season=&game=.
func (d area) page(w http.ResponseWriter, r *http.Request) error {
	p, err := d.asked(r)
	if err != nil {
		return err
	}
	return d.show(w, r, http.StatusOK, p)
}

func (d area) show(w http.ResponseWriter, r *http.Request, status int, p framesPage) error {
	if p.Frames.Version.Number > 0 {
		p.tell()
		if r.FormValue("best") == "on" && p.Recap.Learnt.Bursts > 0 {
			best, err := d.Shelf.BestBy(r.Context(), p.games, p.Recap.Learnt)
			if err != nil {
				return err
			}
			p.Differs, p.Best = words.RecapBest(best, p.Units())
		}
	}
	return d.Page(w, r, status, "frames.tmpl", p)
}

// tell fills in what is told of the answer.
func (p *framesPage) tell() {
	a := p.Recap.Answer
	p.Head, p.Notes = words.RecapHead(a), words.RecapNotes(a)
	doubtful, sure := recap.Reasons(a.Frames)
	p.Doubts, p.Sure = words.Reasons.Of("", doubtful, p.Units()), words.Reasons.Of("", sure, p.Units())
	for _, b := range recap.Bodies(a) {
		p.Bodies = append(p.Bodies, bodyRow{b.Name, b.Model, words.ClockOf(b.Clock), b.Frames, p.whose(b.Name)})
	}
	for _, d := range p.report().Plots(plotWidth) {
		p.Plots = append(p.Plots, plot{d.Title, shell.Inline(d, p.Address)})
	}
	p.Tables = slices.DeleteFunc(words.RecapTables(a, p.Units()), func(t table.Table) bool { return len(t.Rows) == 0 })
	for i, t := range p.Tables {
		p.Tables[i] = t.Shown()
	}
}

// whose lists whose a body may be, and the holes that it may stay in.
func (p *framesPage) whose(body string) []shell.Choice {
	now := game.Body{}
	for _, b := range p.Season.Bodies {
		if b.Body == body {
			now = b
		}
	}
	out := []shell.Choice{{Name: "not said", Chosen: now.Body == ""}}
	for _, one := range p.Season.People {
		out = append(out, shell.Choice{Value: "who:" + one.ID, Name: one.Name, Chosen: now.Who == one.ID && now.Hole == ""})
	}
	for _, hole := range p.Season.Holes {
		out = append(out, shell.Choice{Value: "hole:" + hole, Name: "stays in " + hole, Chosen: now.Hole == hole})
	}
	return out
}

// Kept says when what is shown was kept; zero for nothing.
func (p framesPage) Kept() time.Time { return p.Frames.Version.At }

// StarsFrom are how many stars a keeper may have at least.
func (framesPage) StarsFrom() []int { return []int{1, 2, 3, 4, 5} }

// Unread says what was not read, and why.
func (p framesPage) Unread() (out []string) {
	for _, u := range p.Recap.Unread {
		out = append(out, say.Count(u.Files, "file")+" ("+words.UnreadCause(u.Cause)+"), the first "+u.First)
	}
	return out
}
