package cost_test

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

const file = `rinkpane: costs 1
currency: EUR
panes: {acrylic: {each: 100, per-m2: 200}, tempered: {each: 50, per-ft2: 30.50}}
cutting: 200
cover: 150
call-out: 100
labour: 75
closure: 25
hours: {cut: 2, fit: 3, day: 6}
`

func pane(m glass.Material) glass.Pane {
	p := glass.Pane{Width: 1.5 * unit.Metre, Height: 2 * unit.Metre}
	if m != "" {
		p.Material = unit.Known(m)
	}
	return p
}

// What a change costs, by hand: acrylic is cut on site, tempered ordered made, and
// a pane that nobody surveyed is ordered made at the dearest price.
func TestBills(t *testing.T) {
	c, err := cost.Read("costs.yaml", strings.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	feet := 3 / (0.3048 * 0.3048)
	tempered := cost.Money(math.Ceil(50 + 30.5*feet + 3*100))
	for name, b := range map[string][2]cost.Bill{
		"a hole in acrylic":          {c.Hole(pane(glass.Acrylic), false), {Money: 200 + 150 + 2*100, Hours: 2}},
		"a new pane of acrylic":      {c.Whole(pane(glass.Acrylic)), {Money: 100 + 600 + 3*100, Panes: 1, Hours: 3}},
		"a hole in tempered":         {c.Hole(pane(glass.Tempered), false), {Money: tempered + 150, Panes: 1, Hours: 3}},
		"tempered, bought anyway":    {c.Hole(pane(glass.Tempered), true), {Money: 150}},
		"a pane nobody surveyed":     {c.Whole(pane("")), {Money: tempered, Panes: 1, Hours: 3}},
		"what is paid once":          {c.Start(), {Money: 100}},
		"polycarbonate has no price": {c.Whole(pane(glass.Polycarbonate)), {Money: 300, Panes: 1, Hours: 3}},
	} {
		if b[0] != b[1] {
			t.Errorf("%s: %+v, by hand %+v", name, b[0], b[1])
		}
	}
	if days := c.Days(cost.Bill{Hours: 9}); days != 1.5 {
		t.Errorf("9 hours of 6 a day are %g days", days)
	}
	if got := strings.Join(c.Silent, ", "); got != "panes of polycarbonate, panes of laminated" && got != "panes of laminated, panes of polycarbonate" {
		t.Errorf("left out: %s", got)
	}
	if !cost.Default().Invented || c.Invented {
		t.Error("only the shipped costs are invented")
	}
}

func TestReadRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"currency: EUR\n":                                                               "costs.yaml:1:1",
		"rinkpane: costs 2\ncurrency: EUR\n":                                            `"costs 2"; a costs file says rinkpane: costs 1`,
		"rinkpane: costs 1\ncover: 1\n":                                                 "currency",
		"rinkpane: costs 1\ncurrency: euro\n":                                           `"euro": write a currency's three letters`,
		"rinkpane: costs 1\ncurrency: EUR\nlabour: -1\n":                                `costs.yaml:3:9: labour: "-1": below zero`,
		"rinkpane: costs 1\ncurrency: EUR\nlabour: NaN\n":                               "write an amount of money",
		"rinkpane: costs 1\ncurrency: EUR\nlabor: 1\n":                                  `unknown field "labor"`,
		"rinkpane: costs 1\ncurrency: EUR\nhours: {cut: -2}\n":                          "-2",
		"rinkpane: costs 1\ncurrency: EUR\npanes: {oak: {each: 1}}":                     `"oak"`,
		"rinkpane: costs 1\ncurrency: EUR\npanes: {acrylic: {per-m2: 1, per-ft2: 1}}\n": "write one of them",
	} {
		if _, err := cost.Read("costs.yaml", strings.NewReader(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
}
