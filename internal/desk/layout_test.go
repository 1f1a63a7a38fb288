package desk

import (
	"fmt"
	"testing"
)

// TestEveryPage looks at every page on a screen, which then becomes a tablet's, a large
// one and a phone in the dark: no page may scroll sideways, every control has a name, and
// axe-core has nothing to complain of, in either theme.
func TestEveryPage(t *testing.T) {
	t.Parallel()
	source := axe(t)
	pages := samplePages(t)
	for half := range 2 {
		t.Run(fmt.Sprint(half), func(t *testing.T) {
			t.Parallel()
			v := visit(t, 1280, 900, "light")
			v.bringTools()
			for i := half; i < len(pages); i += 2 {
				v.checkPage(pages[i], source)
			}
		})
	}
}

func (v *visitor) checkPage(path, source string) {
	v.t.Helper()
	v.dress("light")
	v.size(1280, 900)
	v.open(path)
	v.checkWidth(path)
	v.checkControls(path)
	v.checkRules(path, source)
	for _, size := range [][2]int64{{768, 1024}, {1920, 1080}, {2560, 1440}, {320, 700}} {
		v.size(size[0], size[1])
		v.checkWidth(path)
	}
	v.dress("dark")
	v.size(360, 800)
	v.checkWidth(path)
	v.checkControls(path)
	v.checkFingers(path)
	v.checkView(path)
}

// checkWidth fails when the page that is open scrolls sideways.
func (v *visitor) checkWidth(path string) {
	v.t.Helper()
	wide := eval[[]float64](v, `[document.documentElement.scrollWidth, document.documentElement.clientWidth]`)
	if wide[0] > wide[1] {
		v.t.Errorf("%s is %.0f px wide on a screen of %.0f px; too wide: %v", path, wide[0], wide[1],
			eval[[]string](v, `Array.from(document.querySelectorAll("main *, header *, footer *"))
				.filter((e) => e.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5 && !e.closest(".scroll, .strip"))
				.slice(0, 5).map((e) => e.tagName + "." + e.getAttribute("class"))`))
	}
}

// checkFingers fails when something to press is smaller than a finger: 44 px by 44, but
// links within a text, which WCAG 2.2 excepts (success criterion 2.5.5), and those on a
// sheet that is shown as it will be printed.
func (v *visitor) checkFingers(path string) {
	v.t.Helper()
	for _, small := range eval[[]string](v, `Array.from(document.querySelectorAll("main :is(a, button, summary, select, input:not([type=hidden], [type=checkbox], [type=radio]))"))
		.filter((e) => e.checkVisibility() && !e.closest("p, li:not(.picks li), td, th, dd, dt, .hint, .findings, label, .sheet-of-paper") && !e.matches(".skip"))
		.map((e) => [e, e.getBoundingClientRect()])
		.filter(([e, r]) => r.width > 0 && (r.width < 43.5 || r.height < 43.5))
		.map(([e, r]) => e.tagName + " " + (e.textContent.trim() || e.name || e.getAttribute("aria-label")).slice(0, 30) + " " + Math.round(r.width) + "x" + Math.round(r.height))`) {
		v.t.Errorf("%s: too small for a finger: %s", path, small)
	}
}

// checkControls asks the browser's accessibility rules in small: every link, button
// and picture has a name, headings go down one step at a time, ids are unique.
func (v *visitor) checkControls(path string) {
	v.t.Helper()
	for _, complaint := range eval[[]string](v, namesScript) {
		v.t.Errorf("%s: %s", path, complaint)
	}
	if n := eval[int](v, `document.querySelectorAll("a, button").length`); n < 5 {
		v.t.Errorf("%s has %d controls: the page is broken", path, n)
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
