package night

import (
	"html/template"
	"net/http"

	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// ledgerPage is what everybody asked for and had over the season, by the rule that it states.
type ledgerPage struct {
	nightPage
	Trouble  string // why a game cannot be seated; ""
	Accounts table.Table
	Rules    table.Table // how even it is by this and by other rules
	Chart    template.HTML
	Ceiling  string // of what the worst off could have by any rule
	Least    string // what they have
	Proofs   string
}

// Size of the season's plot, in millimetres of the drawing.
const (
	plotWide = 220
	plotHigh = 120
)

func (d area) ledgerPage(w http.ResponseWriter, r *http.Request) error {
	base, err := d.openSeason(r, "ledger")
	if err != nil {
		return err
	}
	page := ledgerPage{nightPage: base}
	answer, err := d.Shelf.SeasonSeats(r.Context(), base.games)
	switch {
	case err != nil && r.Context().Err() != nil:
		return err
	case err != nil:
		page.Trouble = shell.WhyNot(err)
	default:
		page.fill(answer)
	}
	return d.Page(w, r, http.StatusOK, "ledger.tmpl", page)
}

func (p *ledgerPage) fill(answer seat.Answer) {
	ledger := &answer.Season.Ledger
	accounts := ledger.Accounts()
	all := append([]seat.Season{answer.Season}, answer.Compare...)
	p.Accounts = p.named(words.Accounts(ledger).Of("", accounts, p.Units()))
	p.Rules = p.named(words.Spreads().Of("", all, p.Units()))
	if len(answer.Season.Nights) > 1 {
		p.Chart = template.HTML(sheet.InlineSVG(chart.Shares(all).Draw(plotWide, plotHigh)))
	}
	p.Ceiling, p.Least = percent(max(0, answer.Ceiling)), percent(answer.Season.Spread().Least)
	p.Proofs = words.Proofs(answer.Season)
}

// named writes people's names for the ids in a table's columns of people.
func (p nightPage) named(t table.Table) table.Table {
	for _, row := range t.Rows {
		for i := range row {
			if t.Columns[i].Head == "who" {
				row[i].Text = p.Who(row[i].Text)
			}
		}
	}
	return t
}
