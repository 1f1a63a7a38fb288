package shelf

import (
	"context"
	"sync"

	"example.org/rinkpane/internal/decide/custody"
)

// Records reads what happened to each arena's holes once, and then what came since. Make
// one with NewRecords; it is safe for many requests at once.
type Records struct {
	keeper custody.Keeper

	mu  sync.Mutex
	all map[string]*record
}

// record is that of one arena as far as it was read.
type record struct {
	mu sync.Mutex
	custody.Ledger
}

// NewRecords returns the records of what a keeper keeps.
func NewRecords(k custody.Keeper) *Records { return &Records{keeper: k, all: map[string]*record{}} }

// Of returns an arena's record with everything that is kept by now. It asks for arenas
// that exist only: what it has read it keeps.
func (r *Records) Of(ctx context.Context, arena string) (custody.Ledger, error) {
	r.mu.Lock()
	k := r.all[arena]
	if k == nil {
		k = &record{}
		r.all[arena] = k
	}
	r.mu.Unlock()

	k.mu.Lock()
	defer k.mu.Unlock()
	some, err := custody.ReadEvents(ctx, r.keeper, arena, k.Seq())
	if err != nil {
		return custody.Ledger{}, err
	}
	k.Add(some)
	return k.Ledger, nil
}
