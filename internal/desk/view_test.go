package desk

import (
	"fmt"
	"math"
	"net/http"
	"net/url"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// What the map shows: how many millimetres of its sheet stand side by side, and which one is in the middle.
const (
	seenWide   = `document.querySelector(".map svg").viewBox.baseVal.width`
	seenMiddle = `(() => { const b = document.querySelector(".map svg").viewBox.baseVal; return b.x + b.width / 2; })()`
)

// besideHoles is a place on the map where no hole is.
func (v *visitor) besideHoles() point {
	v.t.Helper()
	at := eval[[]float64](v, `(() => { const r = document.querySelector(".map svg").getBoundingClientRect(); return [r.left + .4 * r.width, r.top + .5 * r.height]; })()`)
	return point{at[0], at[1]}
}

// onSheet tells which millimetre of the sheet stands at a place of the window.
func (v *visitor) onSheet(at point) float64 {
	v.t.Helper()
	return eval[float64](v, fmt.Sprintf(`new DOMPoint(%f, %f).matrixTransform(document.querySelector(".map svg").getScreenCTM().inverse()).x`, at.x, at.y))
}

// TestMapIsSeenNearer: the wheel and a pinch bring the map nearer about the place where the
// pointer or the fingers are, a drag beside the holes pans it, and 0 shows all again.
func TestMapIsSeenNearer(t *testing.T) {
	t.Parallel()
	v := visit(t, 1440, 900, "light")
	v.open(demoPage)
	v.waitFor(`document.querySelector(".map").style.getPropertyValue("--mm") !== ""`)
	all, at := eval[float64](v, seenWide), v.besideHoles()
	under := v.onSheet(at)
	eval[bool](v, fmt.Sprintf(`document.querySelector(".map").dispatchEvent(new WheelEvent("wheel", { deltaY: -600, clientX: %f, clientY: %f, cancelable: true })) || true`, at.x, at.y))
	v.waitFor(fmt.Sprintf(`%s < %f`, seenWide, 0.7*all))
	if now := v.onSheet(at); math.Abs(now-under) > 1 {
		t.Errorf("under the wheel's pointer stood %.1f mm of the sheet, now %.1f mm", under, now)
	}
	middle := eval[float64](v, seenMiddle)
	v.drag(at, 60, 0, nil)
	if now := eval[float64](v, seenMiddle); now > middle-3 {
		t.Errorf("dragged to the right by 60 px, the middle of the map went from %.1f to %.1f mm", middle, now)
	}
	v.do(chromedp.KeyEvent("0"))
	v.waitFor(fmt.Sprintf(`Math.abs(%s - %f) < .1`, seenWide, all))

	v.size(390, 844)
	v.do(chromedp.ScrollIntoView(".map"))
	v.waitFor(`Number(document.querySelector(".map").style.getPropertyValue("--mm")) > .5`)
	all, at = eval[float64](v, seenWide), v.besideHoles()
	under = v.onSheet(at)
	for i, apart := range []float64{20, 30, 40, 50, 60} {
		kind := input.DispatchTouchEventTypeTouchMove
		if i == 0 {
			kind = input.DispatchTouchEventTypeTouchStart
		}
		v.fingers(kind, point{at.x - apart, at.y}, point{at.x + apart, at.y})
	}
	v.fingers(input.DispatchTouchEventTypeTouchEnd)
	v.waitFor(fmt.Sprintf(`%s < %f`, seenWide, 0.5*all))
	if now := v.onSheet(at); math.Abs(now-under) > 1 {
		t.Errorf("between the fingers stood %.1f mm of the sheet, now %.1f mm", under, now)
	}
	middle = eval[float64](v, seenMiddle)
	v.finger(at, -60, 0, nil)
	if now := eval[float64](v, seenMiddle); now < middle+3 {
		t.Errorf("a finger drew the map to the left by 60 px: its middle went from %.1f to %.1f mm", middle, now)
	}
}

// fingers are so many fingers on the screen at once.
func (v *visitor) fingers(kind input.DispatchTouchEventType, at ...point) {
	v.t.Helper()
	p := input.DispatchTouchEventParams{Type: kind, TouchPoints: []*input.TouchPoint{}}
	for i, f := range at {
		id := float64(i)
		p.TouchPoints = append(p.TouchPoints, &input.TouchPoint{X: f.x, Y: f.y, ID: &id})
	}
	if _, err := chromedp.Call(v.ctx, input.DispatchTouchEvent, p); err != nil {
		v.t.Fatal(err)
	}
}

// TestKeysBehindTheGoals: behind a goal the boards run up and down on the map, and so does
// a hole by the keys; and a hole that Esc puts back leaves the page as it was.
func TestKeysBehindTheGoals(t *testing.T) {
	t.Parallel()
	base := openOwn(t)
	v := visitAt(t, base, 1440, 900, "light")
	v.open(demoPage + "?hole=B2")
	// Text of parts out of sight is not rendered, so innerText may leave it out.
	says := `document.querySelector("main").textContent.replace(/\s+/g, " ")`
	whole, before := eval[string](v, says), v.stationOf("B2")
	v.mouse(input.DispatchMouseEventTypeMousePressed, v.middleOf(markOf("map", "B2")))
	for i := range 12 {
		at := v.besideHoles()
		v.mouse(input.DispatchMouseEventTypeMouseMoved, point{at.x + float64(i), at.y})
	}
	v.waitFor(verdictText + ` !== "` + allKept + `"`)
	v.do(chromedp.KeyEvent(kb.Escape))
	if now := eval[string](v, says); now != whole {
		t.Errorf("put back, the page says:\n%s\nbefore:\n%s", now, whole)
	}
	if now := v.stationOf("B2"); now != before {
		t.Errorf("put back, B2 stands at %.3f m, before at %.3f m", now, before)
	}
	v.mouse(input.DispatchMouseEventTypeMouseReleased, v.besideHoles())

	// The demo rink's boards behind net B run from station 35.4 to 44.2 m.
	answer, err := http.PostForm(base+demoPage+"/holes", url.Values{"base": {"1"}, "hole": {"B2"}, "act": {"place"}, "station_m": {"41"}})
	if err != nil {
		t.Fatal(err)
	}
	answer.Body.Close()
	v.open(demoPage + "?hole=B2")
	station := v.stationOf("B2")
	v.do(chromedp.Focus(`[data-drawing="map"] a:has([data-hole="B2"])`), chromedp.KeyEvent(kb.ArrowUp))
	v.waitFor(baseNow + ` === 3`)
	if moved := v.stationOf("B2") - station; math.Abs(moved-0.0254) > 0.002 {
		t.Errorf("an arrow up behind net B moved the hole by %.4f m of its station, expected an inch more", moved)
	}
	v.do(chromedp.Focus(`[data-drawing="map"] a:has([data-hole="B2"])`), chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowDown))
	v.waitFor(baseNow + ` === 4`)
	if moved := v.stationOf("B2") - station; math.Abs(moved) > 0.002 {
		t.Errorf("arrows right (no way along these boards) and down left the hole %.4f m from where it was", moved)
	}
}
