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

// chromiumPath is Debian's browser; scripts/need installs it.
const chromiumPath = "/usr/bin/chromium"

// browserPatience bounds one browser test.
const browserPatience = 60 * time.Second

// How long a page may take to answer, and how often it is asked.
const (
	waitLimit = 10 * time.Second
	waitStep  = 15 * time.Millisecond
)

// visitor is a browser's tab on a desk of the example arenas. It remembers what
// went wrong and what was asked of whom.
type visitor struct {
	t    *testing.T
	ctx  context.Context
	base string

	mu       sync.Mutex
	troubles []string // console errors, exceptions, refused policies
	requests []string
}

// visit opens a tab of the given width and height in CSS pixels. The test
// fails at its end when the page reported an error or asked another server.
func visit(t *testing.T, width, height int64, scheme string) *visitor {
	t.Helper()
	server := httptest.NewServer(exampleDesk(t).Handler())
	t.Cleanup(server.Close)
	ctx := newTab(t)
	v := &visitor{t: t, ctx: ctx, base: server.URL}
	if err := chromedp.Listen(ctx, v.listen); err != nil {
		t.Fatal(err)
	}
	v.do(chromedp.EmulateViewport(width, height, phone(width)...))
	_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{
			{Name: "prefers-color-scheme", Value: scheme}, {Name: "prefers-reduced-motion", Value: "reduce"},
		},
	})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(v.checkClean)
	return v
}

// phone makes a narrow tab a phone's: with a finger instead of a mouse.
func phone(width int64) []chromedp.EmulateViewportOption {
	if width >= 500 {
		return nil
	}
	return []chromedp.EmulateViewportOption{chromedp.EmulateMobile, chromedp.EmulateTouch}
}

func newTab(t *testing.T) context.Context {
	t.Helper()
	if _, err := os.Stat(chromiumPath); err != nil {
		t.Fatalf("%v: the browser tests need Debian's package chromium; scripts/need installs it", err)
	}
	flags := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(chromiumPath), chromedp.UserDataDir(t.TempDir()),
		chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
		chromedp.Flag("disable-dev-shm-usage", true),
	)
	ctx, stop := context.WithTimeout(t.Context(), browserPatience)
	t.Cleanup(stop)
	ctx, stopBrowser := chromedp.NewExecAllocator(ctx, flags...)
	t.Cleanup(stopBrowser)
	ctx, stopTab := chromedp.NewContext(ctx)
	t.Cleanup(stopTab)
	return ctx
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

// open goes to a page of the desk.
func (v *visitor) open(path string) {
	v.t.Helper()
	v.do(chromedp.Navigate(v.base+path), chromedp.WaitReady("main"))
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

// waitFor waits until an expression in the page holds; a page that is just
// being left counts as not yet.
func (v *visitor) waitFor(expression string) {
	v.t.Helper()
	var holds bool
	var err error
	for end := time.Now().Add(waitLimit); time.Now().Before(end); time.Sleep(waitStep) {
		if holds, err = chromedp.Run(v.ctx, chromedp.Evaluate[bool](expression)); holds && err == nil {
			return
		}
	}
	v.t.Fatalf("waited %v for %s: %v", waitLimit, expression, err)
}
