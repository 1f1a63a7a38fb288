package desk

import (
	"crypto/rand"
	"io"
	"log/slog"
	"net/http"
	"strings"
	"testing"
	"time"
)

// TestCloseFromAPage opens a desk as from a file manager and closes it by its page: the
// page that says so arrives, then the desk ends.
func TestCloseFromAPage(t *testing.T) {
	on, s := exampleShelf(t, t.TempDir())
	t.Cleanup(func() { s.Close() })
	closed := make(chan struct{})
	d, err := New(Options{
		Shelf: on, Register: s, Covers: s, Version: "test", Log: slog.New(slog.NewTextHandler(io.Discard, nil)),
		Now: time.Now, Random: rand.Reader, Close: func() { close(closed) },
	})
	if err != nil {
		t.Fatal(err)
	}
	base := open(t, d)
	if _, page := read(t, base+"/arenas"); !strings.Contains(page, `<a href="/close">`) {
		t.Error("no page leads to closing the desk")
	}
	if _, page := read(t, base+"/close"); !strings.Contains(page, "Leave it open") {
		t.Error("closing is not asked about")
	}
	select {
	case <-closed:
		t.Fatal("asking has closed the desk")
	default:
	}
	answer, err := http.Post(base+"/close", "application/x-www-form-urlencoded", nil)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	if page, _ := io.ReadAll(answer.Body); !strings.Contains(string(page), "The desk is closed") {
		t.Errorf("the page says\n%s", page)
	}
	<-closed
}

// TestNoPageClosesAServer holds that a desk which was not opened so has no such page.
func TestNoPageClosesAServer(t *testing.T) {
	_, d, _ := ownDesk(t, false)
	status, page := read(t, open(t, d)+"/close")
	if status != http.StatusNotFound || strings.Contains(page, `href="/close"`) {
		t.Errorf("status %d\n%s", status, page)
	}
}

// read gets a page.
func read(t *testing.T, url string) (status int, page string) {
	t.Helper()
	answer, err := http.Get(url)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err != nil {
		t.Fatal(err)
	}
	return answer.StatusCode, string(text)
}
