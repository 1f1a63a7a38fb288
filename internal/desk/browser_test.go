package desk

import (
	"context"
	"fmt"
	"net/http/httptest"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// chromiumPath is Debian's browser without windows of its own, which takes half the work
// of the whole one; scripts/need installs it.
const chromiumPath = "/usr/bin/chromium-headless-shell"

// missingPage is an address that leads to no page, opened on purpose.
const missingPage = "/nothing"

// browserPatience bounds a tab, which may look at every page, patience whatever a
// test waits for: long, since under the race detector on a busy machine an answer that takes
// half a second on an idle one has taken eleven.
const (
	browserPatience = 15 * time.Minute
	patience        = time.Minute
)

// waitStep is how often a page is asked.
const waitStep = 15 * time.Millisecond

// visitor is a browser's tab on a desk of the example arenas. It remembers what
// went wrong and what was asked of whom.
type visitor struct {
	t    *testing.T
	ctx  context.Context
	base string

	mu       sync.Mutex
	troubles []string // console errors, exceptions, refused policies
	requests []string
	forgiven string // in the browser's note: a status that the test means to meet
}

// visit opens a tab of the given width and height in CSS pixels. The test
// fails at its end when the page reported an error or asked another server.
func visit(t *testing.T, width, height int64, scheme string) *visitor {
	t.Helper()
	needsBrowser(t)
	return visitAt(t, open(t, exampleDesk(t)), width, height, scheme)
}

// open serves a desk for a test and returns its address.
func open(t *testing.T, d *Desk) string {
	t.Helper()
	server := httptest.NewServer(d.Handler())
	t.Cleanup(server.Close)
	return server.URL
}

// visitAt opens a tab on a desk that is served already.
func visitAt(t *testing.T, base string, width, height int64, scheme string) *visitor {
	t.Helper()
	ctx := newTab(t)
	v := &visitor{t: t, ctx: ctx, base: base}
	if err := chromedp.Listen(ctx, v.listen); err != nil {
		t.Fatal(err)
	}
	v.size(width, height)
	// Tabs of tests that run at once all take the keyboard for theirs.
	if _, err := chromedp.Call(ctx, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true}); err != nil {
		t.Fatal(err)
	}
	v.dress(scheme)
	t.Cleanup(v.checkClean)
	return v
}

// dress shows the tab in a theme, "light" or "dark", and without motion.
func (v *visitor) dress(scheme string) {
	v.t.Helper()
	if _, err := chromedp.Call(v.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{
			{Name: "prefers-color-scheme", Value: scheme}, {Name: "prefers-reduced-motion", Value: "reduce"},
		},
	}); err != nil {
		v.t.Fatal(err)
	}
}

// size makes the tab as wide and high, in CSS pixels.
func (v *visitor) size(width, height int64) {
	v.t.Helper()
	v.do(chromedp.EmulateViewport(width, height, phone(width)...))
}

// phone makes a narrow tab a phone's: with a finger instead of a mouse.
func phone(width int64) []chromedp.EmulateViewportOption {
	if width >= 500 {
		return nil
	}
	return []chromedp.EmulateViewportOption{chromedp.EmulateMobile, chromedp.EmulateTouch}
}

// browser is the one browser of this package's tests; each tab has cookies of its own.
var browser struct {
	once sync.Once
	ctx  context.Context
	err  error
	stop func()
}

func TestMain(m *testing.M) {
	browser.stop = func() {}
	code := m.Run()
	browser.stop()
	os.RemoveAll(sharedDesk.folder) // "" removes nothing
	os.Exit(code)
}

// needsBrowser leaves a test to the plain run before it builds a desk for a browser.
func needsBrowser(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("short tests open no browser; make test does")
	}
}

func newTab(t *testing.T) context.Context {
	t.Helper()
	needsBrowser(t)
	browser.once.Do(startBrowser)
	if browser.err != nil {
		t.Fatalf("%v: the browser tests need Debian's package chromium-headless-shell; scripts/need installs it", browser.err)
	}
	ctx, stopTab := chromedp.NewContext(browser.ctx, chromedp.WithNewBrowserContext())
	t.Cleanup(stopTab)
	ctx, stop := context.WithTimeout(ctx, browserPatience)
	t.Cleanup(stop)
	return ctx
}

func startBrowser() {
	profile, err := os.MkdirTemp("", "rinkpane-browser-")
	if err != nil {
		browser.err = err
		return
	}
	flags := append(chromedp.DefaultExecAllocatorOptions[:], chromiumFlags(profile)...)
	ctx, stopProcess := chromedp.NewExecAllocator(context.Background(), flags...)
	ctx, stopBrowser := chromedp.NewContext(ctx)
	browser.ctx = ctx
	browser.stop = func() {
		stopBrowser()
		stopProcess()
		_ = os.RemoveAll(profile) // in the system's temporary folder anyway
	}
	browser.err = chromedp.Do(ctx)
}

func chromiumFlags(profile string) []chromedp.ExecAllocatorOption {
	return []chromedp.ExecAllocatorOption{
		chromedp.ExecPath(chromiumPath), chromedp.UserDataDir(profile),
		chromedp.WSURLReadTimeout(patience), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
		chromedp.Flag("disable-dev-shm-usage", true),
	}
}

func (v *visitor) listen(event any) {
	v.mu.Lock()
	defer v.mu.Unlock()
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		v.troubles = append(v.troubles, "exception: "+e.ExceptionDetails.Text)
	case *runtime.EventConsoleAPICalled:
		if e.Type == "error" || e.Type == "warning" {
			v.troubles = append(v.troubles, fmt.Sprintf("console %s: %s", e.Type, e.Args[0].Value))
		}
	case *log.EventEntryAdded:
		if strings.HasSuffix(e.Entry.URL, missingPage) || v.forgiven != "" && strings.Contains(e.Entry.Text, v.forgiven) {
			return // the browser notes that this page is not there, as it should be
		}
		v.troubles = append(v.troubles, fmt.Sprintf("log %s: %s %s", e.Entry.Level, e.Entry.Text, e.Entry.URL))
	case *network.EventRequestWillBeSent:
		v.requests = append(v.requests, e.Request.URL)
	}
}

// checkClean fails the test when the pages were not quiet.
func (v *visitor) checkClean() {
	v.mu.Lock()
	defer v.mu.Unlock()
	for _, trouble := range v.troubles {
		v.t.Errorf("the page reported: %s", trouble)
	}
	if len(v.requests) == 0 {
		v.t.Error("saw no request at all: the listening is broken")
	}
	for _, url := range v.requests {
		if !strings.HasPrefix(url, v.base) && !strings.HasPrefix(url, "data:") && url != "about:blank" {
			v.t.Errorf("the page asked another server: %s", url)
		}
	}
}

// do runs actions and ends the test when one fails.
func (v *visitor) do(actions ...chromedp.Action[chromedp.Void]) {
	v.t.Helper()
	if err := chromedp.Do(v.ctx, actions...); err != nil {
		v.t.Fatal(err)
	}
}

// atWork holds once a page's scripts answer presses: text is there to read, and to press,
// before the scripts are.
const atWork = `(document.querySelector('script[src*="/desk"]') === null || document.documentElement.dataset.scripts === "at work")`

// open goes to a page of the desk.
func (v *visitor) open(path string) {
	v.t.Helper()
	v.do(chromedp.Navigate(v.base+path), chromedp.WaitReady("main"))
	v.waitFor(atWork)
}

// eval returns the value of an expression in the page.
func eval[T any](v *visitor, expression string) T {
	v.t.Helper()
	out, err := chromedp.Run(v.ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		v.t.Fatalf("%s: %v", expression, err)
	}
	return out
}

// waitFor waits until a page is there whole and an expression in it holds; a
// page that is just being left, or read, counts as not yet.
func (v *visitor) waitFor(expression string) {
	v.t.Helper()
	var holds bool
	var err error
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(waitStep) {
		if holds, err = chromedp.Run(v.ctx, chromedp.Evaluate[bool](`document.readyState === "complete" && (`+expression+`)`)); holds && err == nil {
			return
		}
	}
	v.t.Fatalf("waited %v for %s: %v", patience, expression, err)
}

// muchComputed leaves a test of one visitor after another to the plain run: the race
// detector would find nothing in it that others do not show, and take half a minute.
func muchComputed(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("computes much, by one visitor at a time; make test runs it without the race detector")
	}
}
