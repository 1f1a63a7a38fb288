package door

import (
	"net/http"
	"net/http/httptest"
	"testing"
	"time"

	"example.org/rinkpane/internal/keep/people"
)

// TestTooManyRequests sends faster than any hand: one session, then one network whose
// sessions change, until each is refused; time lets them in again, and neither shuts out
// others or this machine.
func TestTooManyRequests(t *testing.T) {
	d, c, _ := testDoor(t, true, map[string]people.Role{"Ada": people.Planner})
	h := d.Guard(http.HandlerFunc(func(http.ResponseWriter, *http.Request) {}))
	send := func(address, session string) int {
		r := httptest.NewRequest("GET", "/", nil)
		r.RemoteAddr = address + ":4000"
		if session != "" {
			r.AddCookie(&http.Cookie{Name: cookieName(r, sessionCookie), Value: session})
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code == http.StatusTooManyRequests && w.Header().Get("Retry-After") != "1" {
			t.Fatal("it is not said when to come back")
		}
		return w.Code
	}
	until := func(most int, ask func(i int) int) int {
		for i := range most {
			if ask(i) == http.StatusTooManyRequests {
				return i
			}
		}
		return most
	}
	if n := until(1000, func(int) int { return send("192.0.2.1", "one") }); n != int(perSession.burst) {
		t.Errorf("a session was refused after %d requests, want %v", n, perSession.burst)
	}
	if got := send("192.0.2.1", "other"); got != http.StatusOK {
		t.Errorf("somebody beside it got %d", got)
	}
	if c.at = c.at.Add(time.Second / 10); send("192.0.2.1", "one") != http.StatusOK {
		t.Error("a tenth of a second later it is still refused")
	}
	if n := until(5000, func(int) int { return send("198.51.100.1", "") }); n != int(perNetwork.burst) {
		t.Errorf("a network was refused after %d requests, want %v", n, perNetwork.burst)
	}
	if n := until(5000, func(int) int { return send("127.0.0.1", "") }); n != 5000 {
		t.Errorf("this machine was refused after %d requests", n)
	}
	d.Behind, _ = ParseServers([]string{"10.0.0.5"})
	if n := until(5000, func(int) int { return send("10.0.0.5", "") }); n != 5000 {
		t.Errorf("a server before the desk was refused after %d requests", n)
	}
}
