package desk

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/keep/store"
)

// telephone is a phone at the glass, as far as the desk sees it: it makes ids and
// sends batches.
type telephone struct {
	device string
	made   uint64
	ahead  time.Duration // of its clock
}

// line writes an event as the page's module does, told some time ago.
func (p *telephone) line(before time.Duration, corrects custody.ID, fact custody.Fact) string {
	p.made++
	kind, body := custody.Encode(fact)
	told := time.Now().Add(p.ahead - before).UTC().Format(time.RFC3339Nano)
	return fmt.Sprintf(`{"id":%q,"told":%q,"corrects":%q,"kind":%q,"fact":%s}`, custody.IDOf(p.device, p.made), told, corrects, kind, body)
}

// send sends lines to a page's events, and returns the answer.
func (p *telephone) send(t testing.TB, h http.Handler, path string, lines ...string) *httptest.ResponseRecorder {
	t.Helper()
	body := fmt.Sprintf(`{"device":%q,"now":%q,"events":[%s]}`, p.device, time.Now().Add(p.ahead).UTC().Format(time.RFC3339Nano), strings.Join(lines, ","))
	r := httptest.NewRequest("POST", "http://127.0.0.1:8417"+path+"/events", strings.NewReader(body))
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Accept", "application/json")
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

// phonePath is the page at the glass of the demo arena.
const phonePath = "/phone/quillhaven"

// labelled gives the holes of the demo arena covers, all in.
func labelled(t testing.TB, h http.Handler, holes ...string) {
	t.Helper()
	desk := telephone{device: "00000000000000d0"}
	var lines []string
	for _, hole := range holes {
		lines = append(lines, desk.line(2*time.Hour, "", custody.Issued{Cover: hole + "-1", Hole: hole}), desk.line(time.Hour, "", custody.Moved{Cover: hole + "-1", State: custody.In}))
	}
	if w := desk.send(t, h, phonePath, lines...); w.Code != http.StatusOK || strings.Contains(w.Body.String(), "refused") {
		t.Fatalf("labels: %d %s", w.Code, w.Body)
	}
}

// covers reads the board of a page: each cover's state.
func covers(t *testing.T, h http.Handler, path string) map[string]string {
	t.Helper()
	var b struct{ Covers []struct{ ID, State string } }
	w := ask(t, h, "GET", path+"/board", "")
	if err := json.Unmarshal(w.Body.Bytes(), &b); err != nil {
		t.Fatalf("%v: %s", err, w.Body)
	}
	out := map[string]string{}
	for _, c := range b.Covers {
		out[c.ID] = c.State
	}
	return out
}

// TestTwoPhonesOneHistory: what two phones say of one cover, late, twice and with
// clocks that are hours off, ends in one order on every board.
func TestTwoPhonesOneHistory(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	labelled(t, h, "B1")
	ahead, behind := telephone{device: "000000000000000a", ahead: 3 * time.Hour}, telephone{device: "000000000000000b", ahead: -5 * time.Hour}
	first := ahead.line(10*time.Minute, "", custody.Moved{Cover: "B1-1", State: custody.Out})
	then := behind.line(5*time.Minute, "", custody.Moved{Cover: "B1-1", State: custody.Stored})
	for _, w := range []*httptest.ResponseRecorder{
		behind.send(t, h, phonePath, then), ahead.send(t, h, phonePath, first), ahead.send(t, h, phonePath, first, first),
	} {
		says(t, w, http.StatusOK, "seq")
	}
	if got := covers(t, h, phonePath)["B1-1"]; got != "stored" {
		t.Errorf("the cover is %s: the later of two marks counts, whichever came first", got)
	}
	undo := behind.line(0, custody.IDOf(behind.device, 1), custody.Withdrawn{})
	behind.send(t, h, phonePath, undo)
	if got := covers(t, h, phonePath)["B1-1"]; got != "out" {
		t.Errorf("after the undo the cover is %s", got)
	}
}

// TestMarksAreRefusedInOneLine: what cannot be kept comes back with the reason, and
// the rest of its batch is kept.
func TestMarksAreRefusedInOneLine(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	labelled(t, h, "B1")
	p, other := telephone{device: "000000000000000a"}, telephone{device: "000000000000000b"}
	good := p.line(0, "", custody.Moved{Cover: "B1-1", State: custody.Out})
	w := p.send(t, h, phonePath, other.line(0, "", custody.Moved{Cover: "B1-1", State: custody.Missing}), good,
		strings.Replace(p.line(0, "", custody.Moved{Cover: "B1-1", State: custody.In}), `"in"`, `"gone"`, 1),
		strings.Replace(p.line(0, "", custody.Moved{Cover: "B1-1", State: custody.In}), `"kind":"cover"`, `"kind":"wish"`, 1))
	says(t, w, http.StatusOK, "made by another device", "state \\\"gone\\\": write in", "which this program does not know")
	if got := covers(t, h, phonePath)["B1-1"]; got != "out" {
		t.Errorf("the sound mark of the batch is not kept: %s", got)
	}
	if w := p.send(t, h, phonePath, strings.Replace(good, `"out"`, `"missing"`, 1)); !strings.Contains(w.Body.String(), "taken by another event") {
		t.Errorf("a second event under one id: %s", w.Body)
	}
	says(t, ask(t, h, "POST", phonePath+"/events", "nonsense"), http.StatusBadRequest, "cannot be read")
	says(t, p.send(t, h, "/phone/nowhere", good), http.StatusNotFound, "No arena")
}

// dayLink returns a page at the glass for somebody with a link.
func dayLink(t *testing.T, s *store.Store, id string, day custody.Window) string {
	t.Helper()
	secret, err := s.Secret(t.Context(), "a secret")
	if err != nil {
		t.Fatal(err)
	}
	return "/day/" + custody.LinkFor(id, "quillhaven", "Gate 4", day).Token(secret)
}

// TestDayLinksOpenTheirDay: a link opens its day's covers to somebody who is not
// signed in, and nothing else; a foreign, an ended, an early and a revoked one open
// nothing and tell nothing.
func TestDayLinksOpenTheirDay(t *testing.T) {
	h, _, s := ownDesk(t, false)
	labelled(t, h, "B1")
	now := time.Now()
	today := custody.DayOf(now)
	path := dayLink(t, s, "l1", today)
	says(t, ask(t, h, "GET", path, ""), http.StatusOK, "Tidewater Pavilion", "Gate 4: this link is for "+today.Date())
	guest := telephone{device: "000000000000000c"}
	out := guest.line(0, "", custody.Moved{Cover: "B1-1", State: custody.Out})
	says(t, guest.send(t, h, path, out), http.StatusOK, `"seq":`)
	if got := covers(t, h, path)["B1-1"]; got != "out" {
		t.Errorf("the guest's mark: %s", got)
	}
	yesterdays := strings.ReplaceAll(guest.line(0, "", custody.Moved{Cover: "B1-1", State: custody.In}), `"told":"`+now.UTC().Format("2006"), `"told":"2020`)
	foreign := guest.line(0, custody.IDOf("00000000000000d0", 2), custody.Withdrawn{})
	says(t, guest.send(t, h, path, guest.line(0, "", custody.Began{Phase: custody.Play}), foreign, yesterdays), http.StatusOK,
		"a day link is for covers only", "corrects another's event", "is of another day than the day link")

	for name, c := range map[string]struct{ path, says string }{
		"foreign":  {path[:len(path)-1] + "x", "not one of ours"},
		"empty":    {"/day/x", "not one of ours"},
		"ended":    {dayLink(t, s, "l2", custody.DayOf(now.AddDate(0, 0, -1))), "day is over"},
		"tomorrow": {dayLink(t, s, "l3", custody.DayOf(now.AddDate(0, 0, 1))), "opens on"},
	} {
		for _, below := range []string{"", "/board", "/app.webmanifest"} {
			w := ask(t, h, "GET", c.path+below, "")
			if says(t, w, http.StatusForbidden, c.says); strings.Contains(w.Body.String(), "Tidewater") || strings.Contains(w.Body.String(), "B1") {
				t.Errorf("the %s link tells of its arena: %s", name, w.Body)
			}
		}
		says(t, guest.send(t, h, c.path, out), http.StatusForbidden, c.says)
	}
	desk := telephone{device: "00000000000000d1"}
	desk.send(t, h, phonePath, desk.line(0, "", custody.LinkRevoked{Link: "l1"}))
	says(t, ask(t, h, "GET", path, ""), http.StatusForbidden, "was revoked")
}

// TestPageAtTheGlassIsSmall adds up everything that a phone loads, as it is and not
// as it travels.
func TestPageAtTheGlassIsSmall(t *testing.T) {
	h := exampleDesk(t).Handler()
	page := ask(t, h, "GET", phonePath, "").Body
	sum, worker := page.Len(), ask(t, h, "GET", "/phone.js", "").Body.String()
	files := strings.Split(worker, `"`)
	loaded := 0
	for _, f := range files {
		if strings.HasPrefix(f, "/assets/") {
			loaded++
			sum += ask(t, h, "GET", f, "").Body.Len()
		}
	}
	if loaded < 8 || sum > 60_000 {
		t.Errorf("the page at the glass has %d files of %d bytes together; at most 60,000 are meant", loaded, sum)
	}
	for _, other := range strings.Split(page.String(), `"`) {
		if strings.HasPrefix(other, "/assets/") && !strings.Contains(worker, other) {
			t.Errorf("%s is not kept for when the network is away", other)
		}
	}
}
