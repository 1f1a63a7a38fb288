package desk

import (
	"fmt"
	"testing"
)

// TestNothingOverflows opens every page at sizes from a phone's to a large
// screen's: no page may scroll sideways, and no text may be cut.
func TestNothingOverflows(t *testing.T) {
	for _, size := range []struct{ width, height int64 }{{360, 740}, {768, 1024}, {1280, 900}, {2560, 1440}} {
		t.Run(fmt.Sprint(size.width), func(t *testing.T) {
			t.Parallel()
			v := visit(t, size.width, size.height, "dark")
			for _, path := range samplePages(t) {
				v.checkWidth(path)
			}
		})
	}
}

func (v *visitor) checkWidth(path string) {
	v.t.Helper()
	v.open(path)
	wide := eval[[]float64](v, `[document.documentElement.scrollWidth, document.documentElement.clientWidth]`)
	if wide[0] > wide[1] {
		v.t.Errorf("%s is %.0f px wide on a screen of %.0f px; too wide: %v", path, wide[0], wide[1],
			eval[[]string](v, `Array.from(document.querySelectorAll("main *, header *, footer *"))
				.filter((e) => e.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5 && !e.closest(".scroll, .strip"))
				.slice(0, 5).map((e) => e.tagName + "." + e.getAttribute("class"))`))
	}
}

// TestControlsHaveNames asks the browser's accessibility rules in small: every
// link, button and picture has a name, headings go down one step at a time, ids
// are unique.
func TestControlsHaveNames(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "dark")
	for _, path := range samplePages(t) {
		v.open(path)
		for _, complaint := range eval[[]string](v, namesScript) {
			t.Errorf("%s: %s", path, complaint)
		}
		if n := eval[int](v, `document.querySelectorAll("a, button").length`); n < 5 {
			t.Errorf("%s has %d controls: the page is broken", path, n)
		}
	}
}

const namesScript = `(() => {
	const out = [];
	const name = (e) => (e.getAttribute("aria-label") || e.textContent || e.querySelector("title")?.textContent || "").trim();
	for (const e of document.querySelectorAll("a, button, [role=button], [role=img], [role=region]")) {
		const by = e.getAttribute("aria-labelledby");
		if (!name(e) && !(by && document.getElementById(by))) out.push("no name: " + e.outerHTML.slice(0, 120));
	}
	for (const e of document.querySelectorAll("[aria-labelledby]"))
		if (!document.getElementById(e.getAttribute("aria-labelledby"))) out.push("labelled by nothing: " + e.outerHTML.slice(0, 80));
	let level = 0;
	for (const h of document.querySelectorAll("h1, h2, h3, h4")) {
		const now = Number(h.tagName[1]);
		if (now > level + 1) out.push("heading skips a step: " + h.textContent);
		level = now;
	}
	const ids = Array.from(document.querySelectorAll("[id]"), (e) => e.id);
	for (const id of ids) if (ids.indexOf(id) !== ids.lastIndexOf(id)) out.push("id twice: " + id);
	if (!document.documentElement.lang) out.push("the page has no language");
	return out;
})()`
