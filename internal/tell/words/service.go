package words

import (
	"fmt"
	"strings"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// Service says how often a hole in service is to be inspected, and who asks it.
func Service(s rules.Service) string {
	text := fmt.Sprintf("is due for inspection within %.0f days of the last one", s.Days())
	var after []string
	for _, c := range s.After {
		pane, _, _ := strings.Cut(string(c), "-")
		after = append(after, pane)
	}
	if len(after) > 0 {
		text += ", and at once after a " + strings.Join(after, " or ") + " pane"
	}
	if len(s.Rules) == 0 {
		return "No rule set in force says when to inspect: a hole " + text + ", by our own choice. The rink operator's own rule governs."
	}
	return "By " + strings.Join(s.Rules, " and ") + " a hole " + text + "."
}

// Services says it of each hole, what is alike once.
func Services(all []custody.Due) (out []string) {
	of := map[string][]string{}
	for _, d := range all {
		says := Service(d.Service)
		if of[says] == nil {
			out = append(out, says)
		}
		of[says] = append(of[says], d.Hole)
	}
	for i, says := range out {
		if len(out) > 1 {
			out[i] = strings.Join(of[says], ", ") + ": " + says
		}
	}
	return out
}

// DueText tells when each hole must be inspected next.
func DueText(all []custody.Due, now time.Time) string {
	on := func(t time.Time) string {
		if t.IsZero() {
			return "-"
		}
		return t.In(now.Location()).Format(time.DateOnly)
	}
	p := page{}
	p.say("\ninspections\n\n%s", table.Fields[custody.Due]{
		left("hole", "", func(d custody.Due) string { return d.Hole }),
		left("last inspected", "", func(d custody.Due) string { return on(d.Last) }),
		left("due", "", func(d custody.Due) string {
			if d.Over(now) {
				return "now"
			}
			return on(d.By)
		}),
		left("because", "", func(d custody.Due) string { return d.Why }),
	}.Of("", all, unit.Metric).Text())
	p.lines(Services(all)...)
	return p.String()
}
