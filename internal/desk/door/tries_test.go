package door

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"net/http/httptest"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"example.org/rinkpane/internal/keep/people"
)

func TestTriesFillUpAgain(t *testing.T) {
	now := time.Date(2027, 1, 9, 12, 0, 0, 0, time.UTC)
	tr := newTries(func() time.Time { return now })
	count := func(key string) (n int) {
		for l := []limit{{key, pace{3, time.Minute}}}; tr.all(l); tr.take(l) {
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
	tr := newTries(time.Now)
	for i := range mostTried + 500 {
		tr.take([]limit{{fmt.Sprint(i), perName}})
	}
	if len(tr.at) != mostTried || tr.order.Len() != mostTried {
		t.Errorf("%d and %d remembered, expected %d", len(tr.at), tr.order.Len(), mostTried)
	}
}

// from is a browser's way to the sign-in page.
func from(address string, cookies ...*http.Cookie) *http.Request {
	r := httptest.NewRequest("POST", "/sign-in", nil)
	r.RemoteAddr = net.JoinHostPort(address, "5000")
	for _, c := range cookies {
		r.AddCookie(c)
	}
	return r
}

// wrongMany says so many wrong passwords without the work of checking them.
func (d *Door) wrongMany(n int, name, address string) {
	for range n {
		d.tries.take(limits(name, networkOf(address), ""))
	}
}

// TestGuessingIsSlowedDown tries wrong passwords: for one name from one address,
// for many names from one address, and for one name from many addresses.
func TestGuessingIsSlowedDown(t *testing.T) {
	d, c, _ := testDoor(t, true, map[string]people.Role{"Ada": people.Viewer, "Bo": people.Viewer})
	expect := func(what, address, name string, want error) {
		t.Helper()
		if err := d.SignIn(httptest.NewRecorder(), from(address), name, "guess guess guess"); !errors.Is(err, want) {
			t.Errorf("%s: %v, expected %v", what, err, want)
		}
	}
	d.wrongMany(int(perPair.burst), "Ada", "192.0.2.1")
	expect("one name from one address", "192.0.2.1", "Ada", ErrOften)
	expect("another name from there", "192.0.2.1", "Bo", ErrWrong)
	expect("the name from elsewhere", "192.0.2.2", "Ada", ErrWrong)
	c.at = c.at.Add(perPair.every)
	expect("a minute later", "192.0.2.1", "Ada", ErrWrong)

	for i := range int(perAddress.burst) {
		d.wrongMany(1, fmt.Sprint("guess ", i), "192.0.2.3")
	}
	expect("any name from one address", "192.0.2.3", "Bo", ErrOften)
	d.wrongMany(int(perAddress.burst), "guess", "2001:db8::1")
	expect("the same site's next address", "2001:db8::2", "Bo", ErrOften)
	expect("another site", "2001:db8:0:1::2", "Bo", ErrWrong)

	for i := range int(perName.burst) {
		d.wrongMany(1, "Ada", fmt.Sprintf("198.51.100.%d", i))
	}
	expect("one name from many addresses", "192.0.2.4", "Ada", ErrOften)
	// Whether a name is anybody's makes no difference.
	d.wrongMany(int(perPair.burst), "Nobody", "192.0.2.5")
	expect("nobody's name", "192.0.2.5", "Nobody", ErrOften)
	expect("another of nobody's", "192.0.2.5", "Noone", ErrWrong)
}

// TestWrongOnesDoNotLockTheRightOneOut: what others try wrong keeps neither a known
// browser nor a quiet address out.
func TestWrongOnesDoNotLockTheRightOneOut(t *testing.T) {
	d, _, _ := testDoor(t, true, map[string]people.Role{"Ada": people.Viewer, "Bo": people.Viewer})
	w := httptest.NewRecorder()
	if err := d.SignIn(w, from("192.0.2.1"), "Ada", word); err != nil {
		t.Fatal(err)
	}
	known := w.Result().Cookies()[0]
	d.wrongMany(int(perPair.burst), "Ada", "192.0.2.66")
	if err := d.SignIn(httptest.NewRecorder(), from("192.0.2.2"), "Ada", word); err != nil {
		t.Errorf("from a quiet address: %v", err)
	}
	// Now everything is spent: the name, and the address that Ada comes from.
	for i := range int(perName.burst) {
		d.wrongMany(1, "Ada", fmt.Sprintf("198.51.100.%d", i))
	}
	d.wrongMany(int(perAddress.burst), "Ada", "192.0.2.1")
	w = httptest.NewRecorder()
	if err := d.SignIn(w, from("192.0.2.1", known), "Ada", word); err != nil {
		t.Errorf("from a known browser: %v", err)
	}
	// The proof is for one person, one password, and not for the taking.
	again := w.Result().Cookies()[0]
	for what, r := range map[string]*http.Request{
		"Bo":                      from("192.0.2.1", known),
		"a forged proof":          from("192.0.2.1", &http.Cookie{Name: known.Name, Value: known.Value[1:] + "A"}),
		"without its own":         from("192.0.2.1"),
		"more than one can carry": from("192.0.2.1", &http.Cookie{Name: known.Name, Value: strings.Repeat("x.y~", mostProofs) + again.Value}),
	} {
		name := "Ada"
		if what == "Bo" {
			name = what
		}
		if err := d.SignIn(httptest.NewRecorder(), r, name, word); !errors.Is(err, ErrOften) {
			t.Errorf("%s: %v, expected ErrOften", what, err)
		}
	}
	for range int(perPair.burst) { // guesses from a browser that was taken away
		d.tries.take(limits("Ada", "192.0.2.9", again.Value))
	}
	if err := d.SignIn(httptest.NewRecorder(), from("192.0.2.1", again), "Ada", "guess guess guess"); err == nil {
		t.Error("a stolen browser may guess on")
	}
}

// TestABrowserMayBeKnownForSeveral: the machine in the press room is everybody's.
func TestABrowserMayBeKnownForSeveral(t *testing.T) {
	d, _, _ := testDoor(t, true, map[string]people.Role{"Ada": people.Viewer, "Bo": people.Viewer})
	var jar *http.Cookie
	for _, name := range []string{"Ada", "Bo", "Ada"} {
		r, w := from("192.0.2.1"), httptest.NewRecorder()
		if jar != nil {
			r.AddCookie(jar)
		}
		if err := d.SignIn(w, r, name, word); err != nil {
			t.Fatal(err)
		}
		jar = w.Result().Cookies()[0]
	}
	if n := len(proofsOf(jar.Value)); n != 2 {
		t.Errorf("%d proofs for two people", n)
	}
	for _, name := range []string{"Ada", "Bo"} {
		p, err := d.Register.Person(t.Context(), name)
		if err != nil {
			t.Fatal(err)
		}
		if proof, err := d.knownBrowser(from("192.0.2.1", jar), p); proof == "" || err != nil {
			t.Errorf("%s is not known: %v", name, err)
		}
	}
}

// TestPressRoomGetsIn signs fifteen people in at once from behind one address.
func TestPressRoomGetsIn(t *testing.T) {
	roles := map[string]people.Role{}
	for i := range 15 {
		roles[fmt.Sprint("Guest ", i)] = people.Photographer
	}
	d, _, _ := testDoor(t, true, roles)
	var all sync.WaitGroup
	for name := range roles {
		all.Go(func() {
			if err := d.SignIn(httptest.NewRecorder(), from("192.0.2.1"), name, word); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		})
	}
	all.Wait()
}

// TestAFloodHoldsUpItselfOnly sends a right password after 45 wrong ones from one
// address, from elsewhere and from the same place: it is among the first three
// that are checked.
func TestAFloodHoldsUpItselfOnly(t *testing.T) {
	for _, place := range []string{"192.0.2.2", "192.0.2.1"} {
		d, _, _ := testDoor(t, true, map[string]people.Role{"Ada": people.Viewer})
		d.decoy = decoy                                   // real work, so that the flood waits
		begin, err := d.queue.turn(t.Context(), true, "") // nobody is checked until all stand in line
		if err != nil {
			t.Fatal(err)
		}
		ctx, leave := context.WithCancel(t.Context())
		var all sync.WaitGroup
		var checked atomic.Int64
		for i := range 45 {
			all.Go(func() {
				err := d.SignIn(httptest.NewRecorder(), from("192.0.2.1").WithContext(ctx), fmt.Sprint("guess ", i), word)
				if errors.Is(err, ErrWrong) {
					checked.Add(1)
				}
			})
		}
		d.untilWaiting(45)
		all.Go(func() {
			if err := d.SignIn(httptest.NewRecorder(), from(place), "Ada", word); err != nil {
				t.Errorf("from %s: %v", place, err)
			}
			if n := checked.Load(); n > 2 {
				t.Errorf("from %s: %d wrong ones were checked before the right one", place, n)
			}
			leave() // the rest of the flood need not be checked
		})
		d.untilWaiting(46)
		begin()
		all.Wait()
	}
}

// untilWaiting returns when n stand in the door's line.
func (d *Door) untilWaiting(n int) {
	for len(d.waiting()) < n {
		time.Sleep(time.Millisecond)
	}
}

func (d *Door) waiting() []*waiter {
	d.queue.mu.Lock()
	defer d.queue.mu.Unlock()
	return slices.Clone(d.queue.waiting)
}

// TestAddressBehindAServer: whose request is it that a server handed on? One of this
// machine is believed, and one that whoever runs the desk has named; nobody else.
func TestAddressBehindAServer(t *testing.T) {
	behind, err := ParseServers([]string{"10.0.0.5", "10.1.0.0/16", "fd00::/8"})
	if err != nil {
		t.Fatal(err)
	}
	d := &Door{Options: Options{Behind: behind}}
	for _, c := range []struct{ remote, ahead, want string }{
		{"192.0.2.1:99", "", "192.0.2.1"},
		{"192.0.2.1:99", "203.0.113.7", "192.0.2.1"}, // who is not on this machine is not believed
		{"127.0.0.1:99", "203.0.113.7", "203.0.113.7"},
		{"127.0.0.1:99", "10.0.0.1, 203.0.113.7", "203.0.113.7"},
		{"127.0.0.1:99", "nonsense", "127.0.0.1"},
		{"[::1]:99", "2001:db8::1", "2001:db8::1"},
		{"10.0.0.5:99", "203.0.113.7", "203.0.113.7"},
		{"10.0.0.6:99", "203.0.113.7", "10.0.0.6"},                            // its neighbour
		{"10.1.2.3:99", "198.51.100.1, 203.0.113.7, 10.0.0.5", "203.0.113.7"}, // through two; the first was made up
		{"10.1.2.3:99", "10.0.0.5", "10.0.0.5"},
		{"[fd00::1]:99", "2001:db8::1", "2001:db8::1"},
		{"[::ffff:10.0.0.5]:99", "203.0.113.7", "203.0.113.7"},
	} {
		r := httptest.NewRequest("GET", "/", nil)
		r.RemoteAddr = c.remote
		if c.ahead != "" {
			r.Header.Set("X-Forwarded-For", c.ahead)
		}
		if got := d.addressOf(r); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
	for _, wrong := range []string{"", "balancer", "10.0.0.0/99", "10.0.0.5:80"} {
		if _, err := ParseServers([]string{wrong}); err == nil || !strings.Contains(err.Error(), strconv.Quote(wrong)) {
			t.Errorf("%q: %v", wrong, err)
		}
	}
}
