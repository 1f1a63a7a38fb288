package desk

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// A newcomer knows no address, no name of a field and no file: what follows uses
// words and marks that can be seen, and a mouse.

// seen finds what can be pressed by its words: whole, else their beginning; what a
// fold hides is not seen.
const seen = `((words) => {
	const all = [...document.querySelectorAll("a, button, summary, [data-layer=holes] [data-hole]")].filter((e) => e.checkVisibility() && !e.disabled && !e.matches("[aria-current=page]"));
	const text = (e) => (e.getAttribute("aria-label") || e.dataset.hole || e.innerText || "").replace(/\s+/g, " ").trim();
	const found = all.find((e) => text(e) === words) ?? all.find((e) => text(e).startsWith(words)) ?? all.find((e) => text(e).includes(words));
	if (!found) return null;
	found.scrollIntoView({ block: "center" });
	return found;
})`

// press presses what says these words, with the mouse.
func (v *visitor) press(words string) {
	v.t.Helper()
	v.waitFor(fmt.Sprintf(atWork+` && `+seen+`(%q) !== null`, words))
	at := eval[[]float64](v, fmt.Sprintf(`(() => { const r = `+seen+`(%q).getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`, words))
	v.do(chromedp.MouseClickXY(at[0], at[1]))
}

// fill types into the field that a label names, or picks the option that says so.
func (v *visitor) fill(label, value string) {
	v.t.Helper()
	done := eval[bool](v, fmt.Sprintf(`(() => {
		const label = [...document.querySelectorAll("label")].find((l) => l.checkVisibility() && l.innerText.trim().startsWith(%q));
		const field = label?.control;
		if (!field) return false;
		const option = field.tagName === "SELECT" && [...field.options].find((o) => o.text.includes(%q));
		if (field.tagName === "SELECT" && !option) return false;
		field.value = option ? option.value : %q;
		field.dispatchEvent(new Event("input", { bubbles: true }));
		field.dispatchEvent(new Event("change", { bubbles: true }));
		return true;
	})()`, label, value, value))
	if !done {
		v.t.Fatalf("nothing to fill in at %q with %q on\n%s", label, value, eval[string](v, `document.querySelector("main").innerText.slice(0, 1500)`))
	}
}

// reads waits until the page says something.
func (v *visitor) reads(words string) {
	v.t.Helper()
	v.waitFor(fmt.Sprintf(`document.body.innerText.replace(/\s+/g, " ").includes(%q)`, words))
}

// TestNewcomersWay begins a rink of 60 x 26 m, lays panes, puts in three holes, breaks
// a rule, goes to the fault, mends it, chooses, accepts and takes the drawings.
func TestNewcomersWay(t *testing.T) {
	t.Parallel()
	v := visitAt(t, openOwn(t), 1440, 900, "light")
	v.open("/arenas")

	v.press("New arena")
	v.reads("Name of the rink")
	v.fill("Name of the rink", "Larchmere Ice")
	v.fill("Size", "60 m by 26 m")
	v.fill("Panes in a sentence", "131 panes of 1.2 m")
	v.press("Lay it out")
	v.reads("This is how it looks")
	v.press("Keep this arena")
	v.reads("Larchmere Ice")
	v.press("Plan")
	v.waitFor(`document.querySelector("[data-plan]") !== null`)

	for _, corner := range []string{"A-bench", "A-box", "B-bench"} {
		v.press("Add a hole")
		v.fill("Where", corner)
		v.press("Add it")
		v.waitFor(`document.querySelector("details[data-adding][open]") === null || document.querySelector("[data-message]") !== null`)
	}
	if got := eval[string](v, verdictNow); !strings.Contains(got, "broken") {
		t.Fatalf("three holes beside those that the desk laid are said to be %q", got)
	}
	for _, crowds := range []string{"A-bench-1", "A-box-2"} {
		v.press(eval[string](v, verdictNow))
		v.press("Go to " + crowds)
		v.reads("Hole " + crowds)
		v.press("Delete")
		v.waitFor(`document.querySelector("[data-plan]") !== null && !document.querySelector("[data-picks]").innerText.includes("` + crowds + `")`)
	}
	if got := eval[string](v, verdictNow); strings.Contains(got, "broken") || !eval[bool](v, `["H1", "H2", "H3"].every((h) => document.querySelector("[data-picks]").innerText.includes(h))`) {
		t.Fatalf("mended, the plan is said to be %q", got)
	}

	v.press("Choose")
	v.reads("Which holes stay?")
	v.press("Choose")
	v.reads("Looked at:")
	v.press("Take over as a new version")
	v.waitFor(`document.querySelector("[data-plan]") !== null`)
	if got := eval[string](v, verdictNow); strings.Contains(got, "broken") {
		t.Errorf("taken over, the plan is said to be %q", got)
	}

	v.press("Take away")
	v.reads("For the shop")
	v.press("shop drawings")
	v.waitFor(`[...document.querySelectorAll(".making")].some((e) => e.textContent === "Done.")`)
}

// verdictNow is what the page says of the plan as a whole.
const verdictNow = `(document.querySelector('[data-part="verdict"]')?.innerText ?? "").trim()`
