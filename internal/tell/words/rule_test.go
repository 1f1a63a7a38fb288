package words_test

import (
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/tell/words"
)

// TestEveryRuleHasATitle: no kind of rule is shown by its name in the file.
func TestEveryRuleHasATitle(t *testing.T) {
	seen := map[string]bool{}
	for _, kind := range rules.Kinds() {
		title := words.RuleTitle(kind)
		if len(title) < 15 || seen[title] {
			t.Errorf("%s is told as %q", kind, title)
		}
		seen[title] = true
	}
	if len(seen) < 20 {
		t.Errorf("only %d kinds", len(seen))
	}
}
