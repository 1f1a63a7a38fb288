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
var movedBy = regexp.MustCompile(`hole B1, ([0-9.]+) mm to the (?:left|right) and ([0-9.]+) mm (?:higher|lower) of its middle`)

// TestMarkingAFrame marks the invented frame of a hole as a hand does: a mark that is moved
// by keys is followed by the magnifier and no longer fits; removed by a key it is set anew
// by the pointer, as finely as the screen is, and brought by keys to where it was; and the place
// comes back within centimetres of the hole through which the frame is drawn.
func TestMarkingAFrame(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "light")
	v.open(demoPage + "/frame?hole=B1&example=1&units=metric")
	const pins, pin, looked = `document.querySelectorAll(".pin").length`, `.pin[data-pin="B:spot-box"]`, `document.querySelector("[data-loupe]")`
	v.waitFor(pins + ` === 9 && document.querySelector("[data-place]") !== null`)
	at := func() point {
		xy := eval[[]float64](v, looked+`.dataset.at.split(" ").map(Number)`)
		return point{xy[0], xy[1]}
	}
	v.do(chromedp.Focus(pin))
	before := at()
	v.keyed(1, kb.ArrowRight, chromedp.ModifierShift)
	v.keyed(1, kb.ArrowRight, chromedp.ModifierAlt)
	if by := at().x - before.x; math.Abs(by-10.1) > 0.06 || eval[bool](v, looked+`.hidden`) {
		t.Errorf("keys moved the mark by %.1f px, expected 10.1, under a magnifier", by)
	}
	v.waitFor(`document.querySelector('` + pin + `[data-misfit]') !== null`)
	fine := 2400 / eval[float64](v, `document.querySelector("[data-view]").clientWidth`) // px of the frame for one of the screen
	place := v.middleOf(pin)
	place.x -= 10.1 / fine
	v.do(chromedp.KeyEvent(kb.Delete))
	v.waitFor(pins + ` === 8 && document.querySelector("[data-landmark]").value === "B:spot-box"`)
	v.mouse(input.DispatchMouseEventTypeMousePressed, place)
	v.mouse(input.DispatchMouseEventTypeMouseReleased, place)
	v.waitFor(pins + ` === 9`)
	set := at()
	if math.Hypot(set.x-before.x, set.y-before.y) > 1.5*fine {
		t.Errorf("the pointer set the mark at %v, expected %v within %.1f px", set, before, 1.5*fine)
	}
	for _, way := range []struct {
		by       float64
		back, on string
	}{{before.x - set.x, kb.ArrowLeft, kb.ArrowRight}, {before.y - set.y, kb.ArrowUp, kb.ArrowDown}} {
		key, tenths := way.on, int(math.Round(10*math.Abs(way.by)))
		if way.by < 0 {
			key = way.back
		}
		v.keyed(tenths/10, key, 0)
		v.keyed(tenths%10, key, chromedp.ModifierAlt)
	}
	v.waitFor(`document.querySelectorAll("[data-answer] .mark.pass").length === 9`)
	said := movedBy.FindStringSubmatch(eval[string](v, `document.querySelector("[data-answer]").textContent`))
	if said == nil {
		t.Fatal("the page does not say how far the hole is off")
	}
	for _, text := range said[1:] {
		if mm, err := strconv.ParseFloat(text, 64); err != nil || mm > 50 {
			t.Errorf("the place comes back %s mm off", text)
		}
	}
	// Through a hole at the other end what was near is far, and left is right.
	eval[string](v, `(() => { const s = document.querySelector("select[name=hole]"); s.value = "A1"; s.dispatchEvent(new Event("change", { bubbles: true })); return s.value; })()`)
	v.waitFor(`document.querySelector('` + pin + `').title.startsWith("far end, left face-off spot") && document.querySelector("[data-answer]").textContent.includes("taken through hole B1, not A1")`)
}

// keyed presses a key so many times.
func (v *visitor) keyed(times int, key string, with chromedp.Modifier) {
	v.t.Helper()
	for range times {
		v.do(chromedp.KeyEvent(key, chromedp.KeyModifiers(with)))
	}
}
