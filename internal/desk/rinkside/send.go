package rinkside

import (
	"encoding/json"
	"net/http"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shell"
)

// sent is what a phone sends: its events in the order in which it made them.
type sent struct {
	Device string    `json:"device"`
	Now    time.Time `json:"now"` // the phone's clock
	Events []struct {
		ID       custody.ID      `json:"id"`
		Told     time.Time       `json:"told"`
		Corrects custody.ID      `json:"corrects"`
		Kind     string          `json:"kind"`
		Fact     json.RawMessage `json:"fact"`
	} `json:"events"`
}

// receipt is what became of one event.
type receipt struct {
	ID      custody.ID `json:"id"`
	Seq     int64      `json:"seq,omitempty"`
	Refused string     `json:"refused,omitempty"` // a sentence
}

// receipts answers a phone; what is in it is durable, or refused for good.
type receipts struct {
	Now      time.Time `json:"now"` // the desk's clock
	Receipts []receipt `json:"receipts"`
}

// events answers POST …/events: it keeps what a phone sends, each event once however
// often it comes.
func (d area) events(w http.ResponseWriter, r *http.Request, p pass) error {
	var s sent
	if err := json.NewDecoder(r.Body).Decode(&s); err != nil {
		return shell.Refuse(http.StatusBadRequest, "This batch of marks cannot be read.", "Open the page again and try once more.")
	}
	received := d.Now()
	batch := custody.Batch{Arena: p.Arena, Device: s.Device, Who: p.Who, Now: s.Now, Guest: p.Link}
	out := receipts{Now: received, Receipts: []receipt{}}
	for _, e := range s.Events {
		fact, err := custody.Decode(e.Kind, string(e.Fact))
		if err != nil {
			out.Receipts = append(out.Receipts, receipt{ID: e.ID, Refused: shell.Sentence(err.Error())})
			continue
		}
		batch.Events = append(batch.Events, custody.Event{ID: e.ID, Told: e.Told, Corrects: e.Corrects, Fact: fact})
	}
	ready, refused, err := batch.Stamp(received)
	if err != nil {
		return shell.Because(http.StatusBadRequest, "This batch of marks cannot be kept.", err)
	}
	kept, err := d.Keeper.Append(r.Context(), received, ready)
	if err != nil {
		return err
	}
	for _, k := range append(refused, kept...) {
		one := receipt{ID: k.ID, Seq: k.Seq}
		if k.Refused != nil {
			one.Refused = shell.Sentence(k.Refused.Error())
		}
		out.Receipts = append(out.Receipts, one)
	}
	return d.JSON(w, r, http.StatusOK, out)
}
