package desk

import (
	"crypto/rand"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"example.org/rinkpane/internal/keep/people"
)

// planKnown says that the page has read the plan, which a drag begins with.
const planKnown = `performance.getEntriesByType("resource").some((e) => e.name.includes("/api/arenas/quillhaven?version="))`

// unsentNote is what the page says of what is not sent yet.
const unsentNote = `(document.querySelector("[data-note=unsent] p")?.textContent ?? "")`

// TestDragsWithoutNetworkAreKept: with the line cut, drags say at once that they are
// not saved, and survive the page; when the line is back they arrive in order, each
// once, even where the desk saved one whose answer never came.
func TestDragsWithoutNetworkAreKept(t *testing.T) {
	needsBrowser(t)
	t.Parallel()
	h, d, _ := ownDesk(t, false)
	var cut, mute atomic.Bool
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if cut.Load() && r.Method == http.MethodPost {
			panic(http.ErrAbortHandler) // the line is cut
		}
		h.ServeHTTP(w, r)
		if mute.Load() && r.Method == http.MethodPost {
			panic(http.ErrAbortHandler)
		}
	}))
	t.Cleanup(server.Close)
	v := visitAt(t, server.URL, 1280, 900, "light")
	v.forgive("net::ERR_EMPTY_RESPONSE")
	v.open(demoPage + "?hole=B2")
	was := map[string]float64{"B2": v.stationOf("B2"), "A4": v.stationOf("A4")}
	v.waitFor(planKnown)
	cut.Store(true)
	v.drag(v.middleOf(markOf("map", "B2")), -30, 0, nil)
	v.waitFor(unsentNote + `.startsWith("Not saved yet: move B2. The desk does not answer.")`)
	v.drag(v.middleOf(markOf("map", "A4")), 30, 0, nil)
	v.waitFor(unsentNote + `.includes("move B2, move A4")`)
	v.open(demoPage) // another page, and the browser still has them
	v.waitFor(unsentNote + `.includes("move B2, move A4")`)
	v.checkRules("what is not sent", axe(t))
	cut.Store(false)
	mute.Store(true)                                                                                           // the desk saves, and the answer is lost
	v.waitFor(`((b) => b !== null && (b.click(), true))(document.querySelector("[data-note=unsent] button"))`) // the note may be drawn anew
	v.waitFor(unsentNote + `.includes("move B2")`)
	mute.Store(false)
	v.waitFor(`document.querySelector("[data-note=unsent]") === null && ` + baseNow + ` === 3`)
	for hole, before := range was {
		if v.stationOf(hole) == before {
			t.Errorf("%s stands where it was", hole)
		}
	}
	versions, err := d.shell.Shelf.Keeper().History(t.Context(), "quillhaven", 10)
	if err != nil || len(versions) != 3 || !strings.Contains(versions[0].What, "A4") || !strings.Contains(versions[1].What, "B2") {
		t.Errorf("saved as %+v, %v", versions, err)
	}
}

// TestDragsWithoutSessionAreKept: after the session has ended a drag says so and
// waits; signed in again it is saved, and nobody else sends it.
func TestDragsWithoutSessionAreKept(t *testing.T) {
	needsBrowser(t)
	t.Parallel()
	h, _, s := ownDesk(t, true)
	const word = "over the red line"
	hash, err := people.Hash(word, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"Ada", "Bo"} {
		if err := s.Alter(t.Context(), people.Adding(people.Person{Name: name, Role: people.Planner, Password: hash, Since: time.Now()}), people.Entry{}); err != nil {
			t.Fatal(err)
		}
	}
	server := httptest.NewServer(h)
	t.Cleanup(server.Close)
	v := visitAt(t, server.URL, 1280, 900, "dark")
	v.forgive(http.StatusUnauthorized)
	enter := func(name, back string) {
		v.open("/sign-in?back=" + back)
		v.do(chromedp.SetValue(`[name="name"]`, name), chromedp.SetValue(`[name="password"]`, word), chromedp.Click(`main button`))
		v.waitFor(`document.querySelector(".who a")?.textContent === "` + name + `"`)
	}
	enter("Ada", demoPage)
	was := v.stationOf("B2")
	v.waitFor(planKnown)
	if err := s.CloseSessions(t.Context(), "Ada"); err != nil {
		t.Fatal(err)
	}
	v.drag(v.middleOf(markOf("map", "B2")), -30, 0, nil)
	v.waitFor(unsentNote + `.includes("Your session has ended.")`)
	enter("Bo", demoPage)
	v.waitFor(unsentNote + `.includes("They are Ada's")`)
	enter("Ada", demoPage)
	v.waitFor(`document.querySelector("[data-note=unsent]") === null && ` + baseNow + ` === 2`)
	if v.stationOf("B2") == was {
		t.Error("B2 stands where it was")
	}
}
