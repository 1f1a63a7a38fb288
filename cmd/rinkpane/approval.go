package main

import (
	"context"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/survey/arena"
)

// record is where it is looked up whether a revision is approved: nowhere, unless a flag
// names a store.
type record struct{ storePlace }

func (r *record) flags(c *cobra.Command) {
	c.Flags().StringVar(&r.folder, "data", "", "look up in the desk's store in this folder whether this revision is approved")
	c.Flags().StringVar(&r.dsn, "db", "", "look it up in this PostgreSQL database instead")
}

// of returns what became of the document's revision, with no record where none is kept.
func (r record) of(ctx context.Context, doc *arena.Document) (custody.Approval, error) {
	if r.folder == "" && r.dsn == "" {
		return custody.Approval{}, nil
	}
	s, err := r.look(ctx)
	if err != nil {
		return custody.Approval{}, err
	}
	defer s.Close()
	arenas, err := s.Arenas(ctx)
	if err != nil {
		return custody.Approval{}, err
	}
	revision := arena.Revision(doc.Bytes())
	for _, id := range arenas {
		h, err := custody.ReadHistory(ctx, s, id)
		if err != nil {
			return custody.Approval{}, err
		}
		if a := custody.ApprovalOf(h, revision); a.Standing != "" {
			return a, nil
		}
	}
	return custody.Approval{}, nil
}
