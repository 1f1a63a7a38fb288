package desk

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// TestSlowPhone opens the plan on a phone whose processor is slowed four times and logs
// when it was painted and when hands could use it; docs/performance.md keeps the figures.
func TestSlowPhone(t *testing.T) {
	v := visit(t, 390, 844, "light")
	if _, err := chromedp.Call(v.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: 4}); err != nil {
		t.Fatal(err)
	}
	for range 3 {
		v.open(demoPage + "?hole=B2")
		v.waitFor(`document.querySelector("[data-zoom]").closest("[hidden]") === null && document.querySelector(".map").style.getPropertyValue("--mm") !== ""`)
		at := eval[map[string]float64](v, `(() => { const n = performance.getEntriesByType("navigation")[0]; return {
			answered: n.responseEnd, parsed: n.domInteractive, scripts: n.domContentLoadedEventEnd, loaded: n.loadEventEnd,
			painted: performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? -1 }; })()`)
		t.Logf("answered %.0f ms, parsed %.0f ms, painted %.0f ms, scripts run %.0f ms, loaded %.0f ms", at["answered"], at["parsed"], at["painted"], at["scripts"], at["loaded"])
	}
}

// TestDragStepsAreAnswered drags a hole to and fro, slowly, a step at a time, and logs how
// long each answer takes in the browser; docs/performance.md keeps the figures.
func TestDragStepsAreAnswered(t *testing.T) {
	v := visitAt(t, openOwn(t), 1280, 900, "dark")
	v.open(demoPage + "?hole=B2")
	const drags, steps, leastAnswers = 3, 60, 30
	const stepPause = 30 * time.Millisecond // as fast as a hand moves
	for drag := range drags {
		at, way := v.middleOf(markOf("map", "B2")), 3*float64(2*(drag%2)-1)
		v.mouse("mousePressed", at)
		for i := range steps {
			v.mouse("mouseMoved", point{at.x + way*float64(i+1), at.y})
			time.Sleep(stepPause)
		}
		v.mouse("mouseReleased", point{at.x + way*steps, at.y})
		v.waitFor(fmt.Sprintf(`%s === %d`, baseNow, drag+2))
	}
	times := eval[[]float64](v, `performance.getEntriesByType("resource").filter((e) => e.name.endsWith("/live")).map((e) => e.duration)`)
	slices.Sort(times)
	if len(times) < leastAnswers {
		t.Fatalf("%d answers to %d steps", len(times), drags*steps)
	}
	t.Logf("%d answers: median %.1f ms, 95th percentile %.1f ms, slowest %.1f ms", len(times), times[len(times)/2], times[len(times)*95/100], times[len(times)-1])
}
