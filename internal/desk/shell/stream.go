package shell

import (
	"encoding/json"
	"fmt"
	"net/http"
	"time"

	"example.org/rinkpane/internal/desk/door"
)

// Stream is a row of server-sent events.
type Stream struct {
	w   http.ResponseWriter
	out *http.ResponseController
}

// How long one event may take to be written, and how often a quiet stream breathes; own choice.
const (
	eventTimeout = 10 * time.Second
	breathPause  = 15 * time.Second
)

// LongestStream is after how long a stream ends, so that one behind a cut network does
// not stay; own choice.
const LongestStream = 10 * time.Minute

// lookAgain is how often the door looks whether who listens is still signed in; own choice.
const lookAgain = time.Minute

// NewStream begins one. It may last longer than a request may take to arrive.
func NewStream(w http.ResponseWriter) Stream {
	s := Stream{w, http.NewResponseController(w)}
	_ = s.out.SetReadDeadline(time.Time{}) // a recorder in a test has no deadline
	w.Header().Set("Content-Type", "text/event-stream")
	w.Header().Set("Cache-Control", "no-store")
	return s
}

// Send writes an event, with an id unless it is ""; false when the visitor has left.
func (s Stream) Send(id, name string, what any) bool {
	text, err := json.Marshal(what)
	if err != nil {
		return false
	}
	if id != "" {
		id = "id: " + id + "\n"
	}
	return s.write(fmt.Sprintf("%sevent: %s\ndata: %s\n\n", id, name, text))
}

// Breathe writes nothing that counts, so that neither side takes the other for
// gone; false when the visitor has left.
func (s Stream) Breathe() bool { return s.write(":\n\n") }

func (s Stream) write(text string) bool {
	_ = s.out.SetWriteDeadline(time.Now().Add(eventTimeout))
	if _, err := s.w.Write([]byte(text)); err != nil {
		return false
	}
	return s.out.Flush() == nil
}

// Waking is what a listener is told anew after: each piece of news, and a pause
// without any; 0 is no pause.
type Waking struct {
	News  <-chan struct{}
	Pause time.Duration
}

// Follow calls tell at once and after each waking, until tell says that the visitor has
// left, the request ends, the desk closes, the visitor is signed out, or the time is up.
func (s *Shell) Follow(r *http.Request, to Stream, on Waking, within time.Duration, tell func() (there bool)) {
	end, breathe := time.After(within), time.NewTicker(breathPause)
	defer breathe.Stop()
	look := time.NewTicker(s.LookAgain)
	defer look.Stop()
	var pause <-chan time.Time
	if on.Pause > 0 {
		each := time.NewTicker(on.Pause)
		defer each.Stop()
		pause = each.C
	}
	for there := to.Breathe(); there && tell(); {
		select {
		case <-on.News:
		case <-pause:
		case <-breathe.C:
			there = to.Breathe()
		case <-look.C:
			there = door.Still(r.Context())
		case <-end:
			return
		case <-r.Context().Done():
			return
		case <-s.Shelf.Closing():
			return
		}
	}
}
