package desk

import (
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// axe returns the source of axe-core, which scripts/axe fetches once.
func axe(t *testing.T) string {
	t.Helper()
	out, err := exec.Command("../../scripts/axe").CombinedOutput()
	if err != nil {
		t.Fatalf("scripts/axe: %v: %s", err, out)
	}
	source, err := os.ReadFile(strings.TrimSpace(string(out)))
	if err != nil {
		t.Fatal(err)
	}
	return string(source)
}

// axeRules runs the rules of WCAG 2.2 at levels A and AA, and good practice.
const axeRules = `axe.run(document, { resultTypes: ["violations"], runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] })
	.then((r) => [String(r.passes.length), ...r.violations.map((v) => v.id + ": " + v.help + ": " +
		v.nodes.slice(0, 4).map((n) => n.target.join(" ") + " (" + n.failureSummary.split("\n").slice(1).join(" ").slice(0, 160) + ")").join(" | "))])`

// fewestPasses is how many rules must have something to judge, so that a page that
// did not come is not called good.
const fewestPasses = 15

// bringTools lets the test's own tool into pages whose policy forbids what they did not bring.
func (v *visitor) bringTools() {
	v.t.Helper()
	if _, err := chromedp.Call(v.ctx, page.SetBypassCSP, page.SetBypassCSPParams{Enabled: true}); err != nil {
		v.t.Fatal(err)
	}
}

// checkRules runs axe-core on the page that is open.
func (v *visitor) checkRules(path, source string) {
	v.t.Helper()
	eval[bool](v, source+"; true")
	found := awaited(v, axeRules)
	if n, err := strconv.Atoi(found[0]); err != nil || n < fewestPasses {
		v.t.Errorf("%s: only %s rules had something to judge, expected %d or more", path, found[0], fewestPasses)
	}
	for _, complaint := range found[1:] {
		v.t.Errorf("%s: %s", path, complaint)
	}
}

// awaited returns what a promise in the page gives.
func awaited(v *visitor, expression string) []string {
	v.t.Helper()
	out, err := chromedp.Run(v.ctx, chromedp.Evaluate[[]string](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		v.t.Fatalf("%.80s: %v", expression, err)
	}
	return out
}
