package desk

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// mostTabs is how far away a control may be from where the focus stands.
const mostTabs = 140

// tabTo presses Tab until what has the focus matches a selector.
func (v *visitor) tabTo(selector string) {
	v.t.Helper()
	on := fmt.Sprintf(`document.activeElement.matches(%q)`, selector)
	for range mostTabs {
		v.do(chromedp.KeyEvent(kb.Tab))
		if eval[bool](v, on) {
			return
		}
	}
	v.t.Fatalf("%d tabs never reached %s", mostTabs, selector)
}

// typeOver replaces what stands in the field that has the focus: Tab has
// selected it.
func (v *visitor) typeOver(text string) { v.t.Helper(); v.do(chromedp.KeyEvent(text)) }

// TestKeyboardAloneChoosesAndTakesAway does the desk's work without a pointer, on
// a phone's screen and on a large one: adds a hole, chooses, takes the choice
// over, and reaches the files of the new version.
func TestKeyboardAloneChoosesAndTakesAway(t *testing.T) {
	t.Parallel()
	for _, width := range []int64{360, 1280} {
		t.Run(fmt.Sprint(width), func(t *testing.T) {
			v := visitAt(t, openOwn(t), width, 900, "dark")
			v.open(demoPage + "?units=metric")
			v.tabTo("details[data-adding] summary")
			v.do(chromedp.KeyEvent(kb.Enter))
			v.tabTo(`details[data-adding] input[name="as"]`)
			v.typeOver("K1")
			v.do(chromedp.KeyEvent(kb.Enter))
			v.waitFor(baseNow + ` === 2 && ` + picked + ` === "K1"`)
			v.open(demoPage + "?units=metric")
			v.tabTo(`.ways a[href*="/choose"]`)
			v.do(chromedp.KeyEvent(kb.Enter))
			v.waitFor(`document.querySelector(".wishes") !== null`)
			v.tabTo(`[name="count"]`)
			v.typeOver("4")
			v.tabTo(`details[data-more] summary`)
			v.do(chromedp.KeyEvent(kb.Enter))
			for _, field := range []struct{ name, value string }{{"step", "600 mm"}, {"moments", "400"}, {"alternatives", "1"}} {
				v.tabTo(`[name="` + field.name + `"]`)
				v.typeOver(field.value)
			}
			v.do(chromedp.KeyEvent(kb.Enter))
			v.waitFor(`document.querySelector(".answer table.chosen") !== null`)
			v.tabTo(".answer form button.press")
			v.do(chromedp.KeyEvent(kb.Enter))
			v.waitFor(`document.querySelector("[data-plan]") !== null && ` + baseNow + ` === 3`)
			if at := eval[string](v, `location.search`); !strings.Contains(at, "units=metric") {
				t.Errorf("taking over led to %q: the units are lost", at)
			}
			v.tabTo(`.ways a[href*="/take"]`)
			v.do(chromedp.KeyEvent(kb.Enter))
			v.waitFor(`document.querySelector(".files") !== null`)
			v.tabTo(`.files a[href*="cut.zip?"][href*="version=3"]`)
			if outline := eval[string](v, `getComputedStyle(document.activeElement).outlineStyle`); outline == "none" {
				t.Error("the focus does not show on a file")
			}
		})
	}
}
