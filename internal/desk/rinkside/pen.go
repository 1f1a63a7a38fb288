package rinkside

import (
	"context"
	"encoding/hex"
	"errors"
	"io"
	"net/http"
	"sync"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
)

// pen makes the ids of events that forms of the desk tell: a device of its own, drawn
// anew each time the desk opens.
type pen struct {
	mu     sync.Mutex
	device string
	made   uint64
}

// halfID is how many bytes half an id stands for.
const halfID = 8

// id returns an id that no event has.
func (p *pen) id(random io.Reader) (custody.ID, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.device == "" {
		raw := make([]byte, halfID)
		if _, err := io.ReadFull(random, raw); err != nil {
			return "", err
		}
		p.device = hex.EncodeToString(raw)
	}
	p.made++
	return custody.IDOf(p.device, p.made), nil
}

// said is what a form tells: a fact under the id that the form came with, so that a
// form that is sent twice is told once; "" draws one.
type said struct {
	id   custody.ID
	fact custody.Fact
}

// tell keeps what a form of an arena says, in the visitor's name.
func (d area) tell(r *http.Request, facts ...said) error {
	events := make([]custody.Event, len(facts))
	for i, f := range facts {
		id, err := d.idOr(f.id)
		if err != nil {
			return err
		}
		events[i] = custody.Event{ID: id, Arena: r.PathValue("slug"), Told: d.Now().UTC(), Who: door.Who(r.Context()), Fact: f.fact}
	}
	return d.keep(r.Context(), events)
}

func (d area) idOr(id custody.ID) (custody.ID, error) {
	if id != "" {
		return id, nil
	}
	return d.pen.id(d.Random)
}

// keep keeps events of the desk; the first that is refused is the error.
func (d area) keep(ctx context.Context, events []custody.Event) error {
	kept, err := d.Keeper.Append(ctx, d.Now(), events)
	if err != nil {
		return err
	}
	for _, k := range kept {
		if k.Refused != nil && !errors.Is(k.Refused, custody.ErrForged) { // that one was told before, by the same form
			return shell.Because(http.StatusUnprocessableEntity, "Nothing was kept of this.", k.Refused)
		}
	}
	return nil
}
