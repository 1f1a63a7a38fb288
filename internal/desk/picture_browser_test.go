package desk

import (
	"strconv"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

const picturePath = demoPage + "/picture?hole=B1&moment=0"

const (
	panOf     = `Number(new URL(location.href).searchParams.get("pan"))`
	pictureIn = `(() => { const i = document.querySelector("[data-image]"); return i.complete && i.naturalWidth > 0; })()`
	sharpIn   = `document.querySelector("[data-image]").naturalWidth >= 1200`
)

// TestVisitorDragsThePicture drags the picture to the left: the camera turns to
// the right by as much of the view, the address follows, and the sharp picture
// comes when the hand rests. Nothing on the page moves meanwhile.
func TestVisitorDragsThePicture(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "dark")
	v.open(picturePath)
	v.waitFor(pictureIn)
	before := eval[float64](v, `Number(document.getElementById("c-pan").value)`)
	box := eval[[]float64](v, `(() => { const b = document.querySelector("[data-glass]").getBoundingClientRect(); return [b.left, b.top, b.width, b.height]; })()`)
	tops := `Array.from(document.querySelectorAll("main h1, main h2, main form, main dl"), (e) => Math.round(e.getBoundingClientRect().top)).join()`
	still := eval[string](v, tops)
	x, y := box[0]+box[2]/2, box[1]+box[3]/2
	v.do(chromedp.MouseEvent("mousePressed", x, y, chromedp.ButtonLeft))
	for i := range 8 {
		v.do(chromedp.MouseEvent("mouseMoved", x-float64(i+1)*box[2]/40, y, chromedp.ButtonLeft))
	}
	v.do(chromedp.MouseEvent("mouseReleased", x-box[2]/5, y, chromedp.ButtonLeft))
	v.waitFor(panOf + ` > ` + eval[string](v, `String(`+strconv.FormatFloat(before, 'f', -1, 64)+`)`))
	turned := eval[float64](v, panOf) - before
	if turned < 4 || turned > 9 { // a fifth of the 28.8 degrees that 70 mm sees
		t.Errorf("a drag over a fifth of the picture turned the camera by %.1f deg", turned)
	}
	v.waitFor(sharpIn)
	if now := eval[string](v, tops); now != still {
		t.Errorf("the page moved during the drag: %s, was %s", now, still)
	}
	v.waitFor(`document.querySelector('[data-fact="pan"]').textContent.includes("right")||document.querySelector('[data-fact="pan"]').textContent.includes("left")`)
}

// TestVisitorSetsTheCameraByKeyboard uses the arrow keys on the picture and on a
// slider, then opens the address anew: the same picture without any script.
func TestVisitorSetsTheCameraByKeyboard(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "light")
	v.open(picturePath)
	v.waitFor(pictureIn)
	v.do(chromedp.Focus(`[data-glass]`), chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowUp))
	v.waitFor(`new URL(location.href).searchParams.has("tilt")`)
	v.do(chromedp.Focus(`[data-slide="focal"]`), chromedp.KeyEvent(kb.End))
	v.waitFor(`new URL(location.href).searchParams.get("focal") === "200"`)
	v.waitFor(`document.querySelector('[data-fact="view"]').textContent.startsWith("10.3")`)
	address := eval[string](v, `location.pathname + location.search`)
	tall := eval[string](v, `document.querySelector('[data-fact="tall"]').textContent`)
	v.open(address)
	if got := eval[string](v, `document.querySelector('[data-fact="tall"]').textContent`); got != tall {
		t.Errorf("the address opened anew says %q, the page said %q", got, tall)
	}
}

func TestVisitorStepsThroughMoments(t *testing.T) {
	t.Parallel()
	v := visit(t, 360, 800, "dark")
	v.open(picturePath)
	v.do(chromedp.ScrollIntoView(`[data-step="1"]`), chromedp.Tap(`[data-step="1"]`))
	v.waitFor(`document.querySelector("[data-moment]")?.textContent === "1"`)
	v.waitFor(pictureIn)
	v.open(picturePath)
	v.checkWidth(picturePath)
	for _, complaint := range eval[[]string](v, namesScript) {
		t.Error(complaint)
	}
}

// TestNextMomentKeepsTheCamera changes the focal length and steps on: the next
// moment is seen at it, aimed at its own subject.
func TestNextMomentKeepsTheCamera(t *testing.T) {
	t.Parallel()
	v := visit(t, 1280, 900, "dark")
	v.open(picturePath + "&pan=10&tilt=0")
	v.waitFor(pictureIn)
	v.do(chromedp.Focus(`[data-slide="focal"]`), chromedp.KeyEvent(kb.End))
	v.waitFor(`new URL(location.href).searchParams.get("focal") === "200"`)
	v.do(chromedp.Click(`[data-step="1"]`))
	v.waitFor(`document.querySelector("[data-moment]")?.textContent === "1"`)
	if got := eval[string](v, `document.querySelector('[name="focal"]').value`); got != "200" {
		t.Errorf("the next moment is seen at %s mm, want 200", got)
	}
	if eval[bool](v, `new URL(location.href).searchParams.has("pan")`) {
		t.Error("the next moment keeps the pan of the one before")
	}
	v.do(chromedp.Click(`.head .units a`)) // metric
	v.waitFor(`document.querySelector('[data-fact="distance"]')?.textContent.includes(" m ")`)
	if got := eval[string](v, `document.querySelector('[name="focal"]').value`); got != "200" {
		t.Errorf("in other units it is seen at %s mm", got)
	}
}
