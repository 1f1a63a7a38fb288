package main

import (
	"errors"
	"io"
	"io/fs"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A store that does not end, at work for others, does not hold the desk's end: with
// what the desk waits for itself (TestServeEndsWhateverRuns) it ends within 10 s.
func TestAStoreDoesNotHoldTheDesksEnd(t *testing.T) {
	release := make(chan struct{})
	defer close(release)
	began := time.Now()
	closeWithin(storeTimeout, func() error { <-release; return nil })
	if took := time.Since(began); took < storeTimeout || took > storeTimeout+time.Second {
		t.Errorf("left the store after %v", took)
	}
	closed := false
	closeWithin(storeTimeout, func() error { closed = true; return nil })
	if !closed {
		t.Error("the store was not closed")
	}
}

// TestADeskIsWatched asks a desk whether it is well, reads its figures at their own
// address, and finds the requests in its log; what is no setting is refused before a store is made.
func TestADeskIsWatched(t *testing.T) {
	d := startDesk(t, "--data", t.TempDir(), "--metrics", "127.0.0.1:0", "--log-requests", "--log-format", "json", "--trace", "http://127.0.0.1:9")
	read := func(url string) string {
		t.Helper()
		answer, err := http.Get(url)
		if err != nil {
			t.Fatal(err)
		}
		defer answer.Body.Close()
		body, err := io.ReadAll(answer.Body)
		if err != nil || answer.StatusCode != http.StatusOK {
			t.Fatalf("%s: %d, %v", url, answer.StatusCode, err)
		}
		return string(body)
	}
	read(d.url + "health")
	read(d.url + "ready")
	read(d.url + "arenas")
	for _, want := range []string{`rinkpane_requests_total{route="GET /arenas",status="200"} 1`, "rinkpane_ready 1", "rinkpane_store_connections 0", "rinkpane_heavy_at_work 0"} {
		if all := read(d.metrics); !strings.Contains(all, want) {
			t.Errorf("%s is not among the figures:\n%s", want, all)
		}
	}
	for _, wrong := range [][]string{{"--log-format", "xml"}, {"--trace", "collector"}, {"--drain", "1h"}, {"--metrics", "nowhere"}, {"--behind", "balancer"}} {
		folder := filepath.Join(t.TempDir(), "never made")
		out, err := exec.Command("rinkpane", append([]string{"desk", "--addr", "127.0.0.1:0", "--data", folder}, wrong...)...).CombinedOutput()
		if err == nil || !strings.Contains(string(out), wrong[0]) {
			t.Errorf("%v: %v, %s", wrong, err, out)
		}
		if _, err := os.Stat(folder); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("%v: a store was made before it was refused: %v", wrong, err)
		}
	}
}
