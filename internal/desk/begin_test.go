package desk

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// TestBeginAnArena lays a rink of 60 m by 26 m out, mends what is wrong, keeps it,
// and reads what is missing, guessed and doubtful.
func TestBeginAnArena(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	says(t, ask(t, h, "GET", "/arenas", ""), 200, `href="/new">New arena</a>`)
	says(t, ask(t, h, "GET", "/new", ""), 200, "Name of the rink", "60 m by 26 m", "Lay it out")
	fields := map[string]string{"name": "Narrow & Co", "size": "60x26", "panes": "126 windows", "act": "look"}
	says(t, fillIn(t, h, "/new", fields), 422, "part 1", "126 windows", "not understood; write as in", `value="Narrow &amp; Co"`)
	fields["panes"] = "126 panes of 1.2 m, 1.8 m at the ends, gates at 41.4 m"
	says(t, fillIn(t, h, "/new", fields), 200, "This is how it looks", "60 m by 26 m, corners of 7.4 m", "every rule is kept", "You said 126 panes", "Keep this arena", "<svg")
	fields["size"], fields["length"], fields["width"] = "own", "58", "27 m"
	says(t, fillIn(t, h, "/new", fields), 422, "Length: length", "a bare number")
	fields["length"] = "58 m"
	says(t, fillIn(t, h, "/new", fields), 200, "58 m by 27 m", "in proportion to")
	fields["size"], fields["panes"], fields["file"] = "60x26", "", "id,width\nP1,48\n"
	says(t, fillIn(t, h, "/new", fields), 422, "list:2:4: width: length", "P1,48\n</textarea>")
	fields["file"] = "width mm,count\n1200,20\n"
	says(t, fillIn(t, h, "/new", fields), 200, "20 panes", "their source is a drawing")
	delete(fields, "file")
	fields["panes"], fields["act"], fields["name"] = "1.2 m", "keep", ""
	says(t, fillIn(t, h, "/new", fields), 422, "Name:")
	fields["name"] = "Narrow Hall"
	w := fillIn(t, h, "/new", fields)
	if w.Code != 303 || w.Header().Get("Location") != "/arena/narrow-hall/survey" {
		t.Fatalf("%d %s %.300s", w.Code, w.Header().Get("Location"), w.Body)
	}
	says(t, ask(t, h, "GET", "/arena/narrow-hall/survey", ""), 200, "Missing, and what it costs", "boards: ledge", "Where the numbers come from", "Guessed, and what that costs", "/arena/narrow-hall/survey/boards")
	says(t, ask(t, h, "GET", "/arena/narrow-hall", ""), 200, "every rule is kept")
	b, err := d.shell.Shelf.Open(t.Context(), "narrow-hall", 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.Arena.Check(); err != nil || !strings.Contains(string(b.Arena.Bytes()), "source: guess") {
		t.Errorf("%v", err)
	}
	// A slip of the pen is told, with the way to its form.
	zone := "base=1&item=&id=tiny&kind=bench&from=33+ft&from.from=station&to=424+in&to.from=station&source=measured&back=map"
	if w := ask(t, h, "POST", "/arena/narrow-hall/survey/zones", zone); w.Code != 303 || w.Header().Get("Location") != "/arena/narrow-hall/survey/map" {
		t.Fatalf("%d %s %.300s", w.Code, w.Header().Get("Location"), w.Body)
	}
	says(t, ask(t, h, "GET", "/arena/narrow-hall/survey", ""), 200, "Likely a slip of the pen", "feet written as inches", "item=zones%5Btiny%5D")
}

// TestMarkOnTheMap marks a zone by two taps and a reading by the keyboard; both are
// saved as versions.
func TestMarkOnTheMap(t *testing.T) {
	t.Parallel()
	v := visitAt(t, openOwn(t), 1280, 900, "dark")
	v.open(demoPage + "/survey/map")
	v.waitFor(`document.querySelector(".marked") !== null`)
	eval[bool](v, `document.querySelector("[data-board]").scrollIntoView({ block: "center" }), true`)
	tap := func(x, y float64) {
		at := eval[[]float64](v, fmt.Sprintf(`(() => { const root = document.querySelector("[data-marking]"), k = Number(root.dataset.scale);
			const p = new DOMPoint(Number(root.dataset.x) + k * %g, Number(root.dataset.y) - k * %g).matrixTransform(document.querySelector("[data-board] svg").getScreenCTM());
			return [p.x, p.y]; })()`, x, y))
		v.do(chromedp.MouseClickXY(at[0], at[1]))
	}
	field := func(form, name string) string {
		return eval[string](v, fmt.Sprintf(`document.querySelector('[data-for=%q] [name=%q]').value`, form, name))
	}
	tap(9.2, -12)
	v.waitFor(`document.querySelector('[data-for="zone"] [name="from"]').value !== ""`)
	tap(14.1, -12)
	v.waitFor(`document.querySelector('[data-for="zone"] [name="to"]').value !== ""`)
	if from, to := field("zone", "from"), field("zone", "to"); !strings.HasPrefix(from, "29 ft") && !strings.HasPrefix(from, "30 ft") || !strings.HasPrefix(to, "46 ft") { // a pixel is 3 in
		t.Errorf("from %s to %s", from, to)
	}
	v.do(chromedp.SetValue(`[data-for="zone"] select[name="kind"]`, "keep-out"), chromedp.Click(`[data-for="zone"] [value="save"]`))
	v.waitFor(`document.body.textContent.includes("zone-2") || document.querySelector('[data-for="zone"] [name="id"]')?.value === "zone-2"`)
	v.waitFor(`document.querySelector(".marked") !== null`)
	v.do(chromedp.Click(`[name="mode"][value="light"]`), chromedp.Focus("[data-board]"))
	v.do(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.Enter))
	v.waitFor(`document.querySelector('[data-for="light"] [name="x"]').value === "1 ft"`)
	if y := field("light", "y"); y != "2 ft" {
		t.Errorf("y %s", y)
	}
	v.do(chromedp.SendKeys(`[data-for="light"] [name="light"]`, "990 lx"), chromedp.Click(`[data-for="light"] [value="save"]`))
	v.waitFor(`document.readyState === "complete" && document.querySelector('[data-for="light"] [name="light"]')?.value === ""`)
	if n := eval[int](v, `Number(document.querySelector('[name="base"]').value)`); n != 3 {
		t.Errorf("version %d after two marks, expected 3", n)
	}
}
