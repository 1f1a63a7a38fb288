package desk

import (
	"bufio"
	"context"
	"crypto/rand"
	"fmt"
	"html"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/desk/shelf"
)

// move posts a move of a hole as a drag does, and returns the answer.
func move(t *testing.T, h http.Handler, base int, hole, height, once string) *httptest.ResponseRecorder {
	t.Helper()
	return ask(t, h, "POST", demoPage+"/holes", fmt.Sprintf("base=%d&act=place&hole=%s&height_m=%s&once=%s", base, hole, height, once))
}

// TestTwoWhoMoveDifferentHolesAreMerged: no page comes in between, and both moves
// are kept; a new hole whose name is taken meanwhile takes the next.
func TestTwoWhoMoveDifferentHolesAreMerged(t *testing.T) {
	h, d, _ := ownDesk(t, false)
	says(t, move(t, h, 1, "B2", "1.6", ""), http.StatusSeeOther)
	says(t, move(t, h, 1, "A4", "1.7", ""), http.StatusSeeOther)
	for k, at := range []string{"27", "35"} { // metres along the boards
		w := ask(t, h, "POST", demoPage+"/holes", "base=1&act=add&as=H1&station_m="+at)
		if says(t, w, http.StatusSeeOther); !strings.Contains(w.Header().Get("Location"), fmt.Sprintf("hole=H%d", k+1)) {
			t.Errorf("added at %s m as %s", at, w.Header().Get("Location"))
		}
	}
	b, err := d.shell.Shelf.Open(t.Context(), "quillhaven", 0)
	if err != nil {
		t.Fatal(err)
	}
	a, err := b.Arena.Check()
	if err != nil {
		t.Fatal(err)
	}
	b2, _ := a.Hole("B2")
	a4, _ := a.Hole("A4")
	if b.Version.Number != 5 || b2.Height.Metres() < 1.59 || b2.Height.Metres() > 1.61 || a4.Height.Metres() < 1.69 {
		t.Errorf("version %d: B2 at %v, A4 at %v", b.Version.Number, b2.Height, a4.Height)
	}
}

// TestTwoWhoMoveTheSameHoleAreAsked in words: who, what, and which shall count.
func TestTwoWhoMoveTheSameHoleAreAsked(t *testing.T) {
	h, d, _ := ownDesk(t, false)
	says(t, move(t, h, 1, "B2", "1.6", ""), http.StatusSeeOther)
	w := move(t, h, 1, "B2", "1.7", "")
	says(t, w, http.StatusConflict, "You both changed hole B2", "Somebody at this desk saved version 2 while you worked: move B2", "Save mine on top of theirs", `name="base" value="2"`)
	if _, n := headText(t, d, "quillhaven"); n != 2 {
		t.Fatalf("version %d", n)
	}
	form := strings.Join(between(w.Body.String(), `<form method="post" action="`+demoPage, "</form>"), "")
	var fields []string
	for _, input := range between(form, `<input type="hidden" `, ">") {
		fields = append(fields, html.UnescapeString(between(input, `name="`, `"`)[0]+"="+between(input, `value="`, `"`)[0]))
	}
	says(t, ask(t, h, "POST", demoPage+"/holes", strings.Join(fields, "&")), http.StatusSeeOther)
	if text, n := headText(t, d, "quillhaven"); n != 3 || !strings.Contains(text, "height: 66 15/16 in") {
		t.Errorf("version %d lacks mine: %v", n, fields)
	}
}

// TestAChangeIsMadeOnce: a page that sends a change again when no answer came gets
// the version that came of it, even after the desk was started anew; and what it saved
// itself is nobody else's change.
func TestAChangeIsMadeOnce(t *testing.T) {
	h, d, kept := ownDesk(t, false)
	for range 3 {
		says(t, move(t, h, 1, "B2", "1.6", "q1.1"), http.StatusSeeOther)
	}
	// The desk is started anew over the same store: the mark stands beside the version.
	again, err := New(Options{Shelf: shelf.New(kept, exampleMaker(t), time.Now), Register: kept, Covers: kept, Code: firstCode, Version: "test",
		Log: slog.New(slog.NewTextHandler(os.Stderr, nil)), Now: time.Now, Random: rand.Reader})
	if err != nil {
		t.Fatal(err)
	}
	h = again.Handler()
	says(t, move(t, h, 1, "B2", "1.6", "q1.1"), http.StatusSeeOther)
	says(t, move(t, h, 1, "B2", "1.7", "q1.2"), http.StatusSeeOther)
	if _, n := headText(t, d, "quillhaven"); n != 3 {
		t.Errorf("version %d, want 3", n)
	}
	says(t, move(t, h, 1, "B2", "1.5", "q2.1"), http.StatusConflict)
	says(t, move(t, h, 3, "A4", "1.6", "q2.2"), http.StatusSeeOther)
	says(t, move(t, h, 1, "A4", "1.7", "q1.3"), http.StatusConflict, "You both changed hole A4")
}

// listen reads the saves of the demo from a version on, or after an event's id.
func listen(t *testing.T, base string, since int, last string) (events *bufio.Scanner, stop func()) {
	t.Helper()
	return listenAt(t, fmt.Sprintf("%s%s/saves?since=%d", base, demoPage, since), last)
}

// listenAt reads the events of an address, after one of an id unless it is "".
func listenAt(t testing.TB, url, last string, cookies ...*http.Cookie) (events *bufio.Scanner, stop func()) {
	t.Helper()
	ctx, stop := context.WithCancel(t.Context())
	r, err := http.NewRequestWithContext(ctx, "GET", url, nil)
	if err != nil {
		t.Fatal(err)
	}
	if last != "" {
		r.Header.Set("Last-Event-ID", last)
	}
	for _, c := range cookies {
		r.AddCookie(c)
	}
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { stop(); answer.Body.Close() })
	if kind := answer.Header.Get("Content-Type"); kind != "text/event-stream" {
		t.Fatalf("%d, %s", answer.StatusCode, kind)
	}
	return bufio.NewScanner(answer.Body), stop
}

// next returns the next event's lines.
func next(events *bufio.Scanner) string {
	var lines []string
	for events.Scan() {
		switch line := events.Text(); {
		case line == "" && len(lines) > 0:
			return strings.Join(lines, "\n")
		case line != "" && line != ":":
			lines = append(lines, line)
		}
	}
	return ""
}

// TestSavesAreSeenLive: who listens hears of each save: version, who, what; who was
// away hears what came since the last event; and an event comes at once.
func TestSavesAreSeenLive(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	server := httptest.NewServer(h)
	t.Cleanup(server.Close) // after those who listen have left
	live, _ := listen(t, server.URL, 1, "")
	begun := time.Now()
	says(t, move(t, h, 1, "B2", "1.6", ""), http.StatusSeeOther)
	const first = "id: 2\nevent: saved\ndata: {\"version\":2,\"who\":\"Somebody at this desk\",\"what\":\"move B2, 5 ft 3 in above the ice\"}"
	if got := next(live); got != first {
		t.Errorf("heard %q, want %q", got, first)
	}
	if took := time.Since(begun); took > 4*time.Second {
		t.Errorf("heard after %v", took)
	}
	says(t, move(t, h, 2, "A4", "1.6", ""), http.StatusSeeOther)
	if got := next(live); !strings.HasPrefix(got, "id: 3\n") {
		t.Errorf("heard %q", got)
	}
	again, _ := listen(t, server.URL, 1, "2")
	if got := next(again); !strings.HasPrefix(got, "id: 3\n") {
		t.Errorf("after event 2: %q", got)
	}
	for _, since := range []int{1, 77} { // what never was is no reason to tell all
		late, stop := listen(t, server.URL, since, "")
		if since == 1 && next(late) != first {
			t.Error("who comes late does not hear of version 2")
		}
		stop()
	}
	says(t, ask(t, h, "GET", "/arena/nowhere/saves", ""), http.StatusNotFound)
}

// TestListenersAreBounded: one too many is sent away in words, until another leaves;
// and listeners end with the desk.
func TestListenersAreBounded(t *testing.T) {
	h, d, _ := ownDesk(t, false)
	var leaves []func()
	for {
		_, leave, err := d.shell.Shelf.Watch("quillhaven")
		if err != nil {
			break
		}
		if leaves = append(leaves, leave); len(leaves) > 10_000 {
			t.Fatal("no bound on listeners")
		}
	}
	says(t, ask(t, h, "GET", demoPage+"/saves", ""), http.StatusServiceUnavailable, "As many listen")
	for _, leave := range leaves {
		leave()
		leave() // twice is once
	}
	ln, err := Listen("127.0.0.1:0", false)
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	served := make(chan error, 1)
	go func() { served <- d.Serve(ctx, ln) }()
	answer, err := http.Get("http://" + ln.Addr().String() + demoPage + "/saves")
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	stop()
	if _, err := io.Copy(io.Discard, answer.Body); err != nil {
		t.Errorf("the events broke off instead of ending: %v", err)
	}
	if err := <-served; err != nil {
		t.Error(err)
	}
}
