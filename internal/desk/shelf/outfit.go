package shelf

import (
	"context"
	"errors"
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
	return s.outfits.get(ctx, key, func(context.Context) (Outfit, error) { return Outfit{m, plan.NewLive(m), key}, nil })
}

// missing tells of a name that the desk does not keep; other errors stay.
func missing(doc *arena.Document, err error, field, text string) error {
	if errors.Is(err, revision.ErrNone) {
		return &form.Problem{File: doc.Name(), Field: field, Text: text}
	}
	return err
}
