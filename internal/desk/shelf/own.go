package shelf

import (
	"cmp"
	"context"
	"fmt"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/kit"
)

// own returns the newest text of one of the desk's kits or rule sets.
func (s *Shelf) own(ctx context.Context, kind revision.Kind, id string) (string, error) {
	d, v, err := s.Own(ctx, kind, id)
	if err == nil && d.Away {
		err = revision.ErrNone
	}
	return v.Text, err
}

// Own returns one of the desk's kits or rule sets with its newest version.
// Errors: [revision.ErrNone].
func (s *Shelf) Own(ctx context.Context, kind revision.Kind, id string) (revision.Document, revision.Version, error) {
	d, err := s.keeper.Document(ctx, id)
	if err == nil && d.Kind != kind {
		err = revision.ErrNone
	}
	if err != nil {
		return revision.Document{}, revision.Version{}, err
	}
	v, err := s.keeper.Version(ctx, id, 0)
	return d, v, err
}

// OwnPage is one of the desk's kits or rule sets with all that is told of it.
type OwnPage struct {
	Document revision.Document
	Version  revision.Version   // the newest
	Users    []string           // arenas that name it
	Versions []revision.Version // the newest first, at most [mostOwnVersions]
}

// mostOwnVersions is how many versions are told.
const mostOwnVersions = 50

// OwnPage returns one of the desk's kits or rule sets. Errors: [revision.ErrNone].
func (s *Shelf) OwnPage(ctx context.Context, kind revision.Kind, id string) (o OwnPage, err error) {
	if o.Document, o.Version, err = s.Own(ctx, kind, id); err != nil {
		return o, err
	}
	if o.Users, err = s.Users(ctx, kind, id); err == nil {
		o.Versions, err = s.keeper.History(ctx, id, mostOwnVersions)
	}
	return o, err
}

// ReadOwn checks the text of a kit or a rule set and returns the id and the name
// that it would be kept under. Errors are those of its reader.
func ReadOwn(kind revision.Kind, text string) (id, name string, err error) {
	const file = "document"
	if kind == revision.RuleSet {
		set, err := rules.Read(file, strings.NewReader(text))
		switch {
		case err != nil:
		case revision.CheckID(set.ID) != nil:
			err = &form.Problem{File: file, Field: "id", Text: form.Quote(set.ID) + " cannot stand in an address: use 1 to 64 small letters, digits and inner hyphens"}
		case set.ID == rules.Trade:
			err = &form.Problem{File: file, Field: "id", Text: "this set ships with the program and is always in force; give your own another id"}
		}
		return set.ID, set.Name, err
	}
	k, err := kit.Read(file, strings.NewReader(text))
	if err == nil && k.Name == "" {
		err = &form.Problem{File: file, Field: "name", Text: "is missing; the desk calls the kit by it"}
	}
	return revision.IDFrom(k.Name), k.Name, err
}

// readAgain checks a text that shall be saved under an id and returns its name. The
// id of a rule set stays, since arenas name it.
func readAgain(kind revision.Kind, id, text string) (name string, err error) {
	got, name, err := ReadOwn(kind, text)
	if err == nil && kind == revision.RuleSet && got != id {
		err = &form.Problem{File: "document", Field: "id", Text: fmt.Sprintf("%s; arenas name this rule set as %s: leave it, or add the other as a new one", form.Quote(got), id)}
	}
	return name, err
}

// AddOwn keeps a new kit or rule set. Errors: [revision.ErrTaken], and those of its reader.
func (s *Shelf) AddOwn(ctx context.Context, kind revision.Kind, text, who, what string) (revision.Version, error) {
	id, name, err := ReadOwn(kind, text)
	if err != nil {
		return revision.Version{}, err
	}
	return s.keeper.Add(ctx, kind, id, name, revision.Draft{At: s.now(), Who: who, What: cmp.Or(what, "added"), Text: text})
}

// SaveOwn puts a text on top of a version of a kit or rule set. Errors: [*Late],
// those of [revision.Keeper] and of its reader.
func (s *Shelf) SaveOwn(ctx context.Context, kind revision.Kind, id string, base int, text, who, what string) (revision.Version, error) {
	if _, _, err := s.Own(ctx, kind, id); err != nil {
		return revision.Version{}, err
	}
	name, err := readAgain(kind, id, text)
	if err != nil {
		return revision.Version{}, err
	}
	return s.put(ctx, id, name, base, revision.Draft{At: s.now(), Who: who, What: cmp.Or(what, "edit the text"), Text: text}, func(text string) error {
		_, err := readAgain(kind, id, text)
		return err
	})
}

// InUse says which arenas name a kit or rule set that shall be put away.
type InUse struct{ Users []string }

// Error names them.
func (e *InUse) Error() string {
	return "it is in use at " + strings.Join(e.Users, ", ") + ": let those name another first"
}

// PutOwnAway takes a kit or rule set off the list, or puts it back. Errors:
// [revision.ErrNone], and [*InUse].
func (s *Shelf) PutOwnAway(ctx context.Context, kind revision.Kind, id string, away bool) error {
	_, _, err := s.Own(ctx, kind, id)
	if err == nil && away {
		var users []string
		if users, err = s.Users(ctx, kind, id); len(users) > 0 {
			err = &InUse{users}
		}
	}
	if err != nil {
		return err
	}
	return s.keeper.SetAway(ctx, id, away)
}

// Users returns the names of the arenas that name a kit or rule set.
func (s *Shelf) Users(ctx context.Context, kind revision.Kind, id string) ([]string, error) {
	docs, err := s.keeper.Documents(ctx, revision.Arena, true)
	var out []string
	for _, d := range docs {
		v, err := s.keeper.Version(ctx, d.ID, 0)
		if err != nil {
			return nil, err
		}
		doc, err := read(d.ID, v.Text)
		if err != nil {
			return nil, err
		}
		k, sets := named(doc)
		if kind == revision.Kit {
			sets = []string{k}
		}
		for _, one := range sets {
			if one == id {
				out = append(out, d.Name)
			}
		}
	}
	return out, err
}
