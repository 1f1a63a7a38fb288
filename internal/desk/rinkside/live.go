package rinkside

import (
	"context"
	"encoding/json"
	"errors"
	"net/http"
	"strconv"
	"sync"
	"sync/atomic"
	"time"

	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
)

// keeperPause is how soon a keeper that does not answer is asked again; own choice.
const keeperPause = time.Second

// told is a board as it goes out, once for all who listen.
type told struct {
	record
	text json.RawMessage
}

// watches follows the events of arenas whose boards somebody looks at: one waits for
// all who listen, and each listener holds no more than the news that there is some.
type watches struct {
	mu  sync.Mutex
	all map[string]*watch
}

// watch follows one arena.
type watch struct {
	listeners int
	stop      context.CancelFunc
	latest    atomic.Pointer[told]
}

// bell names an arena's board among what can be watched on the shelf.
func bell(arena string) string { return "covers of " + arena }

// watch follows an arena from now on, until the last who asked has left.
func (d area) watch(arena string) (w *watch, leave func()) {
	d.watches.mu.Lock()
	defer d.watches.mu.Unlock()
	w = d.watches.all[arena]
	if w == nil {
		ctx, stop := context.WithCancel(context.Background())
		w = &watch{stop: stop}
		d.watches.all[arena] = w
		go d.follow(ctx, w, arena)
	}
	w.listeners++
	return w, sync.OnceFunc(func() {
		d.watches.mu.Lock()
		defer d.watches.mu.Unlock()
		if w.listeners--; w.listeners == 0 {
			w.stop()
			delete(d.watches.all, arena)
		}
	})
}

// follow folds the board after each event and rings the bell.
func (d area) follow(ctx context.Context, w *watch, arena string) {
	for ctx.Err() == nil {
		rec, err := d.Records.Of(ctx, arena)
		if err == nil {
			var text []byte
			if text, err = json.Marshal(d.now(rec)); err == nil {
				w.latest.Store(&told{rec, text})
				d.Shelf.Tell(bell(arena))
				err = d.Keeper.Await(ctx, arena, rec.Seq())
			}
		}
		if err == nil || ctx.Err() != nil {
			continue
		}
		d.Log.WarnContext(ctx, "desk", "board of", arena, "error", err)
		select {
		case <-time.After(keeperPause):
		case <-ctx.Done():
		}
	}
}

// errCrowded answers the listener who is one too many.
var errCrowded = &shell.Refusal{Status: http.StatusServiceUnavailable, What: "As many look at this desk as may.",
	Cure: "The page asks again by itself.", WaitUntil: "60"}

// live answers GET …/live: server-sent events, each a whole board whose id is the last
// event in it; who was away gets the board of now, unless Last-Event-ID names it. It
// ends with the visitor, the desk, the pass, and after [shell.LongestStream].
func (d area) live(w http.ResponseWriter, r *http.Request, p pass) error {
	news, deaf, err := d.Shelf.Watch(bell(p.Arena))
	if errors.Is(err, shelf.ErrCrowded) {
		return errCrowded
	}
	if err != nil {
		return err
	}
	defer deaf()
	on, leave := d.watch(p.Arena)
	defer leave()
	end := shell.LongestStream
	if p.Link != nil {
		end = min(end, p.Link.Until.Sub(d.Now()))
	}
	d.tellBoards(r, shell.NewStream(w), p, on, news, end)
	return nil
}

func (d area) tellBoards(r *http.Request, to shell.Stream, p pass, on *watch, news <-chan struct{}, within time.Duration) {
	last := r.Header.Get("Last-Event-ID")
	d.Follow(r, to, shell.Waking{News: news}, within, func() bool {
		now := on.latest.Load()
		if now == nil {
			return true
		}
		if p.Link != nil && now.History.Revoked(*p.Link) {
			return false
		}
		id := strconv.FormatInt(now.Seq(), 10)
		if id == last {
			return true
		}
		last = id
		return to.Send(id, "board", now.text)
	})
}
