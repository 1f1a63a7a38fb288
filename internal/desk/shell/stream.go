package shell

import (
	"encoding/json"
	"fmt"
	"net/http"
	"time"
)

// Stream is a row of server-sent events.
type Stream struct {
	w   http.ResponseWriter
	out *http.ResponseController
}

// eventTimeout is how long one event may take to be written.
const eventTimeout = 10 * time.Second

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
