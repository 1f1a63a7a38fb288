package main

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/keep/store/cluster"
)

// balancer hands each request to the next desk that says that it is ready.
type balancer struct {
	mu     sync.Mutex
	desks  []deskProcess
	turn   int
	failed atomic.Int64 // requests that a desk which was ready did not answer well
}

// drained is for how long a desk goes on that was told to close.
const drained = time.Second

func (b *balancer) add(d deskProcess) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.desks = append(b.desks, d)
}

// next returns the desks, beginning with the one whose turn it is.
func (b *balancer) next() []deskProcess {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.turn++
	first := b.turn % len(b.desks)
	return slices.Concat(b.desks[first:], b.desks[:first])
}

// pick waits for a desk that is ready; nil when none is for long.
func (b *balancer) pick() *url.URL {
	for deadline := time.Now().Add(time.Minute); time.Now().Before(deadline); time.Sleep(20 * time.Millisecond) {
		for _, d := range b.next() {
			answer, err := http.Get(d.url + "ready")
			if err != nil {
				continue
			}
			answer.Body.Close()
			if to, err := url.Parse(d.url); err == nil && answer.StatusCode == http.StatusOK {
				return to
			}
		}
	}
	return nil
}

// ServeHTTP hands a request on. A desk that was ready at begun answers it, unless this
// machine is so slow that it had closed when the request came.
func (b *balancer) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	begun := time.Now()
	fail := func() {
		if time.Since(begun) < drained && r.Context().Err() == nil { // else who asked has left
			b.failed.Add(1)
		}
	}
	to := b.pick()
	if to == nil {
		http.Error(w, "no desk is ready", http.StatusServiceUnavailable)
		return
	}
	onward := httputil.ReverseProxy{
		FlushInterval: -1, // each event at once
		Rewrite:       func(p *httputil.ProxyRequest) { p.SetURL(to) },
		ModifyResponse: func(a *http.Response) error {
			if a.StatusCode >= http.StatusInternalServerError {
				fail()
			}
			return nil
		},
		ErrorHandler: func(w http.ResponseWriter, r *http.Request, err error) {
			fail()
			w.WriteHeader(http.StatusBadGateway)
		},
	}
	onward.ServeHTTP(w, r)
}

// TestADeskIsReplacedUnderLoad puts a newer desk beside one, on one store and behind one
// balancer, and stops the older while phones mark covers, somebody saves and people look at
// a board: nobody is refused, nothing is lost or kept twice, and who looked looks on.
func TestADeskIsReplacedUnderLoad(t *testing.T) {
	t.Run("postgres", func(t *testing.T) {
		replaceUnderLoad(t, keeping{"--db", cluster.Alone(t).Database(t), store.OpenDSN})
	})
	if soaking() {
		t.Run("sqlite", func(t *testing.T) { replaceUnderLoad(t, keeping{"--data", t.TempDir(), store.OpenFolder}) })
	}
}

func replaceUnderLoad(t *testing.T, in keeping) {
	const phones, listeners = 20, 20
	start := func(version string) deskProcess {
		t.Setenv(stamp, version)
		d := startDesk(t, in.flag, in.at, "--drain", drained.String(), "--metrics", "127.0.0.1:0")
		if is := get[struct{ Info struct{ Version string } }](t, d.url+"api/openapi.json").Info; !strings.HasSuffix(is.Version, version) {
			t.Fatalf("the desk is version %s", is.Version)
		}
		return d
	}
	old := start("older")
	b := &balancer{desks: []deskProcess{old}}
	front := httptest.NewServer(b)
	t.Cleanup(front.Close)
	looking := gather(t, listeners, front.URL+"/phone/quillhaven/live")
	defer looking.busy.Wait()
	defer looking.end()
	w := writers{stop: make(chan struct{})}
	w.write(t, front.URL+"/", phones)

	fresh := start("newer")
	b.add(fresh)
	time.Sleep(300 * time.Millisecond) // both answer
	if err := old.cmd.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	if err := old.cmd.Wait(); err != nil {
		t.Errorf("the older desk ended with %v", err)
	}
	time.Sleep(300 * time.Millisecond) // the newer answers alone
	close(w.stop)
	w.busy.Wait()

	if n := b.failed.Load(); n > 0 {
		t.Errorf("%d requests failed", n)
	}
	keptOnce(t, in, w.phones, 1)
	if head, err := headOf(fresh.url); err != nil || head != w.saved || w.saved < 3 {
		t.Errorf("version %d was acknowledged last, the newest is %d, %v", w.saved, head, err)
	}
	last := int64(0)
	for _, p := range w.phones {
		for _, seq := range p.acked {
			last = max(last, seq)
		}
	}
	looking.untilSeen(t, last)
	untilLevel(t, fresh, func(l level) bool { return int(l.listeners) == listeners })
}

// headOf asks a desk for the newest version: whether a save is kept that was not answered.
func headOf(url string) (int, error) {
	answer, err := http.Get(url + crashArena)
	if err != nil {
		return 0, err
	}
	defer answer.Body.Close()
	var said struct{ Head int }
	err = json.NewDecoder(answer.Body).Decode(&said)
	return said.Head, err
}

// writers are phones that mark covers and somebody who saves, until they are stopped.
type writers struct {
	stop   chan struct{}
	busy   sync.WaitGroup
	phones []glassPhone
	saved  int // the last version that was acknowledged
}

func (w *writers) write(t *testing.T, url string, phones int) {
	w.phones = make([]glassPhone, phones)
	client := &http.Client{Timeout: 20 * time.Second, Transport: &http.Transport{MaxIdleConnsPerHost: phones}}
	for i := range w.phones {
		w.phones[i] = glassPhone{device: fmt.Sprintf("%016x", i+1), acked: map[custody.ID]int64{}}
		w.busy.Go(func() {
			if err := w.phones[i].run(client, url+"phone/quillhaven/events", uint64(i), w.stop); err != nil {
				t.Errorf("phone %d: %v", i, err)
			}
		})
	}
	w.busy.Go(func() {
		for w.saved = 1; ; {
			select {
			case <-w.stop:
				return
			case <-time.After(50 * time.Millisecond):
			}
			s, err := deskProcess{url: url}.save(w.saved)
			if err == nil && s.Version.Number != w.saved+1 {
				t.Errorf("a save on top of version %d is version %d", w.saved, s.Version.Number)
			}
			if err == nil {
				w.saved++
				continue
			}
			t.Logf("a save on top of version %d: %v", w.saved, err)
			if w.saved, err = headOf(url); err != nil {
				t.Error(err)
				return
			}
		}
	})
}
