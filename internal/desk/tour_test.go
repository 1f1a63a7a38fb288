package desk

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// TestTourByKeyboard walks a newcomer's first minute without a pointer: the demo
// is open, the steps go on and back, the focus never falls off the page, and
// closed steps stay away until somebody wants them again.
func TestTourByKeyboard(t *testing.T) {
	t.Parallel()
	v := visit(t, 360, 800, "dark")
	v.open("/")
	if at := eval[string](v, `location.pathname`); at != demoPage {
		t.Fatalf("a newcomer meets %s", at)
	}
	const (
		now     = `Array.from(document.querySelectorAll("[data-tour] li")).findIndex((li) => li.getAttribute("aria-current") === "step")`
		focused = `document.activeElement.getAttributeNames().find((name) => name.startsWith("data-tour")) ?? ""`
	)
	v.waitFor(now + ` === 0`)
	v.do(chromedp.Focus("[data-tour-next]"), chromedp.KeyEvent(kb.Enter))
	v.waitFor(now + ` === 1`)
	v.do(chromedp.KeyEvent(kb.Enter))
	v.waitFor(now + ` === 2`)
	if got := eval[string](v, focused); got != "data-tour-back" {
		t.Errorf("after the last step the focus is on %q, expected the way back", got)
	}
	v.do(chromedp.KeyEvent(kb.Enter), chromedp.KeyEvent(kb.Enter))
	v.waitFor(now + ` === 0`)
	if got := eval[string](v, focused); got != "data-tour-next" {
		t.Errorf("back at the first step the focus is on %q, expected the way on", got)
	}
	v.do(chromedp.KeyEvent(kb.Escape))
	v.waitFor(`document.readyState === "complete" && document.querySelector("[data-tour]") === null`)
	v.open("/")
	if at := eval[string](v, `location.pathname`); at != "/" {
		t.Errorf("who closed the steps is led to %s", at)
	}
	v.open(demoPage)
	v.do(chromedp.Focus(`button[name="again"]`), chromedp.KeyEvent(kb.Enter))
	v.waitFor(`document.querySelector("[data-tour]") !== null`)
}

// TestTourCallsNoOtherArenaInvented: the steps stand on every arena's page, but
// who imported a rink is not told to change what they like.
func TestTourCallsNoOtherArenaInvented(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	const said = "invented demo"
	says(t, ask(t, h, "GET", demoPage, ""), 200, said)
	text, _ := headText(t, d, "quillhaven")
	w := fillIn(t, h, "/import", map[string]string{"text": strings.Replace(text, "Tidewater Pavilion", "Own Rink", 1)})
	if w.Code != 303 {
		t.Fatalf("importing: %d", w.Code)
	}
	if old := ask(t, h, "GET", demoPage+"?version=1", "").Body.String(); !strings.Contains(old, "Move it") {
		t.Error("the newest version shows no step to move a hole")
	}
	if move := ask(t, h, "POST", demoPage+"/holes", "base=1&hole=B2&act=right"); move.Code != 303 {
		t.Fatalf("moving: %d", move.Code)
	}
	old := ask(t, h, "GET", demoPage+"?version=1", "").Body.String()
	if strings.Contains(old, "Move it") || strings.Contains(old, said) {
		t.Error("an old version tells to move what cannot be moved")
	}
	if strings.Contains(old, "Look through the lens") || !strings.Contains(old, "Open the newest") {
		t.Error("an old version leads to the newest one's picture without a word")
	}
	page := ask(t, h, "GET", w.Header().Get("Location"), "")
	says(t, page, 200, "Close these steps")
	if strings.Contains(page.Body.String(), said) {
		t.Error("an imported arena is called an invented demo")
	}
}
