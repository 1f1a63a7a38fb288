package desk

import (
	"slices"
	"testing"
	"time"
)

// TestDragStepsAreAnswered drags slowly, a step at a time, and logs how long each
// answer takes in the browser; docs/performance.md keeps the figures.
func TestDragStepsAreAnswered(t *testing.T) {
	v := visitAt(t, openOwn(t), 1280, 900, "dark")
	v.open(demoPage + "?hole=B2")
	at := v.middleOf(markOf("map", "B2"))
	const steps = 60
	const stepPause = 30 * time.Millisecond // as fast as a hand moves
	v.mouse("mousePressed", at)
	for i := 1; i <= steps; i++ {
		v.mouse("mouseMoved", point{at.x - float64(i)*3, at.y})
		time.Sleep(stepPause)
	}
	times := eval[[]float64](v, `performance.getEntriesByType("resource").filter((e) => e.name.endsWith("/live")).map((e) => e.duration)`)
	v.mouse("mouseReleased", point{at.x - 3*steps, at.y})
	v.waitFor(baseNow + ` === 2`)
	slices.Sort(times)
	if len(times) < 10 {
		t.Fatalf("%d answers to %d steps", len(times), steps)
	}
	t.Logf("%d answers: median %.1f ms, 95th percentile %.1f ms, slowest %.1f ms", len(times), times[len(times)/2], times[len(times)*95/100], times[len(times)-1])
}
