package shelf

import (
	"context"
	"sync"

	"example.org/rinkpane/internal/decide/custody"
)

// mostRecords is how many arenas' records are kept; own choice: one takes some 370 bytes
// for each of its events, 1.2 MB after a season.
const mostRecords = 200

// Records reads what happened to each arena's holes once, and then what came since. Make
// one with NewRecords; it is safe for many requests at once.
type Records struct {
	keeper custody.Keeper
	all    *bounded[string, *record]
}

// record is that of one arena as far as it was read.
type record struct {
	mu sync.Mutex
	custody.Ledger
}

// NewRecords returns the records of what a keeper keeps.
func NewRecords(k custody.Keeper) *Records {
	return &Records{k, newBounded[string, *record](mostRecords)}
}

// Of returns an arena's record with everything that is kept by now.
func (r *Records) Of(ctx context.Context, arena string) (custody.Ledger, error) {
	k, err := r.all.get(ctx, arena, func(context.Context) (*record, error) { return &record{}, nil })
	if err != nil {
		return custody.Ledger{}, err
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	some, err := custody.ReadEvents(ctx, r.keeper, arena, k.Seq())
	if err != nil {
		return custody.Ledger{}, err
	}
	k.Add(some)
	return k.Ledger, nil
}
