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

// axeRules are the rules of WCAG 2.2 at levels A and AA, and good practice.
const axeRules = `["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]`

// viewRules are those of them that hang on a page's width and colours, and not only on
// what stands in it.
const viewRules = `{ type: "rule", values: ["color-contrast", "link-in-text-block", "target-size", "scrollable-region-focusable", "css-orientation-lock", "meta-viewport"] }`

// running runs rules, and gives the number of those kept and what breaks the others.
func running(rules string) string {
	return `axe.run(document, { resultTypes: ["violations"], runOnly: ` + rules + ` })
	.then((r) => [String(r.passes.length), ...r.violations.map((v) => v.id + ": " + v.help + ": " +
		v.nodes.slice(0, 4).map((n) => n.target.join(" ") + " (" + n.failureSummary.split("\n").slice(1).join(" ").slice(0, 160) + ")").join(" | "))])`
}

// alike marks leaves that look like several before them: the contrast of a text hangs
// on its own style and on those of what it stands in, so of a table's thousand cells
// a few are judged. Each judged one costs axe-core a millisecond or more.
const alike = `(() => {
	const enough = 3;
	const look = new Map(), ids = new Map(), met = new Map();
	for (const e of document.querySelectorAll("*")) {
		const s = getComputedStyle(e);
		const words = e.childElementCount > 0 ? "" : e.textContent.trim().length > 1; // a single sign is not judged
		const own = [look.get(e.parentElement), e.localName, words, e.checkVisibility(), s.color, s.backgroundColor, s.backgroundImage, s.opacity, s.filter,
			s.mixBlendMode, s.textShadow, s.fontSize, s.fontWeight, s.position, s.visibility, s.clipPath, s.overflow].join("|");
		if (!ids.has(own)) ids.set(own, ids.size);
		look.set(e, ids.get(own));
		met.set(own, (met.get(own) ?? 0) + 1);
		e.toggleAttribute("data-alike", e.childElementCount === 0 && met.get(own) > enough);
	}
	axe.configure({ rules: [
		{ id: "color-contrast", selector: "*:not([data-alike])" },
		{ id: "target-size", selector: "*:not([data-pin])" }, // a mark stands where it was seen: essential, so excepted by WCAG 2.2 (2.5.8)
	] });
	return document.querySelectorAll("[data-alike]").length;
})()`

// fewestPasses and fewestOfView are how many rules must have something to judge, so that a page that
// did not come is not called good.
const (
	fewestPasses = 15
	fewestOfView = 3
)

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
	for _, complaint := range v.complaints(path, source) {
		v.t.Errorf("%s: %s", path, complaint)
	}
}

// complaints returns what axe-core finds amiss on the page that is open.
func (v *visitor) complaints(path, source string) []string {
	v.t.Helper()
	eval[bool](v, source+"; true")
	return v.broken(path, axeRules, fewestPasses)
}

// checkView runs, on a page where checkRules ran, the rules that its new width and theme
// may break.
func (v *visitor) checkView(path string) {
	v.t.Helper()
	for _, complaint := range v.broken(path, viewRules, fewestOfView) {
		v.t.Errorf("%s, seen anew: %s", path, complaint)
	}
}

// broken returns what breaks rules, of which so many must have something to judge.
func (v *visitor) broken(path, rules string, fewest int) []string {
	v.t.Helper()
	eval[int](v, alike)
	found := awaited(v, running(rules))
	if n, err := strconv.Atoi(found[0]); err != nil || n < fewest {
		v.t.Errorf("%s: only %s rules had something to judge, expected %d or more", path, found[0], fewest)
	}
	return found[1:]
}

// TestOneFaintCellAmongMany: texts that look alike are judged a few times, and one
// that does not is found, wherever it stands, also where the page is seen anew.
func TestOneFaintCellAmongMany(t *testing.T) {
	t.Parallel()
	const path = demoPage + "/survey/panes"
	source := axe(t)
	v := visit(t, 1280, 900, "light")
	v.bringTools()
	v.open(path)
	faint := func(colour string) { // of what is beside the view axe-core does not judge the colours
		eval[bool](v, `[...document.querySelectorAll("td")].findLast((e) => e.childElementCount === 0 && e.textContent.trim().length > 1 &&
			e.getBoundingClientRect().right < document.documentElement.clientWidth - 40).style.color = "`+colour+`", true`)
	}
	onlyIt := func(complaints []string) {
		t.Helper()
		if found := strings.Join(complaints, "\n"); !strings.Contains(found, "color-contrast") || strings.Contains(found, "\n") {
			t.Errorf("of one faint cell axe-core says %q", found)
		}
	}
	faint("#ddd")
	onlyIt(v.complaints(path, source))
	if n := eval[int](v, `document.querySelectorAll("[data-alike]").length`); n < 200 {
		t.Errorf("only %d texts were taken for alike", n)
	}
	v.dress("dark")
	v.size(360, 800)
	faint("#333")
	onlyIt(v.broken(path, viewRules, fewestOfView))
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
