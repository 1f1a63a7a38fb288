package desk

import (
	"fmt"
	"math"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// openOwn serves a desk that a test may change and returns its address.
func openOwn(t *testing.T) string {
	t.Helper()
	needsBrowser(t)
	_, d, _ := ownDesk(t, false)
	return open(t, d)
}

// point is a place in a tab's window, in CSS pixels.
type point struct{ x, y float64 }

// middleOf returns where the middle of an element is, scrolled into view.
func (v *visitor) middleOf(selector string) point {
	v.t.Helper()
	v.do(chromedp.ScrollIntoView(selector))
	at := eval[[]float64](v, fmt.Sprintf(`(() => {
		const r = document.querySelector(%q).getBoundingClientRect();
		return [r.left + r.width / 2, r.top + r.height / 2];
	})()`, selector))
	return point{at[0], at[1]}
}

// dragSteps is in how many moves a test drags.
const dragSteps = 12

// drag presses at a place, moves by so many pixels in steps, runs a look at the
// page while the button is down, and lets go.
func (v *visitor) drag(from point, dx, dy float64, look func()) {
	v.t.Helper()
	v.mouse(input.DispatchMouseEventTypeMousePressed, from)
	for i := 1; i <= dragSteps; i++ {
		k := float64(i) / dragSteps
		v.mouse(input.DispatchMouseEventTypeMouseMoved, point{from.x + k*dx, from.y + k*dy})
	}
	if look != nil {
		look()
	}
	v.mouse(input.DispatchMouseEventTypeMouseReleased, point{from.x + dx, from.y + dy})
}

func (v *visitor) mouse(kind input.DispatchMouseEventType, at point) {
	v.t.Helper()
	p := input.DispatchMouseEventParams{Type: kind, X: at.x, Y: at.y, Button: input.MouseButtonLeft, Buttons: 1, ClickCount: 1}
	if kind == input.DispatchMouseEventTypeMouseReleased {
		p.Buttons = 0
	}
	if _, err := chromedp.Call(v.ctx, input.DispatchMouseEvent, p); err != nil {
		v.t.Fatal(err)
	}
}

// finger drags like drag, by touch.
func (v *visitor) finger(from point, dx, dy float64, look func()) {
	v.t.Helper()
	v.touch(input.DispatchTouchEventTypeTouchStart, from)
	for i := 1; i <= dragSteps; i++ {
		k := float64(i) / dragSteps
		v.touch(input.DispatchTouchEventTypeTouchMove, point{from.x + k*dx, from.y + k*dy})
	}
	if look != nil {
		look()
	}
	v.touch(input.DispatchTouchEventTypeTouchEnd, point{})
}

func (v *visitor) touch(kind input.DispatchTouchEventType, at point) {
	v.t.Helper()
	p := input.DispatchTouchEventParams{Type: kind, TouchPoints: []*input.TouchPoint{{X: at.x, Y: at.y}}}
	if kind == input.DispatchTouchEventTypeTouchEnd {
		p.TouchPoints = []*input.TouchPoint{}
	}
	if _, err := chromedp.Call(v.ctx, input.DispatchTouchEvent, p); err != nil {
		v.t.Fatal(err)
	}
}

// What tests ask of the page.
const (
	verdictText = `document.querySelector('[data-part="verdict"]').textContent.trim()`
	baseNow     = `Number(document.querySelector("[data-plan]").dataset.base)`
	allKept     = "every rule is kept"
)

// markOf selects a hole's mark on a drawing.
func markOf(drawing, hole string) string {
	return fmt.Sprintf(`[data-drawing=%q] [data-layer="holes"] [data-hole=%q] .hit`, drawing, hole)
}

// stationOf returns where the page draws a hole, in metres.
func (v *visitor) stationOf(hole string) float64 {
	v.t.Helper()
	return eval[float64](v, fmt.Sprintf(`Number(document.querySelector('[data-drawing="map"] [data-layer="holes"] [data-hole=%q]').dataset.station)`, hole))
}

// watchShifts sums up how far the layout shifts from now on (the browser's
// layout-shift score), whether a hand was at work or not.
const watchShifts = `window.shifts = 0; new PerformanceObserver((list) => {
	for (const entry of list.getEntries()) window.shifts += entry.value;
}).observe({ type: "layout-shift" }); true`

// TestMouseDragsAHoleOverALimit is the work that the desk is for: drag a hole off
// the stretch where it may stand, see the finding at once, let go, take it back.
func TestMouseDragsAHoleOverALimit(t *testing.T) {
	t.Parallel()
	v := visitAt(t, openOwn(t), 1280, 900, "dark")
	v.open(demoPage + "?hole=B2")
	before := v.stationOf("B2")
	at := v.middleOf(markOf("map", "B2"))
	eval[bool](v, watchShifts)
	v.drag(at, -70, 4, func() {
		v.waitFor(verdictText + `!== "` + allKept + `"`)
		if got := eval[float64](v, `window.shifts`); got > 0 {
			t.Errorf("the layout shifted by %g during the drag", got)
		}
		if got := eval[float64](v, baseNow); got != 1 {
			t.Errorf("something was saved during the drag: version %g", got)
		}
		v.waitFor(`document.querySelector('[data-part="glancehead"]').textContent.includes("stretches")`)
	})
	v.waitFor(baseNow + ` === 2`)
	v.waitFor(verdictText + `!== "` + allKept + `"`)
	if after := v.stationOf("B2"); math.Abs(after-before) < 2 {
		t.Errorf("B2 stands at %.2f m, before the drag at %.2f m", after, before)
	}
	v.do(chromedp.Click(`[data-undo]`))
	v.waitFor(baseNow + ` === 3`)
	v.waitFor(verdictText + `=== "` + allKept + `"`)
	if back := v.stationOf("B2"); back != before {
		t.Errorf("after undo B2 stands at %.3f m, expected %.3f", back, before)
	}
	v.do(chromedp.Click(`[data-redo]`))
	v.waitFor(baseNow + ` === 4`)
	v.waitFor(verdictText + `!== "` + allKept + `"`)
}

// TestStripDragChangesTheHeight drags on the boards strip, up.
func TestStripDragChangesTheHeight(t *testing.T) {
	t.Parallel()
	v := visitAt(t, openOwn(t), 1280, 1000, "light")
	v.open(demoPage + "?hole=B2")
	high := `Number(document.querySelector('[data-drawing="strip"] [data-layer="holes"] [data-hole="B2"]').dataset.height)`
	before := eval[float64](v, high)
	v.drag(v.middleOf(markOf("strip", "B2")), 0, -30, nil)
	v.waitFor(baseNow + ` === 2`)
	if after := eval[float64](v, high); after < before+0.2 {
		t.Errorf("B2 is %.3f m high, before the drag %.3f", after, before)
	}
}

// TestFingerDragsAHole does the same by touch on a phone.
func TestFingerDragsAHole(t *testing.T) {
	t.Parallel()
	v := visitAt(t, openOwn(t), 360, 800, "dark")
	v.open(demoPage + "?hole=B2")
	at := v.middleOf(markOf("map", "B2"))
	const mapTop = `document.querySelector('[data-drawing="map"]').getBoundingClientRect().top`
	top := eval[float64](v, mapTop)
	v.finger(at, -40, 0, func() {
		v.waitFor(verdictText + `!== "` + allKept + `"`)
		if now := eval[float64](v, mapTop); math.Abs(now-top) > 1 {
			t.Errorf("the map went from %g to %g under the finger", top, now)
		}
	})
	v.waitFor(baseNow + ` === 2`)
	v.do(chromedp.ScrollIntoView(`[data-undo]`), chromedp.Tap(`[data-undo]`))
	v.waitFor(baseNow + ` === 3`)
	v.waitFor(verdictText + `=== "` + allKept + `"`)
}

// TestKeyboardAloneMovesAHole works without a pointer: tab to the hole, arrows,
// undo by its key.
func TestKeyboardAloneMovesAHole(t *testing.T) {
	t.Parallel()
	v := visitAt(t, openOwn(t), 1280, 900, "dark")
	v.open(demoPage + "?hole=B2")
	onB2 := `document.activeElement.querySelector?.('[data-hole="B2"]') !== null && document.activeElement.closest('[data-drawing="map"]') !== null`
	reached := false
	for range 80 {
		v.do(chromedp.KeyEvent(kb.Tab))
		if reached = eval[bool](v, onB2); reached {
			break
		}
	}
	if !reached {
		t.Fatal("80 tabs never reached the mark of B2 on the map")
	}
	before := v.stationOf("B2")
	for range 3 {
		v.do(chromedp.KeyEvent(kb.ArrowRight))
	}
	v.do(chromedp.KeyEvent(kb.ArrowUp))
	v.waitFor(baseNow + ` === 2`)
	if moved := v.stationOf("B2") - before; math.Abs(moved-3*0.0254) > 0.002 {
		t.Errorf("three arrows moved B2 by %.4f m, expected three inches", moved)
	}
	if !eval[bool](v, onB2) {
		t.Error("the focus left the mark of B2")
	}
	for range 6 {
		v.do(chromedp.KeyEvent(kb.ArrowRight, chromedp.KeyModifiers(chromedp.ModifierShift)))
	}
	v.waitFor(verdictText + `!== "` + allKept + `"`)
	v.waitFor(`document.getElementById("said").textContent.includes("broken")`)
	v.waitFor(baseNow + ` === 3`)
	for version := 4; version <= 5; version++ {
		v.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(chromedp.ModifierCtrl)))
		v.waitFor(fmt.Sprintf(`%s === %d`, baseNow, version))
	}
	if back := v.stationOf("B2"); back != before {
		t.Errorf("after two undos B2 stands at %.4f m, expected %.4f", back, before)
	}
}
