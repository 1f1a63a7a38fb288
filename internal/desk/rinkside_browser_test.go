package desk

import (
	"context"
	"net/http"
	"net/http/httptest"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"example.org/rinkpane/internal/decide/custody"
)

// ownPhone starts a browser with a profile that outlives it, and opens a phone's tab.
func ownPhone(t *testing.T, profile, base string) *visitor {
	t.Helper()
	flags := append(chromedp.DefaultExecAllocatorOptions[:], chromiumFlags(profile)...)
	ctx, stop := chromedp.NewExecAllocator(context.Background(), flags...)
	t.Cleanup(stop)
	ctx, _ = chromedp.NewContext(ctx) // it is ended by shut, or by the allocator
	ctx, end := context.WithTimeout(ctx, browserPatience)
	t.Cleanup(end)
	v := &visitor{t: t, ctx: ctx, base: base}
	v.size(360, 800)
	return v
}

// shut ends the browser as a person does, so that it writes down what it keeps.
func (v *visitor) shut() {
	v.t.Helper()
	if err := chromedp.Cancel(v.ctx); err != nil {
		v.t.Fatal(err)
	}
}

// cut takes the network away from the tab and its service worker, or gives it back.
func (v *visitor) cut(away bool) {
	v.t.Helper()
	whole := network.EmulateNetworkConditionsByRuleParams{EmulateOfflineServiceWorker: &away}
	if away {
		whole.MatchedNetworkConditions = []*network.Conditions{{Offline: true, DownloadThroughput: -1, UploadThroughput: -1}}
	}
	state := network.OverrideNetworkStateParams{Offline: away, DownloadThroughput: -1, UploadThroughput: -1}
	_, err := chromedp.Call(v.ctx, network.EmulateNetworkConditionsByRule, whole)
	if err == nil {
		_, err = chromedp.Call(v.ctx, network.OverrideNetworkState, state)
	}
	if err != nil {
		v.t.Fatal(err)
	}
}

// coverSays is what the page shows of a cover.
func coverSays(id, words string) string {
	return `document.querySelector('[data-key="` + id + `"] .tap')?.textContent.includes("` + words + `")`
}

// postSays is what the page says of marks that are not sent.
func postSays(words string) string {
	return `document.querySelector("[data-post]").textContent.includes("` + words + `")`
}

// TestMarksOutliveNetworkReloadAndRestart: with the network cut, what is tapped waits
// on the phone through a reload and a restart of the browser, the page opens without a
// network and says what is not sent; once the network is back each mark is kept once,
// in order, and the page shows what others marked meanwhile.
func TestMarksOutliveNetworkReloadAndRestart(t *testing.T) {
	t.Parallel()
	needsBrowser(t)
	h, _, s := ownDesk(t, false)
	var away atomic.Bool // at the desk, too: a tab that closes is given its network back before it is gone
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if away.Load() {
			panic(http.ErrAbortHandler)
		}
		h.ServeHTTP(w, r)
	}))
	t.Cleanup(func() { server.CloseClientConnections(); server.Close() })
	cut := func(v *visitor, is bool) {
		away.Store(is)
		v.cut(is)
	}
	labelled(t, h, "A1", "B1", "B2")
	profile := t.TempDir()
	tap := func(v *visitor, selector string) { v.do(chromedp.ScrollIntoView(selector), chromedp.Tap(selector)) }

	v := ownPhone(t, profile, server.URL)
	v.open(phonePath)
	v.waitFor(postSays("All sent") + ` && !!navigator.serviceWorker.controller && ` + coverSays("B1-1", "in"))
	v.waitFor(`document.querySelectorAll(".tap").length === 3`)
	small := eval[[]string](v, `[...document.querySelectorAll("button, .foot a")].filter((b) => b.checkVisibility()).map((b) => [b.textContent.trim(), b.getBoundingClientRect().height])
		.filter(([_, h]) => h < 56).map(String)`)
	if len(small) > 0 || eval[bool](v, `[...document.querySelectorAll(".tap")].some((b) => b.getBoundingClientRect().height < 64)`) {
		t.Errorf("too small for a glove: %q", small)
	}
	kept := `caches.open("glass pages").then((c) => c.keys()).then((k) => k.map((r) => new URL(r.url).pathname))`
	for end := time.Now().Add(patience); len(awaited(v, kept)) == 0 && // the worker keeps the page once it has taken over
		time.Now().Before(end); {
		time.Sleep(waitStep)
	}

	cut(v, true)
	tap(v, `[data-key="B1-1"] .tap`)
	v.waitFor(coverSays("B1-1", "out") + ` && ` + coverSays("B1-1", "not sent") + ` && ` + postSays("1 mark not sent yet: no network"))
	tap(v, `[data-key="A1-1"] .tap`)
	v.waitFor(coverSays("A1-1", "out") + ` && ` + postSays("2 marks not sent"))
	tap(v, `[data-undo]`)
	v.waitFor(coverSays("A1-1", "in") + ` && ` + postSays("3 marks not sent"))
	v.open(phonePath)
	v.waitFor(postSays("3 marks not sent yet: no network") + ` && ` + coverSays("B1-1", "out"))
	v.shut()

	v = ownPhone(t, profile, server.URL)
	cut(v, true)
	v.open(phonePath)
	v.waitFor(postSays("3 marks not sent yet: no network") + ` && ` + coverSays("B1-1", "out"))
	took := eval[float64](v, `performance.getEntriesByName("covers shown")[0].startTime`)
	t.Logf("offline the covers were shown %.0f ms after opening", took)
	other := telephone{device: "000000000000000b"}
	other.send(t, h, phonePath, other.line(0, "", custody.Moved{Cover: "B2-1", State: custody.Missing}))
	if events, err := s.Since(t.Context(), "quillhaven", 0, 100); err != nil || len(events) != 7 {
		t.Errorf("%d events are kept while the network is away, expected six of the labels and the other phone's: %v", len(events), err)
	}
	cut(v, false)
	v.waitFor(postSays("All sent") + ` && ` + coverSays("B2-1", "missing") + ` && ` + coverSays("B1-1", "out"))
	const boundSays = `document.querySelector("[data-bound]").checkVisibility() && document.querySelector("[data-bound]").textContent`
	if eval[bool](v, `!!(`+boundSays+`)`) {
		t.Error("a phone that opens the page without a network is told that it cannot")
	}
	for lacks, says := range map[string]string{ // without https, and in a private window
		`Object.defineProperty(window, "isSecureContext", { value: false })`:                    "its address begins with http. Ask whoever runs the desk for an address that begins with https.",
		`Object.defineProperty(Navigator.prototype, "serviceWorker", { get: () => undefined })`: "this browser keeps no pages here.",
	} {
		added, err := chromedp.Call(v.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: lacks})
		if err != nil {
			t.Fatal(err)
		}
		v.open(phonePath)
		v.waitFor(boundSays + `.includes("` + says + `")`)
		if _, err := chromedp.Call(v.ctx, page.RemoveScriptToEvaluateOnNewDocument, page.RemoveScriptToEvaluateOnNewDocumentParams(added)); err != nil {
			t.Fatal(err)
		}
	}
	v.shut()

	events, err := s.Since(t.Context(), "quillhaven", 7, 100)
	if err != nil || len(events) != 3 {
		t.Fatalf("%d events came of three marks: %v", len(events), err)
	}
	for i, want := range []string{"cover", "cover", "withdrawn"} {
		if kind, _ := custody.Encode(events[i].Fact); kind != want || i > 0 && events[i].ID <= events[i-1].ID {
			t.Errorf("event %d: %s %s, expected %s in the order of the marks", i, events[i].ID, kind, want)
		}
	}
	if got := covers(t, h, phonePath); got["B1-1"] != "out" || got["A1-1"] != "in" || got["B2-1"] != "missing" {
		t.Errorf("the desk's board: %v", got)
	}
}
