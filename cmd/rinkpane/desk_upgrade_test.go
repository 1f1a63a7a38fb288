package main

import (
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
	failed atomic.Int64 // requests that got no answer, or one that is the desk's fault
}

func (b *balancer) add(d deskProcess) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.desks = append(b.desks, d)
}

// pick returns the next desk that is ready, nil without one.
func (b *balancer) pick() *url.URL {
	b.mu.Lock()
	b.turn++
	desks := slices.Concat(b.desks[b.turn%len(b.desks):], b.desks[:b.turn%len(b.desks)])
	b.mu.Unlock()
	for _, d := range desks {
		answer, err := http.Get(d.url + "ready")
		if err != nil {
			continue
		}
		answer.Body.Close()
		if to, err := url.Parse(d.url); err == nil && answer.StatusCode == http.StatusOK {
			return to
		}
	}
	return nil
}

func (b *balancer) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	to := b.pick()
	if to == nil {
		b.failed.Add(1)
		http.Error(w, "no desk is ready", http.StatusServiceUnavailable)
		return
	}
	onward := httputil.ReverseProxy{
		FlushInterval: -1, // each event at once
		Rewrite:       func(p *httputil.ProxyRequest) { p.SetURL(to) },
		ModifyResponse: func(a *http.Response) error {
			if a.StatusCode >= http.StatusInternalServerError {
				b.failed.Add(1)
			}
			return nil
		},
		ErrorHandler: func(w http.ResponseWriter, r *http.Request, err error) {
			if r.Context().Err() == nil { // else who asked has left
				b.failed.Add(1)
			}
			w.WriteHeader(http.StatusBadGateway)
		},
	}
	onward.ServeHTTP(w, r)
}

// TestADeskIsReplacedUnderLoad puts a newer desk beside one, on one store and behind one
// balancer, and stops the older while phones mark covers, somebody saves and people look at
// a board: nobody is refused, nothing is lost or kept twice, and who looked looks on.
func TestADeskIsReplacedUnderLoad(t *testing.T) {
	if testing.Short() {
		t.Skip("asks a PostgreSQL; make test does, make quick does not")
	}
	t.Run("postgres", func(t *testing.T) {
		server, err := cluster.Start()
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { server.Stop() }) // after the desks have ended
		replaceUnderLoad(t, keeping{"--db", server.Database(t), store.OpenDSN})
	})
	if soaking() {
		t.Run("sqlite", func(t *testing.T) { replaceUnderLoad(t, keeping{"--data", t.TempDir(), store.OpenFolder}) })
	}
}

func replaceUnderLoad(t *testing.T, in keeping) {
	const phones, listeners = 20, 20
	start := func(version string, flags ...string) deskProcess {
		t.Setenv(stamp, version)
		d := startDesk(t, append(flags, in.flag, in.at, "--drain", "1s", "--metrics", "127.0.0.1:0")...)
		if is := get[struct{ Info struct{ Version string } }](t, d.url+"api/openapi.json").Info; !strings.HasSuffix(is.Version, version) {
			t.Fatalf("the desk is version %s", is.Version)
		}
		return d
	}
	old := start("older", "--demo-season")
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
	if head := get[struct{ Head int }](t, fresh.url+crashArena).Head; head != w.saved || w.saved < 5 {
		t.Errorf("version %d was acknowledged last, the newest is %d", w.saved, head)
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
			if err != nil || s.Version.Number != w.saved+1 {
				t.Errorf("a save on top of version %d: %+v, %v", w.saved, s, err)
				return
			}
			w.saved++
		}
	})
}
