package desk

import (
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// movedBy reads by how much a page says that a hole stands elsewhere, in millimetres.
var movedBy = regexp.MustCompile(`Hole B1 stands (\d+) mm to the (?:left|right) and (\d+) mm (?:higher|lower)`)

// TestMarkingAFrame marks the invented frame of a hole as a hand does: a mark that is moved
// by keys is followed by the magnifier and no longer fits; removed by a key it is set anew
// by the pointer; and the place comes back within centimetres of the hole through which
// the frame is drawn.
func TestMarkingAFrame(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "light")
	v.open(demoPage + "/frame?hole=B1&example=1&units=metric")
	const pins, pin, looked = `document.querySelectorAll(".pin").length`, `.pin[data-pin="B:spot-box"]`, `document.querySelector("[data-loupe]")`
	v.waitFor(pins + ` === 9 && document.querySelector("[data-place]") !== null`)
	at := func() float64 { return eval[float64](v, `Number(`+looked+`.dataset.at.split(" ")[0])`) }
	v.do(chromedp.Focus(pin))
	before := at()
	v.do(chromedp.KeyEvent(kb.ArrowRight, chromedp.KeyModifiers(chromedp.ModifierShift)), chromedp.KeyEvent(kb.ArrowRight, chromedp.KeyModifiers(chromedp.ModifierAlt)))
	if by := at() - before; math.Abs(by-10.1) > 0.06 || eval[bool](v, looked+`.hidden`) {
		t.Errorf("keys moved the mark by %.1f px, expected 10.1, under a magnifier", by)
	}
	v.waitFor(`document.querySelector('` + pin + `[data-misfit]') !== null`)
	place := v.middleOf(pin)
	place.x -= 10.1 * eval[float64](v, `document.querySelector("[data-view]").clientWidth / 2400`)
	v.do(chromedp.KeyEvent(kb.Delete))
	v.waitFor(pins + ` === 8 && document.querySelector("[data-landmark]").value === "B:spot-box"`)
	v.mouse(input.DispatchMouseEventTypeMousePressed, place)
	v.mouse(input.DispatchMouseEventTypeMouseReleased, place)
	v.waitFor(pins + ` === 9 && document.querySelectorAll("[data-answer] .mark.pass").length === 9`)
	said := movedBy.FindStringSubmatch(eval[string](v, `document.querySelector("[data-answer]").textContent`))
	if said == nil {
		t.Fatal("the page does not say how far the hole is off")
	}
	for _, text := range said[1:] {
		if mm, err := strconv.Atoi(text); err != nil || mm > 50 {
			t.Errorf("the place comes back %s mm off", text)
		}
	}
}
