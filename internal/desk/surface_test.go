package desk

import (
	"fmt"
	"image"
	"image/png"
	"math"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// TestPageOpensWithWhatIsBroken: a broken hole is picked first, its fault leads to it,
// undo names what it undoes, and an undo of an undo the step that it takes back.
func TestPageOpensWithWhatIsBroken(t *testing.T) {
	muchComputed(t)
	h, _, _ := ownDesk(t, false)
	post := func(path, form string) {
		t.Helper()
		if w := ask(t, h, "POST", path, form); w.Code != http.StatusSeeOther {
			t.Fatalf("%s: %d %.300s", form, w.Code, w.Body)
		}
	}
	post(demoPage+"/holes", "base=1&hole=B2&act=right")
	post(demoPage+"/holes", "base=2&hole=A3&act=place&station_m=100")
	says(t, ask(t, h, "GET", demoPage, ""), 200, `data-picked="A3"`, `href="/arena/quillhaven?hole=A3" data-go="A3"`, "Undo move A3")
	post(demoPage+"/restore", "base=3&act=undo&version=2")
	says(t, ask(t, h, "GET", demoPage, ""), 200, "Undo move B2", "Redo move A3", "Version 4: undo: move A3")
	post(demoPage+"/restore", "base=4&act=undo&version=1")
	says(t, ask(t, h, "GET", demoPage, ""), 200, "Redo move B2", "Version 5: undo: move B2", `data-picked="B1"`)
	says(t, ask(t, h, "GET", demoPage+"?pick=none", ""), 200, "Nothing is picked", "Holes stand on the stretches set aside for them")
	for _, id := range []string{"stretches", "most-in-all", "edge-rounding"} {
		if page := ask(t, h, "GET", demoPage+"?pick=none", "").Body.String(); strings.Contains(page, ">"+id+"<") {
			t.Errorf("a rule is shown by its name in the file: %s", id)
		}
	}
}

// TestExactPlaceIsTyped puts a hole where somebody typed, and leaves alone what was not.
func TestExactPlaceIsTyped(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	type form = url.Values
	from := func(base, offset, way, height string) form {
		return form{"base": {base}, "hole": {"B2"}, "act": {"exact"}, "from": {"B-bench circle-top"}, "offset": {offset}, "way": {way}, "height": {height}}
	}
	place := func() (station, height float64) {
		b, err := d.shell.Shelf.Open(t.Context(), "quillhaven", 0)
		if err != nil {
			t.Fatal(err)
		}
		a, err := b.Arena.Check()
		if err != nil {
			t.Fatal(err)
		}
		hole, _ := a.Hole("B2")
		return hole.Station.Metres(), hole.Height.Metres()
	}
	was, high := place()
	if w := ask(t, h, "POST", demoPage+"/holes", from("1", "6 in", "back", "58 in").Encode()); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %.300s", w.Code, w.Body)
	}
	now, still := place()
	if math.Abs(now-was-0.1524) > 0.001 || still != high { // back, toward the end, is with rising station in this corner
		t.Errorf("6 in back of its landmark B2 stands %.4f m on, %.4f m higher", now-was, still-high)
	}
	for typed, want := range map[string]int{"6": 422, "soon": 422} {
		if w := ask(t, h, "POST", demoPage+"/holes", from("2", typed, "back", "58 in").Encode()); w.Code != want {
			t.Errorf("offset %q: %d, expected %d", typed, w.Code, want)
		}
	}
	says(t, ask(t, h, "POST", demoPage+"/holes", from("2", "6 in", "back", "58 in").Encode()), 422, "Type another place")
}

// TestOldVersionIsOnlyRead: who may only look is offered nothing to change.
func TestOldVersionIsOnlyRead(t *testing.T) {
	muchComputed(t)
	now := ask(t, exampleDesk(t).Handler(), "GET", demoPage, "").Body.String()
	if !strings.Contains(now, "data-hands") {
		t.Fatal("a planner has no hands")
	}
	h, _, _ := ownDesk(t, false)
	if w := ask(t, h, "POST", demoPage+"/holes", "base=1&hole=B2&act=right"); w.Code != http.StatusSeeOther {
		t.Fatalf("%d", w.Code)
	}
	page := ask(t, h, "GET", demoPage+"?version=1", "").Body.String()
	for _, none := range []string{"data-hands", "data-adding", "data-undo", "data-fine", "Type its exact place"} {
		if strings.Contains(page, none) {
			t.Errorf("an old version offers %s", none)
		}
	}
}

// TestReachMapHasItsLegend: the shades of the reach map are those of the style sheet's
// legend, each darker than the one before, so that they read without colour.
func TestReachMapHasItsLegend(t *testing.T) {
	w := ask(t, exampleDesk(t).Handler(), "GET", demoPage+"/reach.png?hole=B2&lens=70-200&version=1", "")
	img, err := png.Decode(w.Body)
	if err != nil {
		t.Fatal(err)
	}
	css, err := assetFiles.ReadFile("assets/drawing.css")
	if err != nil {
		t.Fatal(err)
	}
	shades, last := img.(*image.Paletted).Palette[3:], 2.0
	for i, c := range shades {
		r, g, b, _ := c.RGBA()
		hex := fmt.Sprintf("#%02x%02x%02x", r>>8, g>>8, b>>8)
		if want := fmt.Sprintf(".size-%d { background: %s; }", i+1, hex); !strings.Contains(string(css), want) {
			t.Errorf("the style sheet lacks %s", want)
		}
		if l := luminance(hex); l >= last*0.8 {
			t.Errorf("%s is hardly darker than the shade before", hex)
		} else {
			last = l
		}
	}
	if len(shades) != 5 {
		t.Errorf("%d shades", len(shades))
	}
}

// smallWords are the words on the drawings that are seen smaller than 11 px, as seen.
const smallWords = `Array.from(document.querySelectorAll(":is(.map, .strip) text")).filter((e) => e.checkVisibility({ visibilityProperty: true }))
	.map((e) => [e.textContent, parseFloat(getComputedStyle(e).fontSize) * e.ownerSVGElement.getScreenCTM().a])
	.filter(([, px]) => px < 10.9).map(([text, px]) => text + " " + px.toFixed(1))`

// TestOneSurface: at 1440 x 900 map, strip and inspector stand in the window at once, words
// are large enough at any size, and keys do what the list of keys says.
func TestOneSurface(t *testing.T) {
	t.Parallel()
	v := visitAt(t, openOwn(t), 1440, 900, "light")
	v.open(demoPage + "?hole=A4")
	for _, part := range []string{`[data-drawing="map"]`, `[data-drawing="strip"]`, ".inspector", ".peek img", "[data-picks]", "[data-undo]", ".verdict"} {
		if bottom := eval[float64](v, fmt.Sprintf(`document.querySelector(%q).getBoundingClientRect().bottom`, part)); bottom > 900 {
			t.Errorf("%s ends at %.0f px, below the window", part, bottom)
		}
	}
	words := func() {
		t.Helper()
		if small := eval[[]string](v, smallWords); len(small) > 0 {
			t.Errorf("words too small to read: %v", small)
		}
	}
	v.waitFor(`document.querySelector(".map").style.getPropertyValue("--mm") !== ""`)
	words()
	v.do(chromedp.KeyEvent("+"), chromedp.KeyEvent("+"))
	v.waitFor(`document.querySelector(".map.near") !== null`)
	words()
	v.do(chromedp.KeyEvent("0"))
	v.waitFor(`document.querySelector(".map.near") === null`)

	// A4 stands on the box side, where stations fall to the right.
	before := v.stationOf("A4")
	v.do(chromedp.Focus(`[data-drawing="map"] a:has([data-hole="A4"])`), chromedp.KeyEvent(kb.ArrowRight))
	v.waitFor(baseNow + ` === 2`)
	if moved := v.stationOf("A4") - before; math.Abs(moved+0.0254) > 0.002 {
		t.Errorf("an arrow to the right moved A4 by %.4f m of its station, expected an inch less", moved)
	}
	v.do(chromedp.KeyEvent("?"))
	v.waitFor(`document.querySelector("dialog.keys").open`)
	v.do(chromedp.KeyEvent(kb.Escape))
	v.waitFor(`!document.querySelector("dialog.keys").open`)
	v.do(chromedp.KeyEvent(kb.Delete))
	v.waitFor(baseNow + ` === 3 && document.querySelector('[data-hole="A4"]') === null`)
	v.do(chromedp.KeyEvent("z", chromedp.KeyModifiers(chromedp.ModifierCtrl)))
	v.waitFor(baseNow + ` === 4 && document.querySelector('[data-hole="A4"]') !== null`)
	v.do(chromedp.KeyEvent(kb.Escape))
	v.waitFor(`document.querySelector("[data-picked]") === null`)

	// A fine drag goes an eighth as far.
	v.do(chromedp.Click("[data-fine]"))
	before = v.stationOf("B2")
	perPixel := eval[float64](v, `(() => { const b = document.querySelector(".map"); return 1 / (b.querySelector("svg").getScreenCTM().a * b.dataset.scale); })()`)
	v.drag(v.middleOf(markOf("map", "B2")), 40, 0, nil)
	v.waitFor(baseNow + ` === 5`)
	if moved := v.stationOf("B2") - before; math.Abs(moved-5*perPixel) > 0.02 {
		t.Errorf("40 px of a fine drag moved B2 by %.3f m, expected %.3f", moved, 5*perPixel)
	}
	v.size(390, 844)
	v.waitFor(`Number(document.querySelector(".map").style.getPropertyValue("--mm")) > .5`)
	words()
}
