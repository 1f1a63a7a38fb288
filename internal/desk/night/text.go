package night

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
)

// textPage is the season's document as text, with its versions.
type textPage struct {
	nightPage
	Text, What string
	Versions   []revision.Version // the newest first
}

// mostVersions is how many versions the page lists.
const mostVersions = 50

func (d area) textPage(w http.ResponseWriter, r *http.Request) error {
	base, err := d.openSeason(r, "games/text")
	if err != nil {
		return err
	}
	return d.showText(w, r, http.StatusOK, textPage{nightPage: base, Text: base.games.Version.Text})
}

func (d area) showText(w http.ResponseWriter, r *http.Request, status int, page textPage) (err error) {
	if page.Versions, err = d.Shelf.Keeper().History(r.Context(), page.ID, mostVersions); err != nil {
		return err
	}
	return d.Page(w, r, status, "night-text.tmpl", page)
}

// saveText answers POST /arena/{slug}/games/text: the whole document anew. Where somebody
// was quicker, both are joined in the form, to be looked at and saved again.
func (d area) saveText(w http.ResponseWriter, r *http.Request) error {
	base, err := d.openSeason(r, "games/text")
	if err != nil {
		return err
	}
	text, err := shell.SentDocument(r)
	made, err2 := strconv.Atoi(r.PostFormValue("base"))
	if errors.Join(err, err2) != nil || made < 1 {
		return shell.ErrIncomplete
	}
	page := textPage{nightPage: base, Text: text, What: one(r, "what")}
	page.Base = made
	next := revision.Draft{Who: door.Who(r.Context()), What: page.What, Text: text}
	if next.What == "" {
		next.What = "edit the text"
	}
	_, err = d.Shelf.SaveGames(r.Context(), base.games, made, next)
	var late *shelf.Late
	if errors.As(err, &late) {
		page.Text, _, _ = late.Merged()
		page.Base = late.Head.Number
		page.Problem = &shell.Problem{Text: fmt.Sprintf("%s has saved version %d meanwhile (%s). Both are joined below, yours where both changed the same lines: look at it, and save it again.",
			door.Named(late.Head.Who), late.Head.Number, late.Head.What)}
		return d.showText(w, r, http.StatusConflict, page)
	}
	if err != nil {
		return d.Again(r, err, text, func(p *shell.Problem) error {
			page.Problem = p
			return d.showText(w, r, p.Status, page)
		})
	}
	return d.Goto(w, r, base.To("/games/text"))
}
