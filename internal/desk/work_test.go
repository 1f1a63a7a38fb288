package desk

import (
	"fmt"
	"math"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/survey/starter"
)

// TestTwoBrowsersMergeTheirMoves lets two people move holes of one arena: each sees
// the other's save live and named by what it did; different holes moved from the same
// version are merged without a page in between, and the same hole asks in words.
func TestTwoBrowsersMergeTheirMoves(t *testing.T) {
	t.Parallel()
	base := openOwn(t)
	one, two := visitAt(t, base, 1280, 900, "dark"), visitAt(t, base, 1280, 900, "light")
	two.forgive(409)
	one.open(demoPage + "?hole=B2")
	two.open(demoPage + "?hole=A4")
	a4 := two.stationOf("A4")
	one.drag(one.middleOf(markOf("map", "B2")), -30, 0, nil)
	one.waitFor(baseNow + ` === 2`)
	b2 := one.stationOf("B2")
	two.waitFor(baseNow + ` === 2 && document.querySelector("[data-note=saved] p").textContent.includes("move B2")`)
	if got := two.stationOf("B2"); got != b2 {
		t.Errorf("the second sees B2 at %.3f, it is at %.3f", got, b2)
	}
	// As if the second had not heard: the form of an older version.
	const older = `(document.querySelector("[data-plan]").dataset.base = "1", true)`
	eval[bool](two, older)
	two.drag(two.middleOf(markOf("map", "A4")), 30, 0, nil)
	two.waitFor(baseNow + ` === 3`)
	if got := two.stationOf("B2"); got != b2 {
		t.Errorf("the first one's move is lost: B2 at %.3f, expected %.3f", got, b2)
	}
	if got := two.stationOf("A4"); got == a4 {
		t.Error("the second one's move is lost")
	}
	eval[bool](two, older)
	two.drag(two.middleOf(markOf("map", "B2")), 30, 0, nil)
	two.waitFor(`document.querySelector("[data-conflict]") !== null`)
	if said := eval[string](two, `document.querySelector("main").textContent`); !strings.Contains(said, "You both changed hole B2") || !strings.Contains(said, "move B2") {
		t.Errorf("the second is not told what the first did: %.300s", said)
	}
	eval[bool](two, `document.querySelector('form[action$="/holes"]').requestSubmit(), true`)
	two.waitFor(`document.querySelector("[data-plan]") !== null && ` + baseNow + ` === 4`)
	if got := two.stationOf("B2"); got == b2 {
		t.Error("the second one's move on top is lost")
	}
}

// forgive takes the browser's note about one status, or one fault of the line, for no trouble.
func (v *visitor) forgive(what any) {
	v.mu.Lock()
	defer v.mu.Unlock()
	v.forgiven = fmt.Sprint(what)
}

// TestExportComesBackTheSame takes the document away after a change and brings it
// back: the same text, to the byte.
func TestExportComesBackTheSame(t *testing.T) {
	muchComputed(t)
	h, _, _ := ownDesk(t, false)
	if w := ask(t, h, "POST", demoPage+"/holes", "base=1&hole=B2&act=right"); w.Code != 303 {
		t.Fatalf("moving: %d %.300s", w.Code, w.Body)
	}
	first := ask(t, h, "GET", "/api/arenas/quillhaven/text", "").Body.String()
	if !strings.Contains(first, "# Panes in station order") || !strings.Contains(first, "offset: -1 in") {
		t.Fatal("the export lacks a comment or the move")
	}
	if w := fillIn(t, h, "/import", map[string]string{"file": first, "text": first, "as": "new"}); w.Code != 303 {
		t.Fatalf("importing: %d %.300s", w.Code, w.Body)
	} else if again := ask(t, h, "GET", "/api"+strings.Replace(w.Header().Get("Location"), "/arena/", "/arenas/", 1)+"/text", "").Body.String(); again != first {
		t.Errorf("what came back has %d bytes, sent were %d", len(again), len(first))
	}
}

// mostFirstBytes is the most that the first page may cost in all, compressed.
const mostFirstBytes = 90_000

// TestFirstPageIsSmall adds up everything that a newcomer's browser fetches, as it
// comes over the wire.
func TestFirstPageIsSmall(t *testing.T) {
	v := visit(t, 1280, 900, "dark")
	v.open("/")
	v.waitFor(`document.readyState === "complete" && document.fonts.status === "loaded"`)
	sizes := eval[[]float64](v, `[...performance.getEntriesByType("navigation"), ...performance.getEntriesByType("resource")]
		.filter((e) => e.initiatorType !== "fetch").map((e) => e.encodedBodySize)`)
	sum := 0.0
	for _, n := range sizes {
		sum += n
	}
	if len(sizes) < 10 || sum > mostFirstBytes || sum < 10_000 {
		t.Errorf("%d files of %.0f bytes in all, expected under %d", len(sizes), sum, mostFirstBytes)
	}
	if paint := eval[float64](v, `performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? -1`); paint > 0 {
		t.Logf("first page: %.0f bytes compressed in %d files, painted after %.0f ms", sum, len(sizes), paint)
	}
}

// TestModulesAreAskedForAtOnce: the page names every module that its first one needs.
func TestModulesAreAskedForAtOnce(t *testing.T) {
	v := visit(t, 1280, 900, "dark")
	v.open(demoPage)
	late := eval[[]string](v, `performance.getEntriesByType("resource").filter((e) => e.name.endsWith(".js"))
		.map((e) => e.name).filter((name) => !document.querySelector('link[rel="modulepreload"][href="' + new URL(name).pathname + '"], script[src="' + new URL(name).pathname + '"]'))`)
	if n := eval[int](v, `document.querySelectorAll('link[rel="modulepreload"]').length`); n < 15 || len(late) > 0 {
		t.Errorf("%d modules are named, not %v", n, late)
	}
}

// TestHandsWithoutAScript does with plain forms what hands do with modules.
func TestHandsWithoutAScript(t *testing.T) {
	muchComputed(t)
	h, _, _ := ownDesk(t, false)
	post := func(form string) *httptest.ResponseRecorder {
		return ask(t, h, "POST", demoPage+"/holes", form)
	}
	for i, c := range []struct{ form, leadsTo, says string }{
		{"base=1&hole=B2&act=right&back=hole%3DB2", "hole=B2", "1 in back"},
		{"base=2&hole=B2&act=pane-right&back=", "", "B2"},
		{"base=3&hole=B2&act=up&back=", "", "4 ft 11 in"},
		{"base=4&hole=B2&act=off&back=hole%3DB2", "hole=B2", "turned off"},
		{"base=5&hole=B2&act=on&back=hole%3DB2", "hole=B2", "Turn off"},
		{"base=6&hole=B2&act=copy&back=hole%3DB2", "hole=B5", "Hole B5"},
		{"base=7&hole=B5&act=delete&back=hole%3DB5", "", "Tidewater"},
		{"base=8&act=add&station_m=12.8016&as=X1&back=", "hole=X1", "Hole X1"},
	} {
		w := post(c.form)
		if to := w.Header().Get("Location"); w.Code != 303 || !strings.Contains(to, c.leadsTo) {
			t.Fatalf("%d: %s: %d to %q: %.400s", i, c.form, w.Code, to, w.Body)
		}
		says(t, ask(t, h, "GET", w.Header().Get("Location"), ""), 200, c.says)
	}
	for form, status := range map[string]int{
		"base=9&hole=none&act=up&back=": 422, "base=9&hole=A1&act=fly&back=": 422, "base=&hole=A1&act=up": 400,
		"base=99&hole=A1&act=up": 404, "base=9&act=add&station_m=soon": 422, "base=9&hole=A1&act=place&station_m=x": 422,
		"base=1&hole=B2&act=up&back=": 409, "base=9&act=add&station_m=12.8016&as=X1": 422,
	} {
		if w := post(form); w.Code != status {
			t.Errorf("%s: %d, expected %d", form, w.Code, status)
		}
	}
}

// TestNudgeIsAsLongAsTheButtonSays presses "10 mm" on a document in inches.
func TestNudgeIsAsLongAsTheButtonSays(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	const back = "hole=B2&units=metric"
	says(t, ask(t, h, "GET", demoPage+"?"+back, ""), 200, `title="Right by 10 mm"`)
	station := func() float64 {
		b, err := d.shell.Shelf.Open(t.Context(), "quillhaven", 0)
		if err != nil {
			t.Fatal(err)
		}
		a, err := b.Arena.Check()
		if err != nil {
			t.Fatal(err)
		}
		hole, _ := a.Hole("B2")
		return hole.Station.Millimetres()
	}
	before := station()
	w := ask(t, h, "POST", demoPage+"/holes", "base=1&hole=B2&act=right&back="+url.QueryEscape(back))
	if w.Code != 303 {
		t.Fatalf("%d %.300s", w.Code, w.Body)
	}
	if moved := station() - before; math.Abs(moved-10) > 0.8 { // the document keeps sixteenths of an inch
		t.Errorf("the button that says 10 mm moved the hole by %.2f mm", moved)
	}
}

// TestSurveyForms fills in parts of the survey, rightly and wrongly.
func TestSurveyForms(t *testing.T) {
	h, d, _ := ownDesk(t, false)
	addRows(t, d)
	form := func(part string, fields url.Values) *httptest.ResponseRecorder {
		return ask(t, h, "POST", demoPage+"/survey/"+part, fields.Encode())
	}
	w := form("boards", url.Values{"base": {"1"}, "height": {"41"}, "ledge": {"9 in"}, "setback": {"1 1/2 in"}})
	says(t, w, 422, "needs its unit", `value="41"`, `aria-invalid="true"`)
	if w = form("boards", url.Values{"base": {"1"}, "height": {"41 in"}, "ledge": {"9 in"}, "setback": {"1 1/2 in"}}); w.Code != 303 {
		t.Fatalf("a sound answer: %d %.400s", w.Code, w.Body)
	}
	says(t, ask(t, h, "GET", demoPage+"/survey/boards", ""), 200, `value="41 in"`)
	if w = form("light", url.Values{"base": {"2"}, "x": {"3 ft"}, "y": {"-4 ft"}, "light": {"1100 lx"}}); w.Code != 303 {
		t.Fatalf("a new reading: %d %.400s", w.Code, w.Body)
	}
	if w = form("zones", url.Values{"base": {"3"}, "item": {"zones[first-aid]"}, "act": {"remove"}}); w.Code != 303 {
		t.Fatalf("removing a zone: %d %.400s", w.Code, w.Body)
	}
	says(t, form("zones", url.Values{"base": {"4"}, "item": {"zones[first-aid]"}, "act": {"remove"}}), 404)
	says(t, ask(t, h, "GET", demoPage+"/survey/holes?item=holes%5BB1%5D", ""), 200, "Hole B1</h3>")
	says(t, ask(t, h, "GET", demoPage+"/survey/light?item=light.readings%5B%233%5D", ""), 200, "Reading 3</h3>")
	// A row of equal panes, one of them changed by itself: it gets a line of its own.
	if w = form("panes", url.Values{"base": {"4"}, "item": {"panes[P020]"}, "id": {"P020"}, "width": {"46 in"}, "curved": {"yes"}, "height": {"8 ft"}, "count": {"1"}}); w.Code != 303 {
		t.Fatalf("a pane of another width: %d %.400s", w.Code, w.Body)
	}
	says(t, ask(t, h, "GET", "/arena/rows/survey/panes", ""), 200, "P004 to P011")
	says(t, ask(t, h, "GET", "/arena/rows/survey/panes?item=panes%5BP004%5D", ""), 200, "Panes P004 to P011", "To change one of them alone", ">P007</a>")
	const seventh = "/arena/rows/survey/panes?item=panes%5BP007%5D"
	says(t, ask(t, h, "GET", seventh, ""), 200, "Pane P007", `value="1.2 m"`)
	w = ask(t, h, "POST", "/arena/rows/survey/panes", url.Values{"base": {"1"}, "item": {"panes[P007]"}, "one": {"yes"}, "id": {"P007"}, "width": {"1.1 m"}}.Encode())
	if w.Code != 303 {
		t.Fatalf("one pane of a row: %d %.400s", w.Code, w.Body)
	}
	says(t, ask(t, h, "GET", "/arena/rows/survey/panes", ""), 200, "P004 to P006", "P008 to P011")
	says(t, ask(t, h, "GET", demoPage+"/survey/nothing", ""), 404)
	says(t, ask(t, h, "GET", demoPage+"/survey/panes?item=panes%5Bnone%5D", ""), 404)
}

// addRows puts an arena whose panes are told in rows on the desk.
func addRows(t *testing.T, d *Desk) {
	t.Helper()
	r, err := rink.Standard(rink.International)
	if err != nil {
		t.Fatal(err)
	}
	text, _, err := starter.Begin(starter.Layout{Rink: r, Standard: rink.International, Pane: 1.2 * unit.Metre, Units: unit.Metric})
	if err != nil {
		t.Fatal(err)
	}
	doc, err := d.shell.Shelf.Read("rows", string(text))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := d.shell.Shelf.Add(t.Context(), "rows", doc, "test", "begun"); err != nil {
		t.Fatal(err)
	}
}
