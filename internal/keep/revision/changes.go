package revision

import (
	"strings"

	"github.com/pmezard/go-difflib/difflib"
)

// Diff returns what changed between two texts in the unified form that
// programmers read, with two lines around each change; empty when nothing did.
func Diff(from, to, fromName, toName string) (string, error) {
	return difflib.GetUnifiedDiffString(difflib.UnifiedDiff{
		A: difflib.SplitLines(from), B: difflib.SplitLines(to),
		FromFile: fromName, ToFile: toName, Context: 2,
	})
}

// ChangedLines returns the lines that one text lacks and the other has, for a
// sentence to people: what went, what came.
func ChangedLines(from, to string) (gone, come []string) {
	a, b := difflib.SplitLines(from), difflib.SplitLines(to)
	for _, op := range difflib.NewMatcherWithJunk(a, b, false, nil).GetOpCodes() {
		if op.Tag == 'e' {
			continue
		}
		gone = append(gone, trimmed(a[op.I1:op.I2])...)
		come = append(come, trimmed(b[op.J1:op.J2])...)
	}
	return gone, come
}

func trimmed(lines []string) []string {
	var out []string
	for _, l := range lines {
		if l = strings.TrimSpace(l); l != "" {
			out = append(out, l)
		}
	}
	return out
}
