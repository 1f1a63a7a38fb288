package words

import (
	"fmt"
	"slices"
	"time"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// CoversText tells how the covers of an arena stand: the phase, what is wrong, each
// cover, and how often something happened.
func CoversText(name string, b custody.Board, rates []custody.Rate, zone *time.Location) string {
	p := page{}
	p.say("%s, %s: %s", name, b.Window.Date(), string(b.Phase))
	if !b.Began.IsZero() {
		p.say(" since %s", clock(b.Began, zone))
	}
	p.say("\n\n")
	if len(b.Covers) == 0 {
		p.say("No cover has a label yet.\n")
		return p.String()
	}
	for _, a := range b.Alarms {
		p.lines(Alarm(a, zone))
	}
	if len(b.Alarms) == 0 {
		p.say("Every cover is where this phase wants it.\n")
	}
	open := map[string]time.Duration{} // by the hole's first cover, which says it
	for _, h := range b.Holes {
		first := slices.IndexFunc(b.Covers, func(c custody.Cover) bool { return c.Hole == h.ID })
		if first >= 0 {
			open[b.Covers[first].ID] = h.OpenInAll()
		}
	}
	p.say("\n%s", coverColumns(open, zone).Of("", b.Covers, unit.Metric).Text())
	if told := slices.DeleteFunc(slices.Clone(rates), func(r custody.Rate) bool { return r.Incidents == 0 && r.Open < leastTold }); len(told) > 0 {
		p.say("\nincidents, and their rate in 1000 hours open with its 95 %% interval\n\n%s", Rates().Of("", told, unit.Metric).Text())
		for _, o := range custody.Outliers(rates) {
			if o.Above() {
				p.lines(Above(o))
			}
		}
	}
	return p.String()
}

// Above says that a hole sees more incidents than its share.
func Above(o custody.Outlier) string {
	return fmt.Sprintf("Hole %s sees more than the rest: %d where %.1f were to be expected (p %.2g, adjusted for the number of holes).", o.Hole, o.Incidents, o.Expected, o.Adjusted)
}

// ExpectedText tells how many pucks to expect through each hole for as long as it was open.
func ExpectedText(all []custody.Expected) string {
	pucks := func(head string, of func(custody.Expected) puck.Passes) table.Field[custody.Expected] {
		return numbered(head, "", func(e custody.Expected) string {
			return fmt.Sprintf("%.2g to %.2g in %.0f min", of(e).Expected, of(e).ExpectedHigh, of(e).Minutes)
		})
	}
	return "\npucks to expect through the holes while they were open on the day\n\n" + table.Fields[custody.Expected]{
		left("hole", "", func(e custody.Expected) string { return e.Hole }),
		pucks("in play", func(e custody.Expected) puck.Passes { return e.Play }),
		pucks("at practice and warm-up", func(e custody.Expected) puck.Passes { return e.Practice }),
	}.Of("", all, unit.Metric).Text() + "\n" + table.Wrap(puck.Interval(), "")
}

// leastTold is the least time open of which people are told that nothing happened.
const leastTold = time.Hour

// Alarm says in one sentence what is wrong and what to do.
func Alarm(a custody.Alarm, zone *time.Location) string {
	when := "by " + clock(a.Due, zone)
	if a.Late {
		when = "now: it was due at " + clock(a.Due, zone)
	}
	switch a.Why {
	case custody.IsMissing:
		return fmt.Sprintf("Hole %s: cover %s is missing since %s. Find it or put a spare in, %s.", a.Hole, a.Cover, clock(a.Since, zone), when)
	case custody.IsDamaged:
		return fmt.Sprintf("Hole %s: cover %s is damaged since %s. Put a spare in, %s.", a.Hole, a.Cover, clock(a.Since, zone), when)
	case custody.NotCounted:
		return fmt.Sprintf("Hole %s: cover %s is neither in nor stored. Put it in or store and count it, %s.", a.Hole, a.Cover, when)
	}
	return fmt.Sprintf("Hole %s is open and nobody is seated. Put its cover in, %s.", a.Hole, when)
}

func coverColumns(open map[string]time.Duration, zone *time.Location) table.Fields[custody.Cover] {
	return table.Fields[custody.Cover]{
		left("cover", "", func(c custody.Cover) string { return c.ID }),
		left("hole", "", func(c custody.Cover) string { return c.Hole }),
		left("state", "", func(c custody.Cover) string { return string(c.State) }),
		left("since", "", func(c custody.Cover) string { return c.Since.In(zone).Format("2006-01-02 15:04") }),
		left("by", "", func(c custody.Cover) string { return c.By }),
		numbered("hole open", "", func(c custody.Cover) string {
			if of, first := open[c.ID]; first {
				return fmt.Sprintf("%.0f min", of.Minutes())
			}
			return ""
		}),
	}
}

// Rates are the columns of how often something happened, by hole and phase.
func Rates() table.Fields[custody.Rate] {
	rate := func(head string, of func(custody.PerThousand) float64) table.Field[custody.Rate] {
		return numbered(head, "", func(r custody.Rate) string {
			if p, known := r.PerOpen.Get(); known {
				return rounded(of(p))
			}
			return "-"
		})
	}
	return table.Fields[custody.Rate]{
		left("hole", "", func(r custody.Rate) string { return r.Hole }),
		left("phase", "", func(r custody.Rate) string { return string(r.Phase) }),
		numbered("incidents", "", func(r custody.Rate) string { return fmt.Sprint(r.Incidents) }),
		numbered("open", "", func(r custody.Rate) string { return fmt.Sprintf("%.1f h", r.Open.Hours()) }),
		rate("rate", func(p custody.PerThousand) float64 { return p.Rate }),
		rate("low", func(p custody.PerThousand) float64 { return p.Low }),
		rate("high", func(p custody.PerThousand) float64 { return p.High }),
	}
}

// rounded prints a rate to three digits at most, without an exponent.
func rounded(x float64) string {
	if x < 100 {
		return fmt.Sprintf("%.3g", x)
	}
	return fmt.Sprintf("%.0f", x)
}

func clock(t time.Time, zone *time.Location) string { return t.In(zone).Format("15:04") }
