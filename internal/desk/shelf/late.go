package shelf

import (
	"context"
	"errors"

	"example.org/rinkpane/internal/keep/revision"
)

// Late says that somebody saved since the version that a save was made from: the
// newest version, the one it was made from, and what would have been saved.
type Late struct {
	*revision.Stale
	From revision.Version
	Mine string
	What string // of the save
	// Both are the parts of an arena that both changed, as [arena.Document.Differ]
	// names them; none where a whole text was saved.
	Both []string

	read func(text string) error
}

// Unwrap returns the [*revision.Stale].
func (l *Late) Unwrap() error { return l.Stale }

// Merged joins both, mine where both changed the same lines; wrong is why the
// outcome cannot be saved as it is.
func (l *Late) Merged() (text string, clashes []revision.Clash, wrong error) {
	text, clashes = revision.Merge(l.From.Text, l.Mine, l.Head.Text)
	return text, clashes, l.read(text)
}

// put saves a draft on top of a version of a document whose texts are read by
// read. Errors: [*Late], and those of [revision.Keeper].
func (s *Shelf) put(ctx context.Context, id, name string, base int, next revision.Draft, read func(text string) error) (revision.Version, error) {
	v, err := s.keeper.Save(ctx, id, name, base, next)
	var stale *revision.Stale
	if !errors.As(err, &stale) {
		if err == nil {
			s.watchers.tell(id)
		}
		return v, err
	}
	from, err := s.keeper.Version(ctx, id, max(base, 1))
	if err != nil {
		return revision.Version{}, err
	}
	return revision.Version{}, &Late{Stale: stale, From: from, Mine: next.Text, What: next.What, read: read}
}
