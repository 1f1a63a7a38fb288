package door

import (
	"errors"
	"fmt"
	"net/http/httptest"
	"testing"
	"time"

	"example.org/rinkpane/internal/keep/people"
)

func TestTriesFillUpAgain(t *testing.T) {
	now := time.Date(2027, 1, 9, 12, 0, 0, 0, time.UTC)
	tr := newTries()
	p := pace{3, time.Minute}
	count := func(key string) (n int) {
		for tr.allow(now, key, p) {
			if n++; n > 100 {
				t.Fatal("no end of tries")
			}
		}
		return n
	}
	if got := count("a"); got != 3 {
		t.Errorf("%d tries at once, expected 3", got)
	}
	if got := count("b"); got != 3 {
		t.Errorf("another key: %d, expected 3", got)
	}
	now = now.Add(2*time.Minute + time.Second)
	if got := count("a"); got != 2 {
		t.Errorf("%d tries after two minutes, expected 2", got)
	}
	now = now.Add(24 * time.Hour)
	if got := count("a"); got != 3 {
		t.Errorf("%d tries after a day, expected 3", got)
	}
	now = now.Add(-time.Hour) // a clock put back gives nothing away
	if got := count("a"); got != 0 {
		t.Errorf("%d tries on a clock put back, expected none", got)
	}
	tr.forget("a")
	if got := count("a"); got != 3 {
		t.Errorf("%d tries after a sign-in, expected 3", got)
	}
}

func TestTriesAreBounded(t *testing.T) {
	tr := newTries()
	now := time.Date(2027, 1, 9, 12, 0, 0, 0, time.UTC)
	for i := range mostTried + 500 {
		tr.allow(now, fmt.Sprint(i), perName)
	}
	if len(tr.at) != mostTried || tr.order.Len() != mostTried {
		t.Errorf("%d and %d remembered, expected %d", len(tr.at), tr.order.Len(), mostTried)
	}
}

// TestGuessingIsSlowedDown tries many passwords from one address, and for one
// name from many.
func TestGuessingIsSlowedDown(t *testing.T) {
	d, c, _ := testDoor(t, true, map[string]people.Role{"Ada": people.Viewer})
	guess := func(from, name string) error {
		r := httptest.NewRequest("POST", "/sign-in", nil)
		r.RemoteAddr = from + ":5000"
		return d.SignIn(httptest.NewRecorder(), r, name, "guess guess guess")
	}
	for range int(perAddress.burst) {
		d.tries.allow(c.at, "at 192.0.2.1", perAddress)
	}
	if err := guess("192.0.2.1", "Bo"); !errors.Is(err, ErrOften) {
		t.Errorf("from one address: %v, expected ErrOften", err)
	}
	if err := guess("192.0.2.2", "Bo"); !errors.Is(err, ErrWrong) {
		t.Errorf("from another: %v, expected ErrWrong", err)
	}
	for range int(perName.burst) {
		d.tries.allow(c.at, "as Ada", perName)
	}
	if err := guess("192.0.2.3", "Ada"); !errors.Is(err, ErrOften) {
		t.Errorf("for one name: %v, expected ErrOften", err)
	}
	c.at = c.at.Add(perName.every)
	if err := guess("192.0.2.4", "Ada"); !errors.Is(err, ErrWrong) {
		t.Errorf("a minute later: %v, expected ErrWrong", err)
	}
}

func TestAddressBehindAServer(t *testing.T) {
	for _, c := range []struct{ remote, ahead, want string }{
		{"192.0.2.1:99", "", "192.0.2.1"},
		{"192.0.2.1:99", "203.0.113.7", "192.0.2.1"}, // who is not on this machine is not believed
		{"127.0.0.1:99", "203.0.113.7", "203.0.113.7"},
		{"127.0.0.1:99", "10.0.0.1, 203.0.113.7", "203.0.113.7"},
		{"127.0.0.1:99", "nonsense", "127.0.0.1"},
		{"[::1]:99", "2001:db8::1", "2001:db8::1"},
	} {
		r := httptest.NewRequest("GET", "/", nil)
		r.RemoteAddr = c.remote
		if c.ahead != "" {
			r.Header.Set("X-Forwarded-For", c.ahead)
		}
		if got := addressOf(r); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
}
