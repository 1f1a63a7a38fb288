package desk

import (
	"crypto/rand"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/people"
)

// serveOwn serves a desk with covers, whose listeners leave before it ends.
func serveOwn(t testing.TB, holes ...string) (h http.Handler, base string, d *Desk) {
	t.Helper()
	h, d, _ = ownDesk(t, false)
	server := httptest.NewServer(h)
	t.Cleanup(server.Close)
	labelled(t, h, holes...)
	return h, server.URL, d
}

// TestBoardIsToldLive: who listens gets the board of now and each one after it; who
// was away gets the newest unless they have it; a revoked link's stream ends.
func TestBoardIsToldLive(t *testing.T) {
	h, d, s := ownDesk(t, false)
	server := httptest.NewServer(h)
	t.Cleanup(server.Close)
	labelled(t, h, "B1")
	link := dayLink(t, s, "l1", custody.DayOf(time.Now()))
	live, _ := listenAt(t, server.URL+phonePath+"/live", "")
	guest, _ := listenAt(t, server.URL+link+"/live", "")
	for _, e := range []string{next(live), next(guest)} {
		if !strings.HasPrefix(e, "id: 2\nevent: board\ndata: {") || !strings.Contains(e, `"state":"in"`) {
			t.Errorf("at first: %q", e)
		}
	}
	p := telephone{device: "000000000000000a"}
	p.send(t, h, phonePath, p.line(0, "", custody.Moved{Cover: "B1-1", State: custody.Out}))
	if e := next(live); !strings.HasPrefix(e, "id: 3\n") || !strings.Contains(e, `"state":"out"`) {
		t.Errorf("after a mark: %q", e)
	}
	away, _ := listenAt(t, server.URL+phonePath+"/live", "2")
	if e := next(away); !strings.HasPrefix(e, "id: 3\n") {
		t.Errorf("who missed event 3 hears %q", e)
	}
	same, _ := listenAt(t, server.URL+phonePath+"/live", "3")
	p.send(t, h, phonePath, p.line(0, "", custody.LinkRevoked{Link: "l1"}))
	if e := next(same); !strings.HasPrefix(e, "id: 4\n") {
		t.Errorf("who has event 3 hears %q", e)
	}
	for e := next(guest); e != ""; e = next(guest) {
		if strings.HasPrefix(e, "id: 4\n") {
			t.Error("a revoked link is told the board")
		}
	}
	d.shell.Shelf.Close()
	for e := next(live); e != ""; e = next(live) {
	}
}

// TestWhoIsSignedOutHearsNoMore: somebody listens at one desk and is signed out everywhere
// at another on the same store: the stream ends, and the page opens no more; who came by
// a day link hears on.
func TestWhoIsSignedOutHearsNoMore(t *testing.T) {
	h, d, s := ownDesk(t, false)
	labelled(t, h, "B1")
	link := dayLink(t, s, "l1", custody.DayOf(time.Now()))
	hash, err := people.Hash("long enough word", rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Alter(t.Context(), people.Adding(people.Person{Name: "Ada", Role: people.Planner, Password: hash, Since: time.Now()}), people.Entry{}); err != nil {
		t.Fatal(err)
	}
	other, err := New(Options{Shelf: shelf.New(s, d.shell.Shelf.Maker(), time.Now), Register: s, Covers: s, Log: d.shell.Log, Now: time.Now, Random: rand.Reader})
	if err != nil {
		t.Fatal(err)
	}
	other.shell.LookAgain = 10 * time.Millisecond
	server := httptest.NewServer(other.Handler())
	t.Cleanup(server.Close)
	t.Cleanup(other.shell.Shelf.Close)

	in := ask(t, h, "POST", "/sign-in", "name=Ada&password=long+enough+word").Result().Cookies()
	live, _ := listenAt(t, server.URL+phonePath+"/live", "", in...)
	guest, _ := listenAt(t, server.URL+link+"/live", "")
	if next(live) == "" || next(guest) == "" {
		t.Fatal("nothing was told")
	}
	out := httptest.NewRequest("POST", "http://127.0.0.1:8417/sign-out", strings.NewReader("everywhere=yes"))
	out.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	for _, c := range in {
		out.AddCookie(c)
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, out)
	says(t, w, http.StatusSeeOther)
	for e := next(live); e != ""; e = next(live) {
		t.Logf("told meanwhile: %q", e)
	}
	p := telephone{device: "000000000000000a"}
	p.send(t, other.Handler(), link, p.line(0, "", custody.Moved{Cover: "B1-1", State: custody.Out}))
	if e := next(guest); !strings.Contains(e, `"state":"out"`) {
		t.Errorf("the guest hears %q", e)
	}
}

// toldTo lets some listen to one board while covers are marked, and returns how long
// after the mark was sent each heard of it.
func toldTo(t testing.TB, listeners int, marks func(send func())) []time.Duration {
	h, base, _ := serveOwn(t, "A1", "A2", "A3", "A4", "B1", "B2", "B3", "B4")
	var mu sync.Mutex
	var sent time.Time
	var took []time.Duration
	heard := make(chan bool, listeners)
	for range listeners {
		events, _ := listenAt(t, base+phonePath+"/live", "")
		next(events)
		go func() {
			for next(events) != "" {
				mu.Lock()
				took = append(took, time.Since(sent))
				mu.Unlock()
				heard <- true
			}
		}()
	}
	p, state := telephone{device: "000000000000000a"}, custody.In
	marks(func() {
		state = map[custody.State]custody.State{custody.In: custody.Out, custody.Out: custody.In}[state]
		line := p.line(0, "", custody.Moved{Cover: "B1-1", State: state})
		mu.Lock()
		sent = time.Now()
		mu.Unlock()
		if w := p.send(t, h, phonePath, line); w.Code != http.StatusOK {
			t.Fatal(w.Body)
		}
		for range listeners {
			select {
			case <-heard:
			case <-time.After(patience):
				t.Fatal("not all heard of a mark")
			}
		}
	})
	mu.Lock()
	defer mu.Unlock()
	slices.Sort(took)
	return took
}

// TestEveryListenerHears: 200 listen, and each hears of every mark.
func TestEveryListenerHears(t *testing.T) {
	took := toldTo(t, 200, func(send func()) {
		for range 5 {
			send()
		}
	})
	if len(took) != 1000 {
		t.Errorf("heard %d times", len(took))
	}
	t.Logf("median %v, 99th percentile %v", took[len(took)/2], took[len(took)*99/100])
}

// BenchmarkBoardToListeners is one mark, kept and told to 200 who look at the board.
func BenchmarkBoardToListeners(b *testing.B) {
	took := toldTo(b, 200, func(send func()) {
		for b.Loop() {
			send()
		}
	})
	b.ReportMetric(took[len(took)*99/100].Seconds()*1000, "p99-ms")
}
