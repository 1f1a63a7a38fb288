package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"net/http"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/keep/store/cluster"
)

// soaking reports whether a load test runs its full minute: make soak's do.
func soaking() bool { return os.Getenv("RINKPANE_SOAK") != "" }

// glassPhone marks covers until it is told to stop, sends what is not acknowledged again
// and again, and now and then what was.
type glassPhone struct {
	device string
	told   []phoneEvent
	acked  map[custody.ID]int64
	ahead  time.Duration // its clock
}

type phoneEvent struct {
	ID   custody.ID    `json:"id"`
	Told time.Time     `json:"told"`
	Kind string        `json:"kind"`
	Fact custody.Moved `json:"fact"`
}

// mark moves a cover of the demo's B1 to B3.
func (p *glassPhone) mark(lot *rand.Rand) {
	p.told = append(p.told, phoneEvent{custody.IDOf(p.device, uint64(len(p.told)+1)), time.Now().Add(p.ahead), "cover",
		custody.Moved{Cover: fmt.Sprintf("B%d-1", lot.IntN(3)+1), State: custody.States()[lot.IntN(6)]}})
}

// send sends up to ten events that are not acknowledged, and one that may be.
func (p *glassPhone) send(client *http.Client, url string, lot *rand.Rand) error {
	var batch []phoneEvent
	for _, e := range p.told {
		if _, is := p.acked[e.ID]; !is && len(batch) < 10 {
			batch = append(batch, e)
		}
	}
	batch = append(batch, p.told[lot.IntN(len(p.told))])
	body, err := json.Marshal(map[string]any{"device": p.device, "now": time.Now().Add(p.ahead), "events": batch})
	if err != nil {
		return err
	}
	answer, err := client.Post(url, "application/json", bytes.NewReader(body))
	if err != nil {
		return err
	}
	defer answer.Body.Close()
	var said struct {
		Receipts []struct {
			ID      custody.ID
			Seq     int64
			Refused string
		}
	}
	if answer.StatusCode != http.StatusOK {
		return fmt.Errorf("status %d", answer.StatusCode)
	}
	if err := json.NewDecoder(answer.Body).Decode(&said); err != nil {
		return err
	}
	for _, r := range said.Receipts {
		if before, is := p.acked[r.ID]; r.Refused != "" || is && before != r.Seq {
			panic(fmt.Sprintf("event %s was acknowledged as %d, then: %+v", r.ID, before, r))
		}
		p.acked[r.ID] = r.Seq
	}
	return nil
}

// run marks a cover every few milliseconds until stop, then sends until all is acknowledged.
func (p *glassPhone) run(client *http.Client, url string, seed uint64, stop <-chan struct{}) error {
	lot := rand.New(rand.NewPCG(seed, 3))
	deadline := time.Now().Add(5 * time.Minute)
	for stopped := false; ; {
		select {
		case <-stop:
			stopped = true
		default:
			p.mark(lot)
		}
		if err := p.send(client, url, lot); err != nil && time.Now().After(deadline) {
			return fmt.Errorf("%d of %d acknowledged: %w", len(p.acked), len(p.told), err)
		}
		if stopped && len(p.acked) == len(p.told) {
			return nil
		}
		time.Sleep(time.Duration(20+lot.IntN(60)) * time.Millisecond)
	}
}

// keeping is a store that a desk is started over, and how a test opens it itself.
type keeping struct {
	flag, at string
	open     func(ctx context.Context, at string) (*store.Store, error)
}

// TestPhonesWhileTheDeskIsKilled lets 200 phones mark covers while the desk is killed
// with -9 and started again: no event that was acknowledged is lost, none is doubled,
// whatever was sent twice, and all boards are alike at the end.
func TestPhonesWhileTheDeskIsKilled(t *testing.T) {
	if testing.Short() {
		t.Skip("loads the machine; make test does, make quick does not")
	}
	t.Run("sqlite", func(t *testing.T) {
		folder := t.TempDir()
		killWhileMarked(t, keeping{"--data", folder, store.OpenFolder})
		fileIsSound(t, folder)
	})
	t.Run("postgres", func(t *testing.T) {
		if !soaking() {
			t.Skip("takes half a minute more; make soak does")
		}
		killWhileMarked(t, keeping{"--db", cluster.Alone(t).Database(t), store.OpenDSN})
	})
}

func killWhileMarked(t *testing.T, in keeping) {
	const phones = 200
	kills, between := 2, time.Second
	if soaking() {
		kills, between = 10, 6*time.Second
	}
	d := startDesk(t, in.flag, in.at, "--demo-season")
	addr := strings.TrimSuffix(strings.TrimPrefix(d.url, "http://"), "/")
	url := d.url + "phone/quillhaven/"
	client := &http.Client{Timeout: 20 * time.Second, Transport: &http.Transport{MaxConnsPerHost: 64, MaxIdleConnsPerHost: 64}}
	stop := make(chan struct{})
	var all [phones]glassPhone
	var busy sync.WaitGroup
	for i := range all {
		all[i] = glassPhone{device: fmt.Sprintf("%016x", i+1), acked: map[custody.ID]int64{}, ahead: time.Duration(i%7-3) * time.Hour}
		busy.Go(func() {
			if err := all[i].run(client, url+"events", uint64(i), stop); err != nil {
				t.Errorf("phone %d: %v", i, err)
			}
		})
	}
	for range kills {
		time.Sleep(between)
		if err := d.cmd.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		_ = d.cmd.Wait() // the error is the kill itself
		d = startDesk(t, in.flag, in.at, "--addr", addr)
	}
	time.Sleep(between / 2)
	close(stop)
	busy.Wait()
	keptOnce(t, in, all[:], kills)
	board := get[any](t, url+"board")
	_ = d.cmd.Process.Kill()
	_ = d.cmd.Wait()
	startDesk(t, in.flag, in.at, "--addr", addr)
	if again := get[any](t, url+"board"); coversOf(t, again) != coversOf(t, board) {
		t.Error("after another start the board is another")
	}
}

// coversOf is what a board says of its covers, without the clock.
func coversOf(t *testing.T, board any) string {
	t.Helper()
	var b struct {
		Seq    int64
		Covers []struct{ ID, State, Since, By string }
	}
	data, err := json.Marshal(board)
	if err == nil {
		err = json.Unmarshal(data, &b)
	}
	if err != nil || len(b.Covers) == 0 {
		t.Fatalf("board %v, %v", board, err)
	}
	return fmt.Sprint(b)
}

// keptOnce holds what is kept to what the phones told and what they were acknowledged.
func keptOnce(t *testing.T, in keeping, all []glassPhone, kills int) {
	t.Helper()
	s, err := in.open(t.Context(), in.at)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	events, err := custody.ReadEvents(t.Context(), s, "quillhaven", 0)
	if err != nil {
		t.Fatal(err)
	}
	kept := map[custody.ID]custody.Event{}
	for i, e := range events {
		if _, twice := kept[e.ID]; twice || e.Seq != int64(i+1) {
			t.Fatalf("event %s has place %d, expected %d once", e.ID, e.Seq, i+1)
		}
		kept[e.ID] = e
	}
	told := 0
	for i, p := range all {
		for _, e := range p.told {
			told++
			k, is := kept[e.ID]
			if !is || k.Seq != p.acked[e.ID] || k.Fact != custody.Fact(e.Fact) {
				t.Fatalf("phone %d: event %s is kept as %+v, acknowledged as %d", i, e.ID, k, p.acked[e.ID])
			}
			if off := k.At().Sub(e.Told.Add(-p.ahead)).Abs(); off > 20*time.Second {
				t.Errorf("phone %d, %v ahead: event %s counts %v off", i, p.ahead, e.ID, off)
			}
		}
	}
	if least := len(all) * kills; told < least {
		t.Errorf("only %d events told, expected %d: the test proves nothing", told, least)
	}
	t.Logf("%d events of %d phones over %d kills", told, len(all), kills)
}
