package rinkside

import (
	"context"
	"sync"

	"example.org/rinkpane/internal/decide/custody"
)

// record is all that happened at an arena, up to an event.
type record = custody.Ledger

// records reads each arena's events once, and then what came since.
type records struct {
	keeper custody.Keeper

	mu  sync.Mutex
	all map[string]*kept
}

// kept is the record of one arena as far as it was read.
type kept struct {
	mu sync.Mutex
	record
}

func newRecords(k custody.Keeper) *records { return &records{keeper: k, all: map[string]*kept{}} }

// readAtOnce is how many events are read in one go.
const readAtOnce = 10_000

// of returns an arena's record with everything that is kept by now. It asks for arenas
// that exist only: what it has read it keeps.
func (r *records) of(ctx context.Context, arena string) (record, error) {
	r.mu.Lock()
	k := r.all[arena]
	if k == nil {
		k = &kept{}
		r.all[arena] = k
	}
	r.mu.Unlock()

	k.mu.Lock()
	defer k.mu.Unlock()
	for {
		some, err := r.keeper.Since(ctx, arena, k.Seq(), readAtOnce)
		if err != nil {
			return record{}, err
		}
		if len(some) > 0 {
			k.Add(some)
		}
		if len(some) < readAtOnce {
			return k.record, nil
		}
	}
}
