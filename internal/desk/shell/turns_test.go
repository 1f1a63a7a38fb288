package shell

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/http/httptest"
	"runtime"
	"strings"
	"sync"
	"testing"
)

// asks makes a heavy request of a person, which tells when its turn comes and ends
// when it is told to.
func (t *turns) asks(ctx context.Context, who string, began chan<- string, end <-chan struct{}) {
	leave, err := t.enter(ctx, who)
	if err != nil {
		return
	}
	began <- who
	<-end
	leave()
}

// settle waits until so many wait for their turn.
func (t *turns) settle(n int) {
	for waiting := -1; waiting != n; runtime.Gosched() {
		t.mu.Lock()
		waiting = len(t.waiting)
		t.mu.Unlock()
	}
}

// TestTwentyOfOneWaitForThemselves: of twenty heavy requests of one person two are at
// work; another's begins at once, a third's next, and the twenty one after another.
func TestTwentyOfOneWaitForThemselves(t *testing.T) {
	line := newTurns()
	began, endAda, endOther := make(chan string), make(chan struct{}), make(chan struct{})
	for range 20 {
		go line.asks(t.Context(), "ada", began, endAda)
	}
	order := []string{<-began, <-began}
	line.settle(18)
	go line.asks(t.Context(), "bo", began, endOther)
	order = append(order, <-began)
	go line.asks(t.Context(), "cy", began, endOther)
	line.settle(19)
	endAda <- struct{}{} // the free place is that of who was not served yet
	order = append(order, <-began)
	endOther <- struct{}{}
	endOther <- struct{}{}
	for range 18 {
		order = append(order, <-began)
		endAda <- struct{}{}
	}
	endAda <- struct{}{}
	if got, want := strings.Join(order, " "), "ada ada bo cy"+strings.Repeat(" ada", 18); got != want {
		t.Errorf("began in the order %s", got)
	}
}

// TestTooMuchWaitingIsRefused says it in words, with the status for it; who has left
// holds nobody up, and nothing is kept of them.
func TestTooMuchWaitingIsRefused(t *testing.T) {
	line := newTurns()
	began, end := make(chan string), make(chan struct{})
	ctx, leave := context.WithCancel(t.Context())
	var all sync.WaitGroup
	asks := func(who string) { all.Go(func() { line.asks(ctx, who, began, end) }) }
	for _, who := range []string{"", "", "eve"} {
		asks(who)
		<-began
	}
	for range mostOwn {
		asks("")
	}
	line.settle(mostOwn)
	met := false
	answer := line.heavy(func(http.ResponseWriter, *http.Request) error { met = true; return nil })
	ask := func() error {
		return answer(httptest.NewRecorder(), httptest.NewRequestWithContext(t.Context(), http.MethodGet, "/", nil))
	}
	if err := ask(); !errors.Is(err, errOwnWork) || errOwnWork.Status != http.StatusTooManyRequests || met {
		t.Errorf("one too many: %v", err)
	}
	for i := mostOwn; i < mostWait; i++ {
		asks(fmt.Sprint("person ", i))
	}
	line.settle(mostWait)
	if _, err := line.enter(t.Context(), "zoe"); !errors.Is(err, errBusy) || errBusy.Status != http.StatusServiceUnavailable {
		t.Errorf("a full desk: %v", err)
	}
	leave()
	line.settle(0)
	for range heavyAtOnce {
		end <- struct{}{}
	}
	all.Wait()
	if err := ask(); err != nil || !met {
		t.Errorf("after all have left: %v", err)
	}
	if len(line.served) > 0 || len(line.atWork) > 0 {
		t.Errorf("kept of those who left: %v, %v", line.served, line.atWork)
	}
}
