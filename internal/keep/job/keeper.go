// Package job answers: how far is long work, whose turn is it, and does anybody
// still want it?
//
//	Start -> waiting -> at work -> done        whoever asked may come and go meanwhile
//	            |          |
//	            '---- given up: cancelled, nobody watching, the keeper closes
//
// The model: a [Job] belongs to nobody's request. Whoever shows its progress
// watches it; when the last one has left and none comes back within [Patience],
// it is cancelled. Owners take turns: of the jobs that wait, the next is one of
// the owner who was served longest ago, and no owner may fill every place.
//
// Jobs are kept by a [Keeper]. [Memory] is one that forgets them with the
// program; a durable one, whose jobs other machines may work, keeps the same
// promises.
package job

import (
	"context"
	"errors"
	"time"
)

// Work does a job about A: it reports how far it is and returns the outcome.
type Work[R, T any] func(ctx context.Context, tell func(R)) (T, error)

// Keeper keeps jobs about A with reports R and outcomes T. Its methods may be
// called by several goroutines at once.
type Keeper[A, R, T any] interface {
	// Start begins a job under an id of its own, for an owner ("" where nobody
	// signs in). Errors: [ErrFull], [ErrTurns], [ErrClosed].
	Start(id, owner string, about A, work Work[R, T]) (*Job[A, R, T], error)
	// Job returns a job by its id: one under way, or one of the [Kept] last ended.
	Job(id string) (*Job[A, R, T], bool)
	// Open returns the newest job under way of those that are meant.
	Open(meant func(about A) bool) (*Job[A, R, T], bool)
	// Closing is closed when the keeper closes.
	Closing() <-chan struct{}
	// Close cancels every job and waits until they have ended.
	Close()
}

// How many jobs are at work at once and how many may wait; own choice for two
// cores.
const (
	atOnce  = 1
	waiting = 3
)

// Kept is how many jobs are remembered, the ended ones among them. What one
// holds is up to its outcome; the desk's tests hold it below 1 MiB.
const Kept = 12

// Patience is how long a job goes on while nobody watches: whoever looks at
// other pages meanwhile finds it again.
const Patience = 5 * time.Minute

// Why a job is not begun.
var (
	ErrFull   = errors.New("other work is being done and more of it waits; come back when some is done")
	ErrTurns  = errors.New("your own work fills every place but one, which is left for others; wait until some of it is done")
	ErrClosed = errors.New("the program is closing")
)
