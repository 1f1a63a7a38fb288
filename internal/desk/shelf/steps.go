package shelf

import (
	"context"
	"fmt"
	"slices"

	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// mostSteps is how many versions back undo reaches.
const mostSteps = 200

// Steps returns the versions that an undo and a redo of an arena would put on
// top, 0 where there is none; see [revision.Steps].
func (s *Shelf) Steps(ctx context.Context, id string) (undo, redo int, err error) {
	versions, err := s.keeper.History(ctx, id, mostSteps)
	if err != nil {
		return 0, 0, err
	}
	slices.Reverse(versions)
	marks := make([]string, len(versions))
	for i, v := range versions {
		if marks[i], err = s.mark(ctx, id, v.Number); err != nil {
			return 0, 0, err
		}
	}
	at := func(place int) int {
		if place < 0 {
			return 0
		}
		return versions[place].Number
	}
	back, forth := revision.Steps(marks)
	return at(back), at(forth), nil
}

// renamed returns the holes that edits rename, as a version records them.
func renamed(edits []edit.Edit) []revision.Rename {
	var out []revision.Rename
	for _, r := range edit.Renamings(edits) {
		out = append(out, revision.Rename(r))
	}
	return out
}

// Restore puts an older version on top of base. Holes that were renamed since get
// their names back, which the new version records. Errors are those of [Shelf.Save].
func (s *Shelf) Restore(ctx context.Context, old Book, base int, who, what string) (revision.Version, error) {
	id := old.Document.ID
	versions, err := s.keeper.History(ctx, id, max(base, old.Document.Head))
	if err != nil {
		return revision.Version{}, err
	}
	return s.Save(ctx, id, base, old.Arena, who, what, revision.Renames(versions, base, old.Version.Number)...)
}

// mark returns the mark of a version's text, read once: a version never changes.
func (s *Shelf) mark(ctx context.Context, id string, number int) (string, error) {
	return s.marks.get(ctx, fmt.Sprintf("%s %d", id, number), func(ctx context.Context) (string, error) {
		v, err := s.keeper.Version(ctx, id, number)
		return arena.Mark([]byte(v.Text)), err
	})
}
