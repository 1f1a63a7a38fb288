package night

import (
	"net/http"
	"path/filepath"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/form"
)

// takeIn answers POST /arena/{slug}/games: a season as a document or begun with its first
// game, or a schedule for the season of the address.
func (d area) takeIn(w http.ResponseWriter, r *http.Request) error {
	page, err := d.open(r, "games")
	if err != nil {
		return err
	}
	text, err := shell.SentDocument(r)
	to := page.To("/games")
	if err == nil && one(r, "do") == "begin" {
		text, err = begun(page.Address.Slug, r)
	}
	if err != nil {
		return err
	}
	if name := sentName(r, text); strings.HasSuffix(name, ".yaml") {
		v, addErr := d.Shelf.AddGames(r.Context(), page.Address.Slug, text, door.Who(r.Context()), "added")
		err, to = addErr, page.Address.Beside("/games", "season", v.Document)
	} else {
		err = d.takeSchedule(r, page, name, text)
	}
	if err == nil {
		return d.Goto(w, r, to)
	}
	shown := text
	if !shell.IsText(text) {
		shown = "" // nobody reads a picture's bytes
	}
	return d.Again(r, err, text, func(p *shell.Problem) error {
		page.Problem = p
		return d.showList(w, r, p.Status, listPage{nightPage: page, Text: shown})
	})
}

// begun writes a season with its first game.
func begun(slug string, r *http.Request) (string, error) {
	lines := []string{"rinkpane: " + game.Kind, "name: " + form.Scalar(one(r, "name")), "arena: " + slug, "closing: 2 d", "move-cost: 0.02", "people: []"}
	doc, err := form.Read("games.yaml", strings.NewReader(strings.Join(lines, "\n")+"\n"), game.MaxBytes)
	if err != nil {
		return "", err
	}
	first := append([]form.Field{{Name: "id", Value: form.Text(one(r, "date"))}}, fieldsOf(r, "date", "start", "home", "away", "home-attacks")...)
	if doc, err = doc.Append("games", form.Fields(first...)); err != nil {
		return "", err
	}
	return string(doc.Text()), nil
}

// sentName is the name of what was sent: the file's, else one that its text tells.
func sentName(r *http.Request, text string) string {
	if _, head, err := r.FormFile("file"); err == nil && head.Size > 0 {
		name := filepath.Base(head.Filename)
		if ext := strings.ToLower(filepath.Ext(name)); ext == ".csv" || ext == ".ics" || ext == ".txt" {
			return name
		}
		return name + ".yaml"
	}
	switch {
	case strings.HasPrefix(strings.TrimSpace(text), "BEGIN:VCALENDAR"):
		return "schedule.ics"
	case !strings.Contains(text, "rinkpane:"):
		return "schedule.csv"
	}
	return "games.yaml"
}

// takeSchedule adds the games of a schedule to the season of a page.
func (d area) takeSchedule(r *http.Request, page nightPage, name, text string) error {
	if page.ID == "" {
		return shell.Refuse(http.StatusUnprocessableEntity, "A schedule needs a season.", "Begin a season first, then bring its schedule.")
	}
	s, err := game.ReadSchedule(name, strings.NewReader(text))
	if err != nil {
		return shell.Rows(err)
	}
	if len(s.Games) == 0 {
		return shell.Refuse(http.StatusUnprocessableEntity, "No game stands in this file.", strings.Join(s.Passed, ". "))
	}
	_, err = d.Shelf.ChangeGames(r.Context(), page.games, page.Base, shelf.GamesChange{
		Who: door.Who(r.Context()), What: "take in a schedule of " + strconv.Itoa(len(s.Games)) + " games",
		Make: func(doc *form.Document) (*form.Document, error) {
			return withSchedule(doc, s.Games, d.Now().Location())
		},
	})
	return err
}
