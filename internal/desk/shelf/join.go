package shelf

import (
	"context"
	"errors"
	"slices"
	"strings"

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
	n, err := s.saved(ctx, id, c)
	if err != nil {
		return Joined{}, err
	}
	if n > 0 {
		was, err := s.Open(ctx, id, n)
		return Joined{was.Arena, was.Version, c.Edits}, err
	}
	top, made := b, c.Edits
	for range mostJoins {
		doc, v, err := s.change(ctx, top, Change{made, c.Who, c.What, c.Once})
		var late *Late
		if err == nil {
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
	own, err := s.queued(ctx, b.Document.ID, Change{Who: who, Once: once})
	if err != nil {
		return b, err
	}
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
	own, err := s.queued(ctx, id, c)
	if err != nil {
		return nil, err
	}
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

// mostSent is how many of an arena's newest versions are searched for what was sent
// before; own choice.
const mostSent = 500

// saved returns the version that came of a change that was sent before, 0 for none.
func (s *Shelf) saved(ctx context.Context, id string, c Change) (int, error) {
	numbers, err := s.sent(ctx, id, c, func(once string) bool { return once == c.Once })
	return slices.Max(append(numbers, 0)), err
}

// queued returns the versions that came from the queue of a change.
func (s *Shelf) queued(ctx context.Context, id string, c Change) ([]int, error) {
	queue, _, ok := strings.Cut(c.Once, ".")
	return s.sent(ctx, id, c, func(once string) bool {
		from, _, _ := strings.Cut(once, ".")
		return ok && from == queue
	})
}

// sent returns the versions of an arena that the sender of a change saved under such a mark.
func (s *Shelf) sent(ctx context.Context, id string, c Change, is func(once string) bool) ([]int, error) {
	if c.Once == "" {
		return nil, nil
	}
	versions, err := s.keeper.History(ctx, id, mostSent)
	var out []int
	for _, v := range versions {
		if v.Once != "" && v.Who == revision.Line(c.Who) && is(v.Once) {
			out = append(out, v.Number)
		}
	}
	return out, err
}
