package desk

import (
	"context"
	"crypto/rand"
	"fmt"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/desk/jobs"
	"example.org/rinkpane/internal/keep/queue"
	"example.org/rinkpane/internal/keep/work"
)

// The drag of one and the choices of another, as requests.
const (
	manyChoices = 20
	longWishes  = "moments=20000&step=150+mm&limit=300&seed=%d&rules=common-practice"
)

// oneDrag is a step of a drag as the page's module sends it.
func oneDrag(i int) *http.Request {
	r := httptest.NewRequest("POST", "http://127.0.0.1:8417"+demoPage+"/live", strings.NewReader(fmt.Sprintf(
		`{"base":1,"state":"hole=B2","edits":[{"do":"move","hole":"B2","to":{"station_m":%.4f,"height_m":1.4732}}]}`, 20+float64(i%300)/100)))
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Origin", "http://127.0.0.1:8417")
	return r
}

// TestTwentyChoicesOfOneLeaveRoomForAnother: of twenty choices of Ada's few are taken, the
// others are sent away with words; Bo's is taken, and what he drags waits for none of them.
func TestTwentyChoicesOfOneLeaveRoomForAnother(t *testing.T) {
	muchComputed(t)
	h, d, s := ownDesk(t, true)
	t.Cleanup(d.jobs.Close)
	as := signedIn(t, h, s, "Ada", "Bo")
	says(t, as["Bo"](oneDrag(0)), http.StatusOK) // the plan is made once
	taken := 0
	for i := range manyChoices {
		switch w := as["Ada"].form(choosePath, fmt.Sprintf(longWishes, i)); w.Code {
		case http.StatusSeeOther:
			taken++
		default:
			says(t, w, http.StatusUnprocessableEntity, "your own work fills every place but one")
		}
	}
	if taken == 0 || taken >= manyChoices/2 {
		t.Fatalf("%d of Ada's %d choices are taken", taken, manyChoices)
	}
	w := as["Bo"].form(choosePath, fmt.Sprintf(longWishes, 99))
	says(t, w, http.StatusSeeOther)
	_, id, _ := strings.Cut(w.Header().Get("Location"), "job=")
	mine, ok := d.jobs.Job(id)
	if !ok {
		t.Fatal("Bo's choice is not kept")
	}
	for i := range 5 {
		if w := as["Bo"](oneDrag(i)); w.Code != http.StatusOK {
			t.Fatalf("a drag: %d %.300s", w.Code, w.Body)
		}
	}
	if mine.Ended() {
		t.Error("the choices ended before the drag did: nothing was shown")
	}
}

// BenchmarkDragBesideAnothersWork is a drag step of one visitor, alone, while another's
// choices are at work and wait, and while twenty durable jobs are: with the 95th percentile.
func BenchmarkDragBesideAnothersWork(b *testing.B) {
	drag := func(b *testing.B, h http.Handler) {
		var took []time.Duration
		for i := 0; b.Loop(); i++ {
			w, at := httptest.NewRecorder(), time.Now()
			h.ServeHTTP(w, oneDrag(i))
			took = append(took, time.Since(at))
			if w.Code != http.StatusOK {
				b.Fatalf("%d %.300s", w.Code, w.Body)
			}
			time.Sleep(30 * time.Millisecond) // as fast as a hand moves
		}
		slices.Sort(took)
		ms := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
		b.ReportMetric(ms(took[len(took)/2]), "ms-median")
		b.ReportMetric(ms(took[len(took)*95/100]), "ms-p95")
		b.ReportMetric(0, "ns/op") // the pause is in it
	}
	b.Run("Alone", func(b *testing.B) {
		h, _, _ := ownDesk(b, false)
		drag(b, h)
	})
	b.Run("Choices", func(b *testing.B) {
		h, d, _ := ownDesk(b, false)
		defer d.jobs.Close()
		for i := range manyChoices {
			r := httptest.NewRequest("POST", "http://127.0.0.1:8417"+choosePath, strings.NewReader(fmt.Sprintf(longWishes, i)))
			r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
			h.ServeHTTP(httptest.NewRecorder(), r)
		}
		drag(b, h)
	})
	b.Run("Jobs", func(b *testing.B) {
		on, s := exampleShelf(b, b.TempDir())
		defer s.Close()
		folder := b.TempDir()
		d, err := New(Options{Shelf: on, Register: s, Covers: s, Version: "test", Now: time.Now, Random: rand.Reader, Log: slog.New(slog.DiscardHandler),
			Jobs: &jobs.Backlog{Workers: 1, Kinds: []queue.Doer{work.Choose()}, Log: slog.New(slog.DiscardHandler), Open: func(ctx context.Context) (*queue.Queue, error) {
				return queue.OpenFolder(ctx, folder, queue.Options{Program: "test"})
			}}})
		if err != nil {
			b.Fatal(err)
		}
		defer d.backlog.Close()
		q, err := d.backlog.Queue(b.Context())
		if err != nil {
			b.Fatal(err)
		}
		text, err := examples.Files.ReadFile(examples.Demo)
		if err != nil {
			b.Fatal(err)
		}
		for i := range manyChoices {
			_, err := work.Choose().Ask(b.Context(), q, queue.Asker{Owner: "Ada"}, "Hall", league.Question{
				Arena: league.Document{Name: "hall.yaml", Text: string(text)}, Rules: []league.Document{{Name: rules.Default}}, Day: "2026-11-29", Moments: 20000 + i})
			if err != nil {
				b.Fatal(err)
			}
		}
		drag(b, d.Handler())
	})
}
