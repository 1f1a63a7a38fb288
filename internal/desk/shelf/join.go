package shelf

import (
	"context"
	"errors"
	"slices"
	"strings"
	"sync"

	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// Change is what a visitor's page sends.
type Change struct {
	Edits     []edit.Edit
	Who, What string // What is told from the edits when it is ""
	// Once marks the change as "QUEUE.N", the Nth of a page that may send it again
	// when no answer came: what was saved under it is not saved again, and what was
	// saved from the same queue does not count as somebody else's. "" for none.
	Once string
}

// Joined is what came of a change.
type Joined struct {
	Document *arena.Document
	Version  revision.Version
	Edits    []edit.Edit // as they were made: a new hole may have another name than asked for
}

// mostJoins is how often a change is made on top of another's save before it is refused.
const mostJoins = 5

// Join makes a change on top of a book as [Shelf.Edit] does. Where somebody saved
// since and left alone what the change is about, it is made on top of that; else
// the error is [*Late], which names what both changed. A whole text is never joined.
func (s *Shelf) Join(ctx context.Context, b Book, c Change) (Joined, error) {
	id := b.Document.ID
	if n, ok := s.sent.saved(id, c); ok {
		was, err := s.Open(ctx, id, n)
		return Joined{was.Arena, was.Version, c.Edits}, err
	}
	top, made := b, c.Edits
	for range mostJoins {
		doc, v, err := s.Edit(ctx, top, made, c.Who, c.What)
		var late *Late
		if err == nil {
			s.sent.note(id, v.Number, c)
			return Joined{doc, v, made}, nil
		}
		if !errors.As(err, &late) || made[0].Do == edit.Text {
			return Joined{}, err
		}
		head, err := s.Open(ctx, id, late.Head.Number)
		if err != nil {
			return Joined{}, err
		}
		theirs, err := s.others(ctx, b, head, c)
		if err != nil {
			return Joined{}, err
		}
		if made, late.Both = edit.Onto(c.Edits, head.Arena, theirs); len(late.Both) > 0 {
			return Joined{}, late
		}
		top = head
	}
	return Joined{}, revision.ErrDown
}

// Advance returns the newest version above a book up to which everything came from
// the same queue as a change: what that was made on is what its sender saw.
func (s *Shelf) Advance(ctx context.Context, b Book, who, once string) (Book, error) {
	own := s.sent.own(b.Document.ID, Change{Who: who, Once: once})
	n := b.Version.Number
	for slices.Contains(own, n+1) {
		n++
	}
	if n == b.Version.Number {
		return b, nil
	}
	return s.Open(ctx, b.Document.ID, n)
}

// others returns the parts of the arena that others than the change's own queue
// changed from one version to a newer one.
func (s *Shelf) others(ctx context.Context, from, to Book, c Change) ([]string, error) {
	id := from.Document.ID
	own := s.sent.own(id, c)
	if !slices.ContainsFunc(own, func(n int) bool { return n > from.Version.Number && n <= to.Version.Number }) {
		return from.Arena.Differ(to.Arena), nil
	}
	var out []string
	for n := from.Version.Number + 1; n <= to.Version.Number; n++ {
		next, err := s.Open(ctx, id, n)
		if err != nil {
			return nil, err
		}
		if !slices.Contains(own, n) {
			out = append(out, from.Arena.Differ(next.Arena)...)
		}
		from = next
	}
	return out, nil
}

// sent remembers which versions came of which marked changes, the latest of them.
type sent struct {
	mu  sync.Mutex
	all []sentChange // oldest first
}

type sentChange struct {
	arena, who, once string
	version          int
}

// How many marked changes are remembered, and how long a mark may be; own choice.
const (
	mostSent    = 2000
	longestOnce = 64
)

func (s *sent) note(arena string, version int, c Change) {
	if c.Once == "" || len(c.Once) > longestOnce {
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if len(s.all) == mostSent {
		s.all = slices.Delete(s.all, 0, mostSent/2)
	}
	s.all = append(s.all, sentChange{arena, c.Who, c.Once, version})
}

// saved returns the version that came of a change.
func (s *sent) saved(arena string, c Change) (version int, ok bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, x := range s.all {
		if c.Once != "" && x.once == c.Once && x.arena == arena && x.who == c.Who {
			return x.version, true
		}
	}
	return 0, false
}

// own returns the versions that came from the queue of a change.
func (s *sent) own(arena string, c Change) (out []int) {
	queue, _, ok := strings.Cut(c.Once, ".")
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, x := range s.all {
		if from, _, _ := strings.Cut(x.once, "."); ok && from == queue && x.arena == arena && x.who == c.Who {
			out = append(out, x.version)
		}
	}
	return out
}
