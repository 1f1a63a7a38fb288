package cost

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/glass"
)

// Kind is the format marker of a costs file: its first line reads
// "rinkpane: costs 1".
const Kind = "costs 1"

const (
	maxBytes = 1 << 20
	// maxMoney keeps sums far inside whole numbers.
	maxMoney = 100_000_000
	maxHours = 1000
	// squareFoot is in square metres: 0.3048 squared, exact.
	squareFoot = 0.09290304
)

// Read reads the user's costs as YAML; name stands for it in messages, which give
// line, column and field. Only the currency is due; what the file leaves out costs
// nothing and is listed in Silent.
//
//	rinkpane: costs 1
//	currency: USD
//	panes:                # to buy one, by material and size
//	  acrylic: {each: 150, per-m2: 260}
//	  tempered: {each: 200, per-ft2: 35}
//	cutting: 90           # one hole on site: material and tools
//	cover: 120            # one cover with its tether
//	call-out: 400         # once
//	labour: 85            # an hour
//	closure: 150          # an hour that the ice is closed
//	hours: {cut: 1.5, fit: 2, day: 8}
func Read(name string, in io.Reader) (Costs, error) {
	doc, err := form.Read(name, in, maxBytes)
	if err != nil {
		return Costs{}, err
	}
	m := doc.Root().Map("rinkpane", "note", "currency", "panes", "cutting", "cover", "call-out", "labour", "closure", "hours")
	form.Parse(m.At("rinkpane"), marker)
	m.At("note").TextOr("")
	c := Costs{Currency: form.Parse(m.At("currency"), currency)}
	r := reader{&c}
	r.money(m, "cutting", &c.Cutting)
	r.money(m, "cover", &c.Cover)
	r.money(m, "call-out", &c.CallOut)
	r.money(m, "labour", &c.Labour)
	r.money(m, "closure", &c.Closure)
	r.panes(m.At("panes"))
	r.hours(m.At("hours"))
	return c, doc.Err()
}

func marker(s string) (string, error) {
	if s != Kind {
		return "", fmt.Errorf("%s; a costs file says rinkpane: %s", form.Quote(s), Kind)
	}
	return s, nil
}

func currency(s string) (string, error) {
	if len(s) != 3 || strings.Trim(s, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
		return "", fmt.Errorf("%s: write a currency's three letters, as USD", form.Quote(s))
	}
	return s, nil
}

// ParseMoney reads a sum that may be spent: "2500".
func ParseMoney(s string) (Money, error) {
	x, err := amount(s)
	return Money(x), err
}

// amount reads an amount of at least 0 in units of the currency: "350", "350.50".
func amount(s string) (float64, error) {
	x, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
	switch {
	case err != nil || math.IsNaN(x):
		return 0, fmt.Errorf("%s: write an amount of money, as 350 or 350.50", form.Quote(s))
	case x < 0:
		return 0, fmt.Errorf("%s: below zero; write an amount from 0", form.Quote(s))
	case x > maxMoney:
		return 0, fmt.Errorf("%s: at most %d", form.Quote(s), maxMoney)
	}
	return x, nil
}

type reader struct{ c *Costs }

func (r reader) money(m form.Map, name string, to *float64) {
	if !m.Has(name) {
		r.c.Silent = append(r.c.Silent, name)
		return
	}
	*to = form.Parse(m.At(name), amount)
}

func (r reader) panes(n form.Node) {
	r.c.Panes = map[glass.Material]Pane{}
	if !n.Present() {
		r.c.Silent = append(r.c.Silent, "panes")
		return
	}
	var names []string
	for _, m := range glass.Materials() {
		names = append(names, string(m))
	}
	all := n.Map(names...)
	for _, name := range names {
		if !all.Has(name) {
			r.c.Silent = append(r.c.Silent, "panes of "+name)
			continue
		}
		m := all.At(name).Map("each", "per-m2", "per-ft2")
		p := Pane{Each: form.Optional(m.At("each"), amount), PerSquareMetre: form.Optional(m.At("per-m2"), amount)}
		if feet := m.At("per-ft2"); feet.Present() {
			if m.Has("per-m2") {
				feet.Failf("per-m2 says it already; write one of them")
			}
			p.PerSquareMetre = form.Parse(feet, amount) / squareFoot
		}
		r.c.Panes[glass.Material(name)] = p
	}
}

func (r reader) hours(n form.Node) {
	r.c.DayHours = Default().DayHours
	if !n.Present() {
		r.c.Silent = append(r.c.Silent, "hours")
		return
	}
	m := n.Map("cut", "fit", "day")
	r.of(m, "cut", &r.c.CutHours)
	r.of(m, "fit", &r.c.FitHours)
	if m.Has("day") {
		r.c.DayHours = m.At("day").Float(0.25, 24)
	}
}

func (r reader) of(m form.Map, name string, to *float64) {
	if !m.Has(name) {
		r.c.Silent = append(r.c.Silent, "hours to "+name)
		return
	}
	*to = m.At(name).Float(0, maxHours)
}
