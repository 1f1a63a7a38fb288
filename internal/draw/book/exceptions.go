package book

import (
	"cmp"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/words"
)

// opened returns the findings that are broken or unknown, the worst first.
func opened(found []rules.Finding) []rules.Finding {
	open := slices.DeleteFunc(slices.Clone(found), func(x rules.Finding) bool { return x.Status == rules.Pass })
	order := rules.WorstFirst()
	slices.SortStableFunc(open, func(a, b rules.Finding) int {
		return cmp.Compare(slices.Index(order, a.Status), slices.Index(order, b.Status))
	})
	return open
}

// open tells findings that are not kept, in bold.
func (s setter) open(f flow, found []rules.Finding, columns ...string) {
	t := words.Findings().Pick(columns...).Of("", found, s.units())
	t.Strong = slices.Repeat([]bool{true}, len(found))
	f.Table(t, sheet.SizeTable)
}

// kept names the rules that are kept, in one line.
func (s setter) kept(f flow, found []rules.Finding) {
	var kept []string
	for _, x := range found {
		if x.Status == rules.Pass && !slices.Contains(kept, x.Rule) {
			kept = append(kept, x.Rule)
		}
	}
	if len(kept) > 0 {
		f.Notes("Kept: " + strings.Join(kept, ", ") + ".")
	}
}
