package custody

import (
	"context"
	"errors"
	"time"
)

// Receipt is what became of an event.
type Receipt struct {
	ID      ID
	Seq     int64 // its place in the stream
	Again   bool  // it was kept before
	Refused error // why it was not kept, in one line; nil when it was
}

// ErrForged says that an id is taken by an event that says something else.
var ErrForged = errors.New("this id is taken by another event: nothing was kept of this one")

// Keeper keeps events and photos. Any number of goroutines and programs may use one
// at the same time.
type Keeper interface {
	// Append keeps events of any arenas, each unless one of its id is kept, and returns
	// a receipt for each, in their order. Once it has returned without error they
	// survive the end of the program and of the machine. On an error nobody knows
	// which are kept: send them again.
	Append(ctx context.Context, now time.Time, events []Event) ([]Receipt, error)
	// Since returns the events of an arena with a Seq above after, by Seq, at most so many.
	Since(ctx context.Context, arena string, after int64, most int) ([]Event, error)
	// Await returns once the arena has an event with a Seq above after, whichever
	// program kept it, or the context ends.
	Await(ctx context.Context, arena string, after int64) error
	// KeepPhoto keeps a photo of an arena under its key; keeping it again is no error.
	KeepPhoto(ctx context.Context, now time.Time, arena, who string, p Photo) error
	// Photo returns a photo of an arena by its key, or ErrNoPhoto: the key of another
	// arena's photo opens nothing.
	Photo(ctx context.Context, arena, key string) (Photo, error)
}

// ErrNoPhoto says that the arena has no such photo.
var ErrNoPhoto = errors.New("no such photo")

// readAtOnce is how many events are read in one go.
const readAtOnce = 10_000

// ReadEvents reads all events of an arena after one by its place, 0 for all, as they
// were kept.
func ReadEvents(ctx context.Context, k Keeper, arena string, after int64) ([]Event, error) {
	var all []Event
	for {
		some, err := k.Since(ctx, arena, after, readAtOnce)
		if err != nil {
			return nil, err
		}
		if all = append(all, some...); len(some) < readAtOnce {
			return all, nil
		}
		after = some[len(some)-1].Seq
	}
}

// ReadHistory reads all that happened at an arena.
func ReadHistory(ctx context.Context, k Keeper, arena string) (History, error) {
	all, err := ReadEvents(ctx, k, arena, 0)
	return HistoryOf(all), err
}
