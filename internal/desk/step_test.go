package desk

import (
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

// TestDragStepsAreAnswered drags slowly, a step at a time, and logs how long each
// answer takes in the browser; docs/performance.md keeps the figures.
func TestDragStepsAreAnswered(t *testing.T) {
	v := visitAt(t, openOwn(t), 1280, 900, "dark")
	v.open(demoPage + "?hole=B2")
	at := v.middleOf(markOf("map", "B2"))
	const steps, leastAnswers = 60, 10
	const stepPause = 30 * time.Millisecond // as fast as a hand moves
	answers := `performance.getEntriesByType("resource").filter((e) => e.name.endsWith("/live")).map((e) => e.duration)`
	var times []float64
	v.mouse("mousePressed", at)
	// On a busy machine answers are few: the hand goes to and fro until they are enough.
	for i, end := 1, time.Now().Add(patience); i <= steps || len(times) < leastAnswers && time.Now().Before(end); i++ {
		v.mouse("mouseMoved", point{at.x - float64(min(i, steps-i%2))*3, at.y})
		time.Sleep(stepPause)
		if i >= steps {
			times = eval[[]float64](v, answers)
		}
	}
	v.mouse("mouseReleased", point{at.x - 3*steps, at.y})
	v.waitFor(baseNow + ` === 2`)
	slices.Sort(times)
	if len(times) < leastAnswers {
		t.Fatalf("%d answers to %d steps and more", len(times), steps)
	}
	t.Logf("%d answers: median %.1f ms, 95th percentile %.1f ms, slowest %.1f ms", len(times), times[len(times)/2], times[len(times)*95/100], times[len(times)-1])
}
