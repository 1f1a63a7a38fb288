package shelf

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/glass"
)

// mostSteps is how many versions back undo reaches.
const mostSteps = 200

// Steps are the ways back and forth from the newest version of an arena.
type Steps struct {
	Undo, Redo     int    // versions that would be put on top; 0 where there is none
	Undoes, Redoes string // what would be taken back, and done again, in a line
}

// Steps returns the ways back and forth; see [revision.Steps].
func (s *Shelf) Steps(ctx context.Context, id string) (Steps, error) {
	versions, err := s.keeper.History(ctx, id, mostSteps)
	if err != nil {
		return Steps{}, err
	}
	slices.Reverse(versions)
	texts := make([]string, len(versions))
	for i, v := range versions {
		if texts[i], err = s.revision(ctx, id, v.Number); err != nil {
			return Steps{}, err
		}
	}
	at := func(place int) revision.Version {
		if place < 0 {
			return revision.Version{}
		}
		return versions[place]
	}
	back, step, forth := revision.Steps(texts)
	return Steps{at(back).Number, at(forth).Number, at(step).What, at(forth).What}, nil
}

// renamed returns the holes that edits rename, as a version records them. A whole
// text says nothing of renames: they are read from the arenas before and after it.
func renamed(edits []edit.Edit, before, after arena.Arena) []revision.Rename {
	if len(edits) == 1 && edits[0].Do == edit.Text {
		return alikeHoles(before, after)
	}
	var out []revision.Rename
	for _, r := range edit.Renamings(edits) {
		out = append(out, revision.Rename(r))
	}
	return out
}

// alikeHoles returns the holes that are certainly called otherwise: one id is gone
// and one has come, of holes that are the same in all else, and no other hole that
// is gone or has come is like them.
func alikeHoles(before, after arena.Arena) []revision.Rename {
	gone, come := without(before, after), without(after, before)
	var out []revision.Rename
	for hole, ids := range gone {
		if others := come[hole]; len(ids) == 1 && len(others) == 1 {
			out = append(out, revision.Rename{From: ids[0], To: others[0]})
		}
	}
	slices.SortFunc(out, func(a, b revision.Rename) int { return strings.Compare(a.From, b.From) })
	return out
}

// without returns the ids of the holes that another arena has none of, by what the
// holes are but for their ids.
func without(a, other arena.Arena) map[glass.Hole][]string {
	out := map[glass.Hole][]string{}
	for _, h := range a.Holes {
		if _, has := other.Hole(h.ID); !has {
			id := h.ID
			h.ID = ""
			out[h] = append(out[h], id)
		}
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

// revision returns the whole SHA-256 of a version's text, worked out once: a version
// never changes.
func (s *Shelf) revision(ctx context.Context, id string, number int) (string, error) {
	return s.revisions.get(ctx, fmt.Sprintf("%s %d", id, number), func(ctx context.Context) (string, error) {
		v, err := s.keeper.Version(ctx, id, number)
		return arena.Revision([]byte(v.Text)), err
	})
}
