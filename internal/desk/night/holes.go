package night

import (
	"net/http"
	"slices"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/form"
)

// reservedRow is holes that are kept for a kind of camera, with its place in the document.
type reservedRow struct {
	game.Reservation
	N     int
	Games string
}

// holeChoices are the arena's working holes, those that are given chosen.
func (p nightPage) holeChoices() (out []shell.Choice) {
	for _, h := range p.Season.Arena.Working() {
		out = append(out, shell.Choice{Value: h.ID, Name: h.ID, Chosen: slices.Contains(p.Season.Holes, h.ID)})
	}
	return out
}

// giveHoles writes down which holes are given in the season; those that are cut where none is
// named.
func giveHoles(p nightPage, r *http.Request) (edit, error) {
	holes := listOf(r, "holes")
	return edit{touches: []string{"holes"}, what: "give the holes " + strings.Join(r.PostForm["holes"], ", "), then: p.To("/requests"), make: func(doc *form.Document) (*form.Document, error) {
		return anew(doc, "", holes, "holes")
	}}, nil
}

// reserve keeps holes for a kind of camera, by a rule that is named.
func reserve(p nightPage, r *http.Request) (edit, error) {
	fields := append(listOf(r, "holes"), fieldsOf(r, "for", "rule")...)
	if one(r, "games") != "all" {
		fields = append(fields, listOf(r, "games")...)
	}
	what := "keep " + strings.Join(r.PostForm["holes"], ", ") + " for " + one(r, "for") + ": " + one(r, "rule")
	return adds("reservations", what, p.To("/requests"), append(fields, listOf(r, "periods")...)...), nil
}

// unreserve gives reserved holes to all again.
func unreserve(p nightPage, r *http.Request) (edit, error) {
	at, err := item(p, r, "reservations")
	return removes("keep holes no longer: "+p.games.Text.Value(at+".rule"), p.To("/requests"), at), err
}

// Typed is what the document says in a field of a person, a list with commas.
func (p nightPage) Typed(who game.Person, field string) string {
	at, there := itemWhere(p.games.Text, "people", "id", who.ID)
	if !there {
		return ""
	}
	var items []string
	for _, item := range p.games.Text.Items(at + "." + field) {
		items = append(items, p.games.Text.Value(item))
	}
	if len(items) > 0 {
		return strings.Join(items, ", ")
	}
	return p.games.Text.Value(at + "." + field)
}

// changePerson writes how somebody works anew: the fields of the form, and none that it
// leaves blank.
func changePerson(p nightPage, r *http.Request) (edit, error) {
	who := one(r, "who")
	at, there := itemWhere(p.games.Text, "people", "id", who)
	if !there {
		return edit{}, shell.Refuse(http.StatusConflict, "They are no longer there.", "Somebody changed the season meanwhile: look at the page again.")
	}
	fields := fieldsOf(r, "outlet", "camera", "follows", "works", "eye")
	fields = slices.Concat(fields, listOf(r, "lenses"), listOf(r, "cannot"))
	return edit{touches: []string{at}, what: "change how " + p.Who(who) + " works", then: p.To("/requests", "who", who), make: func(doc *form.Document) (*form.Document, error) {
		return anew(doc, at+".", fields, "outlet", "lenses", "works", "eye", "cannot")
	}}, nil
}
