package desk

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

const demoPage = "/arena/quillhaven"

// picked is the hole that the page shows.
const picked = `document.querySelector("[data-picked]").dataset.picked`

func TestVisitorPicksHolesByMouse(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "dark")
	v.open("/arenas")
	v.do(chromedp.Click(`a[href="`+demoPage+`"]`), chromedp.WaitReady("[data-picked]"))
	first := eval[string](v, picked)
	v.do(chromedp.Click(`[data-picks] li:nth-child(3) a`))
	v.waitFor(picked + `!== "` + first + `"`)
	third := eval[string](v, picked)
	if got := eval[string](v, `new URL(location.href).searchParams.get("hole")`); got != third {
		t.Errorf("the address names hole %q, the page shows %q", got, third)
	}
	v.do(chromedp.NavigateBack())
	v.waitFor(picked + `=== "` + first + `"`)
}

// TestVisitorPicksHolesOnTheDrawings clicks the marks on the map and on the strip.
func TestVisitorPicksHolesOnTheDrawings(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "light")
	v.open(demoPage)
	v.do(chromedp.Click(`[data-drawing="map"] a:has([data-hole="B4"])`))
	v.waitFor(picked + `=== "B4"`)
	inView := `(() => {
		const strip = document.querySelector('[data-drawing="strip"]').getBoundingClientRect();
		const mark = document.querySelector('[data-drawing="strip"] .picked').getBoundingClientRect();
		return mark.left > strip.left && mark.right < strip.right;
	})()`
	if !eval[bool](v, inView) {
		t.Error("the hole picked is not in view on the boards strip")
	}
	v.do(chromedp.Click(`[data-drawing="strip"] [data-hole="B3"] .hit-tag`))
	v.waitFor(picked + `=== "B3"`)
}

func TestVisitorPicksHolesByKeyboard(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "dark")
	v.open(demoPage)
	holes := eval[[]string](v, `Array.from(document.querySelectorAll("[data-picks] a"), (a) => a.dataset.hole)`)
	if len(holes) < 3 {
		t.Fatalf("the demo shows %d holes, expected 3 or more", len(holes))
	}
	v.do(chromedp.Focus(`[data-picks] a[aria-current]`), chromedp.KeyEvent(kb.ArrowRight))
	v.waitFor(picked + `=== "` + holes[1] + `"`)
	v.do(chromedp.KeyEvent(kb.End))
	v.waitFor(picked + `=== "` + holes[len(holes)-1] + `"`)
	v.do(chromedp.KeyEvent(kb.ArrowRight))
	v.waitFor(picked + `=== "` + holes[0] + `"`)
	if got := eval[string](v, `document.activeElement.dataset.hole`); got != holes[0] {
		t.Errorf("the focus is on %q, expected the hole shown, %q", got, holes[0])
	}
}

func TestTabKeyReachesThemesThenHoles(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "dark")
	v.open(demoPage)
	seen := map[string]bool{}
	for range 60 {
		v.do(chromedp.KeyEvent(kb.Tab))
		at := eval[string](v, `document.activeElement.closest("[data-picks]") ? "picks" :
			document.activeElement.closest(".themes") ? "themes" :
			document.activeElement.closest("[data-drawing]") ? "drawing" : document.activeElement.className`)
		seen[at] = true
		outline := eval[string](v, `getComputedStyle(document.activeElement).outlineStyle`)
		if outline == "none" && at != "" {
			t.Errorf("the focus does not show on %s", at)
		}
	}
	for _, part := range []string{"skip", "themes", "drawing", "picks"} {
		if !seen[part] {
			t.Errorf("60 tabs never reached %s: %v", part, seen)
		}
	}
}

func TestThemeIsKept(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "dark")
	v.open(demoPage + "?hole=B2")
	dark := eval[string](v, `getComputedStyle(document.documentElement).backgroundColor`)
	v.do(chromedp.Click(`.themes button[value="light"]`))
	v.waitFor(`document.documentElement.dataset.theme === "light"`)
	if got := eval[string](v, `location.pathname + location.search`); got != demoPage+"?hole=B2" {
		t.Errorf("choosing a theme led to %s", got)
	}
	light := eval[string](v, `getComputedStyle(document.documentElement).backgroundColor`)
	if dark == light {
		t.Errorf("both themes are %s", light)
	}
	v.open("/arenas")
	if got := eval[string](v, `document.documentElement.dataset.theme`); got != "light" {
		t.Errorf("the next page is %s", got)
	}
}

func TestTouchPicksAHole(t *testing.T) {
	t.Parallel()
	v := visit(t, 360, 800, "dark")
	v.open(demoPage)
	const second = "[data-picks] li:nth-child(2) a"
	size := eval[[]float64](v, `(() => {
		const r = document.querySelector("`+second+`").getBoundingClientRect();
		return [r.width, r.height];
	})()`)
	if size[0] < 44 || size[1] < 44 {
		t.Errorf("a hole's tag is %.0f x %.0f px, too small for a finger", size[0], size[1])
	}
	v.do(chromedp.ScrollIntoView(second), chromedp.Tap(second))
	v.waitFor(picked + `=== document.querySelector("[data-picks] li:nth-child(2) a").dataset.hole`)
}
