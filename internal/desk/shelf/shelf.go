// Package shelf holds the arenas of a desk: their versions in a keeper, and
// what was worked out for each version, once.
//
//	pages, API --> Shelf --> revision.Keeper   texts, for good
//	                 |
//	                 '-----> plan.Maker        proofs and plans, as long as
//	                                           there is room for them
//
// The model: a version never changes, so what follows from its text is worked
// out when it is first asked for and kept under the text's revision. How much is
// kept is bounded; what is put out is worked out anew when asked for again.
// Whatever is saved has been read and checked: a text that is no sound arena
// stays with the person who wrote it, with the line that is wrong.
package shelf

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"time"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/draw/card"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// How much is kept at most; own choice. A document takes some 0.3 MB when
// parsed, a plan some 0.2 MB with its wedges.
const (
	mostDocuments = 48
	mostProofs    = 200
	mostPlans     = 24
	mostWholes    = 8
	mostRevisions = 20_000 // a few words each
)

// Shelf is the arenas of one desk. It is safe for many at once.
type Shelf struct {
	keeper revision.Keeper
	usual  Outfit // of arenas that name none
	now    func() time.Time

	documents *bounded[string, *arena.Document]
	outfits   *bounded[string, Outfit]
	proofs    *bounded[string, plan.Proof]
	plans     *bounded[string, plan.Plan]
	wholes    *bounded[string, plan.Plan]
	revisions *bounded[string, string]
	texts     *bounded[string, *form.Document]
	seasons   *bounded[string, game.Season]
	scores    *bounded[string, *game.Table]
	rows      *bounded[string, *row]
	rinks     *bounded[string, card.Rink]
	answers   *bounded[string, seat.Answer]
	readings  *bounded[string, recap.Readings]
	recaps    *bounded[string, Recap]
	bests     *bounded[string, recap.Best]

	watchers *watchers
}

// New returns a shelf over a keeper; now is the clock that versions are dated by.
func New(keeper revision.Keeper, maker plan.Maker, now func() time.Time) *Shelf {
	return &Shelf{
		keeper: keeper, usual: Outfit{Maker: maker, Live: plan.NewLive(maker)}, now: now,
		documents: newBounded[string, *arena.Document](mostDocuments),
		outfits:   newBounded[string, Outfit](mostOutfits),
		proofs:    newBounded[string, plan.Proof](mostProofs),
		plans:     newBounded[string, plan.Plan](mostPlans),
		wholes:    newBounded[string, plan.Plan](mostWholes),
		revisions: newBounded[string, string](mostRevisions),
		texts:     newBounded[string, *form.Document](mostTexts),
		seasons:   newBounded[string, game.Season](mostSeasons),
		scores:    newBounded[string, *game.Table](mostSeasons),
		rows:      newBounded[string, *row](mostSeasons),
		rinks:     newBounded[string, card.Rink](mostSeasons),
		answers:   newBounded[string, seat.Answer](mostSeasons),
		readings:  newBounded[string, recap.Readings](mostRecaps),
		recaps:    newBounded[string, Recap](mostRecaps),
		bests:     newBounded[string, recap.Best](mostSeasons),
		watchers:  newWatchers(),
	}
}

// Keeper returns the keeper below, for versions and lists.
func (s *Shelf) Keeper() revision.Keeper { return s.keeper }

// Maker returns the kit and rules that an arena is planned with that names none.
func (s *Shelf) Maker() plan.Maker { return s.usual.Maker }

// Book is one version of one arena, taken off the shelf.
type Book struct {
	Document revision.Document
	Version  revision.Version
	Revision string          // of the text; see [arena.Revision]
	Mark     string          // its short form, for people
	Day      string          // for which the arena is asked about, YYYY-MM-DD
	Arena    *arena.Document // on that day
	Outfit
}

// stamp names what follows from the book: its text, and what it is planned with.
func (b Book) stamp() string { return b.Revision + b.Key + b.Day }

// Open returns a version of an arena, the newest for number 0. Errors:
// [revision.ErrNone], and a kept text that no longer reads.
func (s *Shelf) Open(ctx context.Context, id string, number int) (Book, error) {
	if err := revision.CheckID(id); err != nil || number < 0 {
		return Book{}, revision.ErrNone
	}
	d, err := s.keeper.Document(ctx, id)
	if err == nil && d.Kind != revision.Arena {
		err = revision.ErrNone
	}
	if err != nil {
		return Book{}, err
	}
	v, err := s.keeper.Version(ctx, id, number)
	if err != nil {
		return Book{}, err
	}
	is, day := arena.Revision([]byte(v.Text)), s.today()
	doc, err := s.documents.get(ctx, is+day, func(context.Context) (*arena.Document, error) {
		doc, err := read(id, v.Text)
		if err != nil {
			return nil, err
		}
		return doc.For(day), nil // kept with its day, so that it is checked once
	})
	if err != nil {
		return Book{}, err
	}
	with, err := s.outfit(ctx, doc)
	return Book{d, v, is, arena.Mark([]byte(v.Text)), day, doc, with}, err
}

func (s *Shelf) today() string { return s.now().Format(time.DateOnly) }

// read reads a text as the document of an arena; messages call it by its id.
func read(id, text string) (*arena.Document, error) {
	return arena.Read(id+".yaml", bytes.NewReader([]byte(text)))
}

// Proof surveys and checks a book, quickly.
func (s *Shelf) Proof(ctx context.Context, b Book) (plan.Proof, error) {
	return s.proofs.get(ctx, b.stamp(), func(context.Context) (plan.Proof, error) { return b.Maker.Prove(b.Arena) })
}

// Plan plans every hole of a book. The work outlives the request that first
// asked for it as long as another visitor waits for it.
func (s *Shelf) Plan(ctx context.Context, b Book) (plan.Plan, error) {
	return s.plans.get(ctx, b.stamp(), func(ctx context.Context) (plan.Plan, error) { return b.Maker.Make(ctx, b.Arena) })
}

// Whole is Plan with the guard of the holes and the best legal set of them: all
// that the plan's folder holds.
func (s *Shelf) Whole(ctx context.Context, b Book) (plan.Plan, error) {
	return s.wholes.get(ctx, b.stamp(), func(ctx context.Context) (plan.Plan, error) {
		p, err := s.Plan(ctx, b)
		if err != nil {
			return plan.Plan{}, err
		}
		return b.Maker.Whole(ctx, p, true)
	})
}

// Edited returns a book's document with edits made, checked, and what they did
// in a line. Errors: [*edit.Fault], and the [*form.Problem] of the outcome.
func (s *Shelf) Edited(b Book, edits []edit.Edit) (*arena.Document, string, error) {
	return edited(b, edits, false)
}

// Tried is Edited for an answer at once, of which nothing will be saved: fewer edits
// are taken of a large document.
func (s *Shelf) Tried(b Book, edits []edit.Edit) (*arena.Document, string, error) {
	return edited(b, edits, true)
}

func edited(b Book, edits []edit.Edit, trial bool) (*arena.Document, string, error) {
	doc, what, err := edit.Editor{Standard: b.Maker.Rules.Standard, Trial: trial}.Apply(b.Arena, edits)
	if err != nil {
		return nil, "", err
	}
	_, err = doc.Check()
	return doc, what, err
}

// checked returns a sound arena whose kit and rule sets are to be had.
func (s *Shelf) checked(ctx context.Context, doc *arena.Document) (arena.Arena, error) {
	a, err := doc.Check()
	if err == nil {
		_, err = s.outfit(ctx, doc)
	}
	return a, err
}

// Save puts a checked document on top of a version of an arena, with the holes
// that it renames, so that their histories can be followed. Errors are [*Late],
// those of [revision.Keeper] and of the document's check.
func (s *Shelf) Save(ctx context.Context, id string, base int, doc *arena.Document, who, what string, renames ...revision.Rename) (revision.Version, error) {
	next := s.draft(doc, who, what)
	next.Renames = renames
	return s.save(ctx, id, base, doc, next)
}

func (s *Shelf) save(ctx context.Context, id string, base int, doc *arena.Document, next revision.Draft) (revision.Version, error) {
	a, err := s.checked(ctx, doc)
	if err != nil {
		return revision.Version{}, err
	}
	return s.put(ctx, id, a.Name, base, next, func(text string) error {
		_, err := s.Read(id, text)
		return err
	})
}

// Edit makes edits in a book and saves the outcome on top of it; the version says
// what they did, unless it is told what to say. Errors are those of [Shelf.Edited]
// and [Shelf.Save].
func (s *Shelf) Edit(ctx context.Context, b Book, edits []edit.Edit, who, what string) (*arena.Document, revision.Version, error) {
	return s.change(ctx, b, Change{Edits: edits, Who: who, What: what})
}

func (s *Shelf) change(ctx context.Context, b Book, c Change) (*arena.Document, revision.Version, error) {
	doc, did, err := s.Edited(b, c.Edits)
	if err != nil {
		return nil, revision.Version{}, err
	}
	before, err1 := b.Arena.Check()
	after, err2 := doc.Check()
	if err := errors.Join(err1, err2); err != nil {
		return nil, revision.Version{}, err
	}
	next := s.draft(doc, c.Who, cmp.Or(c.What, did))
	next.Renames, next.Once = renamed(c.Edits, before, after), c.Once
	v, err := s.save(ctx, b.Document.ID, b.Version.Number, doc, next)
	return doc, v, err
}

func (s *Shelf) draft(doc *arena.Document, who, what string) revision.Draft {
	return revision.Draft{At: s.now(), Who: who, What: what, Text: string(doc.Bytes())}
}

// Read reads and checks a text that shall become the arena of an id.
func (s *Shelf) Read(id, text string) (*arena.Document, error) {
	doc, err := read(id, text)
	if err != nil {
		return nil, err
	}
	doc = doc.For(s.today())
	_, err = doc.Check()
	return doc, err
}

// mostSameNames is how many arenas may share an id but for a number at its end.
const mostSameNames = 1000

// Add puts a new arena on the shelf. Without an id it takes one from the
// arena's name, with a number where that is taken. Errors: [revision.ErrTaken]
// for an id that was asked for, and those of the document's check.
func (s *Shelf) Add(ctx context.Context, id string, doc *arena.Document, who, what string) (revision.Version, error) {
	a, err := s.checked(ctx, doc)
	if err != nil {
		return revision.Version{}, err
	}
	if id != "" {
		return s.keeper.Add(ctx, revision.Arena, id, a.Name, s.draft(doc, who, what))
	}
	base := revision.IDFrom(a.Name)
	free := base
	for n := 2; ; n++ {
		v, err := s.keeper.Add(ctx, revision.Arena, free, a.Name, s.draft(doc, who, what))
		if !errors.Is(err, revision.ErrTaken) || n > mostSameNames {
			return v, err
		}
		free = fmt.Sprintf("%s-%d", base, n)
	}
}
