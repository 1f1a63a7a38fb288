package shelf

import (
	"context"
	"errors"
	"fmt"

	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/arena"
)

// farBack is how many versions back an imported text is looked for.
const farBack = 200

// Import puts a file on the shelf under an id, and says what it did: a new
// arena; nothing, when the text is one of the arena's versions already; else a
// new version on top. Nothing is lost: what was on top before stays below.
func (s *Shelf) Import(ctx context.Context, id string, doc *arena.Document, who, what string) (string, error) {
	v, err := s.Add(ctx, id, doc, who, what)
	if err == nil {
		return fmt.Sprintf("imported as the new arena %s", v.Document), nil
	}
	if !errors.Is(err, revision.ErrTaken) {
		return "", err
	}
	versions, err := s.keeper.History(ctx, id, farBack)
	if err != nil {
		return "", err
	}
	if len(versions) == 0 {
		return "", revision.ErrNone // taken away between the two calls
	}
	head := versions[0].Number
	for _, line := range versions {
		old, err := s.keeper.Version(ctx, id, line.Number)
		if err != nil {
			return "", err
		}
		if old.Text == string(doc.Bytes()) {
			return fmt.Sprintf("is version %d of %d of the arena %s already; nothing imported", old.Number, head, id), nil
		}
	}
	if v, err = s.Save(ctx, id, head, doc, who, what); err != nil {
		return "", err
	}
	return fmt.Sprintf("imported as version %d of the arena %s; version %d stays below it", v.Number, id, head), nil
}
