package desk

import (
	"context"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/desk/choosing"
)

func TestListenTakesThisMachineOnly(t *testing.T) {
	taken, err := Listen("127.0.0.1:0", false)
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	cases := map[string]string{
		"0.0.0.0:0":            "no sign-in",
		":8417":                "no sign-in",
		"192.0.2.7:8417":       "no sign-in",
		"example.org:8417":     "no sign-in",
		"8417":                 "host:port",
		"":                     "host:port",
		taken.Addr().String():  "--addr",
		"127.0.0.1:no-such":    "--addr",
		"127.0.0.1:8417:extra": "host:port",
	}
	for addr, want := range cases {
		ln, err := Listen(addr, false)
		if err == nil {
			ln.Close()
			t.Errorf("%q was taken", addr)
		} else if !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, expected %q in it", addr, err, want)
		}
	}
}

func TestServeEndsWithItsContext(t *testing.T) {
	ln, err := Listen("127.0.0.1:0", false)
	if err != nil {
		t.Fatal(err)
	}
	_, d, _ := ownDesk(t, false) // serving closes the desk at its end: not the shared one
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- d.Serve(ctx, ln) }()
	answer, err := http.Get("http://" + ln.Addr().String() + "/arenas")
	if err != nil {
		t.Fatal(err)
	}
	if text, err := io.ReadAll(answer.Body); err != nil || !strings.Contains(string(text), "Arenas") {
		t.Errorf("the first page: %v, %.200s", err, text)
	}
	answer.Body.Close()
	stop()
	select {
	case err := <-ended:
		if err != nil {
			t.Errorf("Serve ended with %v", err)
		}
	case <-time.After(patience):
		t.Fatal("Serve did not end")
	}
	if c, err := net.Dial("tcp", ln.Addr().String()); err == nil {
		c.Close()
		t.Error("the address still answers")
	}
}

// TestServeEndsWhateverRuns closes a desk on which a job does not obey and a
// visitor has sent half a form.
func TestServeEndsWhateverRuns(t *testing.T) {
	ln, err := Listen("127.0.0.1:0", false)
	if err != nil {
		t.Fatal(err)
	}
	_, d, _ := ownDesk(t, false)
	release := make(chan struct{})
	defer close(release)
	if _, err := d.jobs.Start("deaf", "", choosing.About{}, func(context.Context, func(choosing.Progress)) (choose.Answer, error) {
		<-release
		return choose.Answer{}, nil
	}); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- d.Serve(ctx, ln) }()
	half, err := net.Dial("tcp", ln.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	defer half.Close()
	if _, err := io.WriteString(half, "POST /theme HTTP/1.1\r\nHost: "+ln.Addr().String()+"\r\nContent-Length: 100\r\n\r\nthe"); err != nil {
		t.Fatal(err)
	}
	if answer, err := http.Get("http://" + ln.Addr().String() + "/assets/none/none"); err != nil {
		t.Fatal(err)
	} else {
		answer.Body.Close()
	}
	began := time.Now()
	stop()
	select {
	case err := <-ended:
		if took := time.Since(began); err != nil || took > 8*time.Second { // the store has two more
			t.Errorf("ended after %v with %v", took, err)
		}
	case <-time.After(patience):
		t.Fatal("Serve did not end")
	}
}
