package versions

import (
	"context"
	"fmt"
	"strconv"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// numbers are what two plans are compared by first: how much of the news their holes
// see, how many rules they break, how many holes that takes.
func numbers(ctx context.Context, plans [2]plan.Plan, kits [2]kit.Kit) ([]numberRow, error) {
	var score, broken, holes [2]string
	var seen [2]float64
	both := true
	for i, p := range plans {
		var openings []arena.Opening
		cut := 0
		for _, h := range p.Holes {
			openings = append(openings, h.Opening)
			if h.State == glass.Cut {
				cut++
			}
		}
		var known bool
		var err error
		if seen[i], known, err = sight.Together(ctx, p.Arena, kits[i], openings); err != nil {
			return nil, err
		}
		if score[i] = "not known"; known {
			score[i] = fmt.Sprintf("%.1f %%", 100*seen[i])
		}
		both = both && known
		holes[i] = fmt.Sprintf("%d, %d of them cut", len(p.Holes), cut)
		fails := 0
		for _, rule := range plan.ByRule(p.Findings) {
			if rule.Status == rules.Fail {
				fails++
			}
		}
		broken[i] = strconv.Itoa(fails)
	}
	note := ""
	if both {
		note = fmt.Sprintf("%+.1f points", 100*(seen[1]-seen[0]))
	}
	return []numberRow{
		{"News in view", score[0], score[1], note},
		{"Rules broken", broken[0], broken[1], ""},
		{"Holes at work", holes[0], holes[1], ""},
	}, nil
}
