package shelf

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// Outfit is what an arena is planned with: the kit and the rule sets that its
// document names, of the desk's own, else of those that the program carries; what
// it does not name is as the desk was started.
type Outfit struct {
	Maker plan.Maker
	Live  *plan.Live // what answers while something is dragged
	Key   string     // the same for the same kit and rule sets; "" for the desk's usual ones
}

// mostOutfits is how many are kept; each holds what [plan.Live] keeps.
const mostOutfits = 12

// named returns the kit and the rule sets that a document names.
func named(doc *arena.Document) (k string, sets []string) {
	for _, at := range doc.Items("rules") {
		sets = append(sets, doc.Value(at))
	}
	return doc.Value("kit"), sets
}

// outfit finds what a document is planned with. A name that is neither on the
// desk nor in the program is a [*form.Problem] of the document.
func (s *Shelf) outfit(ctx context.Context, doc *arena.Document) (Outfit, error) {
	k, ids := named(doc)
	if k == "" && len(ids) == 0 {
		return s.usual, nil
	}
	m, key := s.usual.Maker, ""
	if k != "" {
		text, err := s.own(ctx, revision.Kit, k)
		if err == nil {
			key = "kit " + arena.Revision([]byte(text))
			m.Kit, err = kit.Read(k+".yaml", strings.NewReader(text))
		}
		if err != nil {
			return Outfit{}, missing(doc, err, "kit", "this desk keeps no kit "+form.Quote(k)+"; add it on the page of kits and rules, or leave the field out")
		}
	}
	var sets []rules.Set
	for _, id := range ids {
		text, err := s.own(ctx, revision.RuleSet, id)
		if errors.Is(err, revision.ErrNone) {
			var shipped []byte
			if shipped, err = rules.Document(id); err != nil {
				return Outfit{}, &form.Problem{File: doc.Name(), Field: "rules", Text: err.Error() + ", and this desk keeps none of that name"}
			}
			text = string(shipped)
		}
		set, err2 := rules.Read(id+".yaml", strings.NewReader(text))
		if err := errors.Join(err, err2); err != nil {
			return Outfit{}, err
		}
		sets, key = append(sets, set), key+" rules "+arena.Revision([]byte(text))
	}
	if len(sets) > 0 {
		var err error
		if m.Rules, err = rules.InForce(sets...); err != nil {
			return Outfit{}, err
		}
	}
	return s.outfits.get(key, func() (Outfit, error) { return Outfit{m, plan.NewLive(m), key}, nil })
}

// missing tells of a name that the desk does not keep; other errors stay.
func missing(doc *arena.Document, err error, field, text string) error {
	if errors.Is(err, revision.ErrNone) {
		return &form.Problem{File: doc.Name(), Field: field, Text: text}
	}
	return err
}

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

// ReadOwn checks the text of a kit or a rule set and returns the id and the name
// that it would be kept under. Errors are those of its reader.
func ReadOwn(kind revision.Kind, text string) (id, name string, err error) {
	const file = "document"
	if kind == revision.RuleSet {
		set, err := rules.Read(file, strings.NewReader(text))
		if err == nil && set.ID == rules.Trade {
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

// AddOwn keeps a new kit or rule set. Errors: [revision.ErrTaken], and those of its reader.
func (s *Shelf) AddOwn(ctx context.Context, kind revision.Kind, text, who, what string) (revision.Version, error) {
	id, name, err := ReadOwn(kind, text)
	if err == nil {
		err = revision.CheckID(id)
	}
	if err != nil {
		return revision.Version{}, err
	}
	return s.keeper.Add(ctx, kind, id, name, revision.Draft{At: s.now(), Who: who, What: what, Text: text})
}

// SaveOwn puts a text on top of a version of a kit or rule set. The id of a rule
// set stays, since arenas name it. Errors are those of [revision.Keeper] and of its reader.
func (s *Shelf) SaveOwn(ctx context.Context, kind revision.Kind, id string, base int, text, who, what string) error {
	got, name, err := ReadOwn(kind, text)
	if err == nil && kind == revision.RuleSet && got != id {
		err = &form.Problem{File: "document", Field: "id", Text: fmt.Sprintf("%s; arenas name this rule set as %s: leave it, or add the other as a new one", form.Quote(got), id)}
	}
	if err != nil {
		return err
	}
	_, err = s.keeper.Save(ctx, id, name, base, revision.Draft{At: s.now(), Who: who, What: what, Text: text})
	return err
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
