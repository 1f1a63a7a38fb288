package rules

import (
	"slices"
	"time"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/glass"
)

// Cause is what makes the next inspection of a hole due at once.
type Cause string

// What may have happened to the pane of a hole since its last inspection.
const (
	BrokenPane  Cause = "broken-pane"
	ChangedPane Cause = "changed-pane"
)

// Service is for how long an inspection of a hole in service holds.
type Service struct {
	Every time.Duration // from one inspection to the next, above 0
	After []Cause       // what makes it due at once
	Rules []string      // that ask it, as "set/rule"; empty where none does: [UsualService]
}

// Days is Every as a count of days.
func (s Service) Days() float64 { return s.Every.Hours() / day.Hours() }

// UsualService is what holds where no rule in force says better: own choice, a season
// with its summer; the rink operator's own rule governs.
func UsualService() Service {
	return Service{Every: 365 * day, After: []Cause{BrokenPane, ChangedPane}}
}

const (
	day        = 24 * time.Hour
	mostDays   = 3653 // ten years; more is no inspection
	mostCauses = 2
)

var inspectionKind = kind{
	name: "inspection", fields: []string{"days", "after"},
	asks: "a hole in service is inspected again within so many days, and at once after `broken-pane` or `changed-pane`; of several rules the shortest holds",
	read: func(m form.Map) demand {
		d := inspectionDue{Every: time.Duration(m.At("days").Int(1, mostDays)) * day, After: UsualService().After}
		if m.Has("after") {
			d.After = nil
			for _, n := range m.At("after").List(mostCauses) {
				d.After = append(d.After, Cause(n.Choice(string(BrokenPane), string(ChangedPane))))
			}
		}
		return d
	},
}

// inspectionDue judges nothing in a document: when a hole was inspected is not written there.
type inspectionDue Service

func (inspectionDue) unjudged() {}

// Service returns what the rules ask of a hole in service: the shortest time, and at once
// after whatever one of them names. A rule from which the hole is dispensed asks nothing;
// one whose pane may be of its materials does.
func (on *Applied) Service(h glass.Hole) Service {
	o := open(on.arena, h)
	var out Service
	for i := range on.checks {
		c := &on.checks[i]
		d, ok := c.demand.(inspectionDue)
		if !ok || c.applies(o) == no {
			continue
		}
		if _, freed := c.dispensed(o); freed {
			continue
		}
		if out.Every == 0 || d.Every < out.Every {
			out.Every = d.Every
		}
		out.After = append(out.After, d.After...)
		out.Rules = append(out.Rules, c.set.ID+"/"+c.rule.ID)
	}
	if out.Every == 0 {
		return UsualService()
	}
	slices.Sort(out.After)
	out.After = slices.Compact(out.After)
	return out
}
