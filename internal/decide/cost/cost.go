// Package cost answers: what does another set of holes cost, in money, panes and
// days with the ice closed?
//
// The model, pane by pane, from what is cut today to what is wanted:
//
//	pane today    wanted                 what is paid
//	whole         a hole, cut on site    cutting, its hours, a cover
//	whole         a hole, ordered made   a pane, fitting, its hours, a cover
//	with a hole   that hole              nothing
//	with a hole   whole                  a pane, fitting, its hours
//	with a hole   another hole           as whole, then as a new hole (a pane is bought once)
//
// Plastics are cut on site; glass is ordered made, and so is a pane whose material nobody surveyed, at the dearest
// price. An hour of work costs labour, and closure while the ice is closed for it.
// The call-out is paid once, unless nothing changes.
//
// Assumptions: the ice is closed for every hour of the work; hours add up, one
// crew. Limits: no discounts, no taxes, no curved panes dearer than flat ones.
package cost

import (
	"math"

	"example.org/rinkpane/internal/survey/glass"
)

// Money is an amount in whole units of a currency, so that sums are exact; what is
// paid for a pane or a hole is rounded up to it.
type Money int

// Costs is what work on the glass costs, in units of the currency. The zero value
// costs nothing.
type Costs struct {
	Currency string   // three letters, as money is printed: "USD"
	Invented bool     // the shipped numbers, which nobody quoted
	Silent   []string // what the user's file leaves out, which therefore costs nothing

	Panes   map[glass.Material]Pane
	Cutting float64 // of one hole on site, material and tools
	Cover   float64 // of one hole, with its tether
	CallOut float64 // once
	Labour  float64 // an hour
	Closure float64 // an hour that the ice is closed

	CutHours, FitHours, DayHours float64 // to cut one hole, to fit one pane; of work in a day
}

// Pane is what a new pane of a material costs.
type Pane struct {
	Each           float64 // in units of the currency
	PerSquareMetre float64 // in units of the currency
}

// Default returns invented costs, for want of the user's own.
func Default() Costs {
	c := Costs{
		Currency: "USD", Invented: true,
		Panes:   map[glass.Material]Pane{},
		Cutting: 90, Cover: 120, CallOut: 400, Labour: 85, Closure: 150,
		CutHours: 1.5, FitHours: 2, DayHours: 8,
	}
	for _, m := range glass.Materials() {
		if about, err := m.Properties(); err == nil && about.Family == glass.Plastic {
			c.Panes[m] = Pane{150, 260}
		} else {
			c.Panes[m] = Pane{200, 450}
		}
	}
	return c
}

// Bill is what a change costs.
type Bill struct {
	Money Money
	Panes int     // to buy
	Hours float64 // hours with the ice closed
}

// Days returns for how many days' work the ice is closed, in days.
func (c Costs) Days(b Bill) float64 {
	if c.DayHours <= 0 {
		return 0
	}
	return b.Hours / c.DayHours
}

// Plus adds two bills.
func (b Bill) Plus(o Bill) Bill { return Bill{b.Money + o.Money, b.Panes + o.Panes, b.Hours + o.Hours} }

// Whole returns the bill for a new pane in the place of one.
func (c Costs) Whole(p glass.Pane) Bill {
	return Bill{whole(c.price(p) + c.work(c.FitHours)), 1, c.FitHours}
}

// Hole returns the bill for a new hole in a pane. fresh says that the pane is
// bought new in any case.
func (c Costs) Hole(p glass.Pane, fresh bool) Bill {
	m, _ := p.Material.Get()
	switch about, err := m.Properties(); {
	case err == nil && about.Family == glass.Plastic:
		return Bill{whole(c.Cutting + c.Cover + c.work(c.CutHours)), 0, c.CutHours}
	case fresh:
		return Bill{Money: whole(c.Cover)}
	}
	return c.Whole(p).Plus(Bill{Money: whole(c.Cover)})
}

// price returns what a pane costs to buy; the dearest of its size where its
// material is not surveyed.
func (c Costs) price(p glass.Pane) (most float64) {
	of := func(q Pane) float64 {
		return q.Each + q.PerSquareMetre*p.Width.Metres()*p.Height.Metres()
	}
	if m, known := p.Material.Get(); known {
		return of(c.Panes[m])
	}
	for _, q := range c.Panes {
		most = max(most, of(q))
	}
	return most
}

// work returns what hours of work cost.
func (c Costs) work(hours float64) float64 { return hours * (c.Labour + c.Closure) }

// Start returns what is paid once, as soon as anything changes.
func (c Costs) Start() Bill { return Bill{Money: whole(c.CallOut)} }

// whole rounds up to whole units, but for what is rounding itself.
func whole(x float64) Money { return Money(math.Ceil(x - 1e-6)) }
