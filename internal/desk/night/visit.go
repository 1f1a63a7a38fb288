package night

import (
	"net/http"
	"slices"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// visitPage answers a photographer before the journey: which lenses to pack for the hole
// that they have, or which hole to ask for with the lenses that they have.
type visitPage struct {
	nightPage
	Holes   []shell.Choice
	Lenses  []shell.Choice
	Follows []shell.Choice
	Answer  table.Table
	Head    string // over the answer; "" while nothing was asked
	Trouble string
}

func (d area) visitPage(w http.ResponseWriter, r *http.Request) error {
	base, err := d.open(r, "visit")
	if err != nil {
		return err
	}
	book, err := d.Book(r, base.Address.Slug, 0)
	if err != nil {
		return err
	}
	a, err := book.Arena.Check()
	if err != nil {
		return err
	}
	base.Season.Arena = a // the newest, with a season or without
	page := visitPage{nightPage: base}
	follows := game.Away // who comes from elsewhere usually follows the guests
	if told := r.FormValue("follows"); told != "" {
		if follows, err = form.Words(game.Follows()...)(told); err != nil {
			return shell.Refuse(http.StatusBadRequest, "Follows: "+err.Error()+".", "Pick one from the list.")
		}
	}
	for _, f := range game.Follows() {
		page.Follows = append(page.Follows, shell.Choice{Value: string(f), Name: base.Follow(f), Chosen: f == follows})
	}
	for _, h := range a.Working() {
		page.Holes = append(page.Holes, shell.Choice{Value: h.ID, Name: h.ID, Chosen: h.ID == r.FormValue("hole")})
	}
	lenses := r.Form["lens"]
	for _, id := range book.Maker.Kit.LensIDs() {
		page.Lenses = append(page.Lenses, shell.Choice{Value: id, Name: id, Chosen: slices.Contains(lenses, id)})
	}
	v := game.Visitor{Follows: follows, Ends: a.Game.Ends}
	switch hole := r.FormValue("hole"); {
	case hole != "":
		err = page.pack(r, book.Maker.Kit, a, hole, v)
	case len(lenses) > 0:
		err = page.askFor(r, book.Maker.Kit, a, lenses, v)
	}
	if err != nil && r.Context().Err() == nil {
		page.Trouble, err = shell.WhyNot(err), nil
	}
	if err != nil {
		return err
	}
	return d.Page(w, r, http.StatusOK, "visit.tmpl", page)
}

// pack answers which lenses to pack for a hole.
func (p *visitPage) pack(r *http.Request, k kit.Kit, a arena.Arena, hole string, v game.Visitor) error {
	bags, err := game.Pack(r.Context(), a, k, hole, v)
	if err != nil {
		return err
	}
	p.Head = "What to pack for " + hole
	p.Answer = words.Bags(bags[len(bags)-1]).Of("", bags, p.Units())
	return nil
}

// askFor answers which hole to ask for.
func (p *visitPage) askFor(r *http.Request, k kit.Kit, a arena.Arena, lenses []string, v game.Visitor) error {
	stands, err := game.AskFor(r.Context(), a, k, lenses, v)
	if err != nil {
		return err
	}
	p.Head = "What to ask for with " + say.Names(lenses) + ", the best first"
	p.Answer = words.Stands(a).Of("", stands, p.Units())
	return nil
}
