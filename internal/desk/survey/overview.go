package survey

import (
	"html/template"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/starter"
	"example.org/rinkpane/internal/tell/words"
)

// overviewPage is the first page of the survey: what is there, what is missing and
// what that costs, where the numbers come from, and what was likely mistyped.
type overviewPage struct {
	shell.Frame
	Way     string
	Address shell.Address
	Name    string
	Parts   []shell.Option
	Map     template.HTML
	Facts   string
	Doubts  []doubtRow
	Missing []gapRow
	Guessed []gapRow
	Origins []starter.Origin
}

// gapRow is something missing or guessed, with the way to where it is filled in.
type gapRow struct {
	starter.Gap
	Of  string
	URL string
}

// doubtRow is something likely mistyped, with the way to where it is mended.
type doubtRow struct{ About, Says, Cure, URL string }

// partNames are the survey's pages by the parts that a report names.
var partNames = map[string]string{"low-windows": "windows"}

func (d area) overview(w http.ResponseWriter, r *http.Request) error {
	b, a, at, err := d.NewestArena(r)
	if err != nil {
		return err
	}
	parts, err := d.parts(r, b, at, "")
	if err != nil {
		return err
	}
	sys := at.Units(a.Units)
	a.Units = sys
	rep := starter.Missing(a)
	page := overviewPage{Frame: d.Frame(r, "Survey of "+b.Document.Name), Way: "survey", Address: at, Name: b.Document.Name, Parts: parts, Map: shell.Still(a), Origins: rep.Origins}
	var bare unit.Length
	for _, s := range rep.Unsurveyed {
		bare += s.Length()
	}
	page.Facts = say.Make("Boards %s round: %s behind %s, %s open before benches, %s not surveyed. %s of light.",
		rep.Perimeter, rep.Glazed, say.Count(rep.Panes, "pane"), rep.Open, bare, say.Count(len(a.Light.Readings), "reading")).In(sys)
	for _, d := range rep.Doubts {
		page.Doubts = append(page.Doubts, doubtRow{words.DoubtAbout(d), d.Says.In(sys), shell.Sentence(d.Cure.In(sys)), wayTo(at, d.Part, "", d.Of)})
	}
	rows := func(list []starter.Gap) (out []gapRow) {
		for _, g := range list {
			one := ""
			if len(g.Of) == 1 {
				one = g.Of[0]
			}
			out = append(out, gapRow{g, words.Ranges(g.Of), wayTo(at, g.Part, g.Field, one)})
		}
		return out
	}
	page.Missing, page.Guessed = rows(rep.Gaps), rows(rep.Guesses)
	return d.Page(w, r, http.StatusOK, "overview.tmpl", page)
}

// wayTo leads to the form where a number is filled in: of an item by its id or its
// number, else the list or the part.
func wayTo(at shell.Address, part, field, id string) string {
	if part == "light" && field == "mains" {
		return at.Part("mains", "")
	}
	if id == "" || part == "boards" || part == "rink" || part == "glass" {
		name := part
		if n, is := partNames[part]; is {
			name = n
		}
		return at.Part(name, "")
	}
	list := map[string]string{"light": "light.readings"}[part]
	if list == "" {
		list = part
	}
	name := strings.TrimPrefix(part, "low-")
	return at.Part(name, list+"["+id+"]")
}
