package shelf

import (
	"cmp"
	"context"
	"errors"
	"io"
	"io/fs"
	"slices"
	"strings"
	"time"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
)

// Games is one version of a games document, taken off the shelf with the arena that it
// names.
type Games struct {
	Document revision.Document
	Version  revision.Version
	Text     *form.Document
	Season   game.Season
	Arena    Book // the version that the season was read with
	// Unfit is why the document no longer fits the newest version of its arena, which
	// changed since; Arena is then the newest that it does fit. Nil when it fits.
	Unfit   error
	grounds string // names the arena and the kit that the season was read with
}

// mostSeasons is how many read seasons, and of each kind what follows from one, are kept.
const mostSeasons = 16

// mostTexts is how many parsed games documents are kept: one of 1,312 games takes some 10 MB.
const mostTexts = 4

// OpenGames returns the newest version of a games document. Errors: [revision.ErrNone],
// and a kept text that no longer reads with any version of its arena.
func (s *Shelf) OpenGames(ctx context.Context, id string) (g Games, err error) {
	if revision.CheckID(id) != nil {
		return g, revision.ErrNone
	}
	if g.Document, g.Version, err = s.Own(ctx, revision.Games, id); err != nil {
		return g, err
	}
	return s.readGames(ctx, g)
}

// readGames reads a version with the newest version of its arena that it fits.
func (s *Shelf) readGames(ctx context.Context, g Games) (Games, error) {
	newest, err := s.readWith(ctx, g, 0)
	var at *form.Problem
	if err == nil || !errors.As(err, &at) {
		return newest, err
	}
	for n := newest.Arena.Version.Number - 1; n > 0 && n >= newest.Arena.Version.Number-fitsBack; n-- {
		if old, oldErr := s.readWith(ctx, g, n); oldErr == nil {
			old.Unfit = err
			return old, nil
		}
	}
	return newest, err
}

// fitsBack is how many versions of an arena back one is looked for that games fit.
const fitsBack = 20

// readWith reads a version with a version of its arena, the newest for 0.
func (s *Shelf) readWith(ctx context.Context, g Games, version int) (Games, error) {
	name := cmp.Or(g.Document.ID, "games") + ".yaml"
	var err error
	if g.Text, err = s.text(ctx, name, g.Version.Text); err != nil {
		return g, err
	}
	kitText := ""
	if id := arenaNamed(g.Text); id != "" {
		if g.Arena, err = s.Open(ctx, id, version); err != nil && !errors.Is(err, revision.ErrNone) {
			return g, err
		}
	}
	if id := idNamed(g.Text, "kit"); id != "" {
		if kitText, err = s.own(ctx, revision.Kit, id); err != nil && !errors.Is(err, revision.ErrNone) {
			return g, err
		}
	}
	g.grounds = g.Arena.Revision + g.Arena.Key + arena.Revision([]byte(kitText))
	open := func(path string) (io.ReadCloser, error) {
		switch {
		case path == g.Text.Value("arena") && g.Arena.Version.Text != "":
			return io.NopCloser(strings.NewReader(g.Arena.Version.Text)), nil
		case path == g.Text.Value("kit") && kitText != "":
			return io.NopCloser(strings.NewReader(kitText)), nil
		}
		return nil, errNotHere
	}
	g.Season, err = s.seasons.get(ctx, g.key(), func(context.Context) (game.Season, error) {
		season, err := game.From(g.Text, open)
		if err == nil {
			season = season.Under(g.Arena.Maker.Rules)
		}
		return season, err
	})
	return g, err
}

// text parses the text of a games document, or finds it parsed: a long season takes a tenth
// of a second.
func (s *Shelf) text(ctx context.Context, name, text string) (*form.Document, error) {
	doc, err := s.texts.get(ctx, name+arena.Revision([]byte(text)), func(context.Context) (*form.Document, error) {
		return form.Read(name, strings.NewReader(text), game.MaxBytes)
	})
	if err != nil {
		return nil, err
	}
	return doc.Afresh(), nil
}

// key names all that the season was read from.
func (g Games) key() string { return arena.Revision([]byte(g.Version.Text)) + g.grounds }

var errNotHere = &notHere{}

// notHere says that the desk does not keep what a games document names.
type notHere struct{}

func (*notHere) Error() string {
	return "this desk keeps none of that name: write the id of an arena or kit of the desk; a schedule is imported on the page of the games"
}

func (*notHere) Unwrap() error { return fs.ErrNotExist }

// arenaNamed is the id of the arena that a games document names, by a file or an id.
func arenaNamed(doc *form.Document) string { return idNamed(doc, "arena") }

func idNamed(doc *form.Document, field string) string {
	name := doc.Value(field)
	name = name[strings.LastIndexByte(name, '/')+1:]
	return strings.TrimSuffix(strings.TrimSuffix(name, ".yaml"), ".yml")
}

// ArenaAt returns the number of the version of an arena that was the newest at a time, of
// its first for a time before.
func (s *Shelf) ArenaAt(ctx context.Context, id string, at time.Time) (int, error) {
	versions, err := s.keeper.History(ctx, id, farBack)
	if err != nil || len(versions) == 0 {
		return 0, errors.Join(err, revision.ErrNone)
	}
	k := slices.IndexFunc(versions, func(v revision.Version) bool { return !v.At.After(at) })
	if k < 0 {
		k = len(versions) - 1
	}
	return versions[k].Number, nil
}

// GamesOf lists the games documents of an arena by id; those put away are left out.
func (s *Shelf) GamesOf(ctx context.Context, slug string) (out []revision.Document, err error) {
	docs, err := s.keeper.Documents(ctx, revision.Games, false)
	for _, d := range docs {
		v, err := s.keeper.Version(ctx, d.ID, 0)
		if err != nil {
			return nil, err
		}
		doc, err := game.Part(d.ID, v.Text, "arena")
		if err == nil && arenaNamed(doc) == slug {
			out = append(out, d)
		}
	}
	return out, err
}

// AddGames keeps a new games document of an arena. Its id is made from its name. Errors:
// [revision.ErrTaken], a document that names another arena, and those of [game.Read].
func (s *Shelf) AddGames(ctx context.Context, slug, text, who, what string) (revision.Version, error) {
	g, err := s.readWith(ctx, Games{Version: revision.Version{Text: text}}, 0)
	if err != nil {
		return revision.Version{}, err
	}
	if err := plays(g, slug); err != nil {
		return revision.Version{}, err
	}
	if g.Season.Name == "" {
		return revision.Version{}, &form.Problem{File: g.Text.Name(), Field: "name", Text: "is missing; the desk calls the season by it"}
	}
	return s.keeper.Add(ctx, revision.Games, revision.IDFrom(g.Season.Name), g.Season.Name, revision.Draft{At: s.now(), Who: who, What: what, Text: text})
}

func plays(g Games, slug string) error {
	if id := arenaNamed(g.Text); id != slug {
		return &form.Problem{File: g.Text.Name(), Field: "arena", Text: form.Quote(id) + " is another arena; write arena: " + slug + ", or import it on that one's page"}
	}
	return nil
}

// GamesChange is what a form of a games document changes.
type GamesChange struct {
	// Touches names the parts that are changed, as [form.Document.Differ] does; what is
	// only added touches none.
	Touches   []string
	Make      func(*form.Document) (*form.Document, error)
	Who, What string
}

// ChangeGames makes a change in a games document and saves it on top of what a form was
// made from. What others saved since is kept where it is about other parts; else the error
// is [*Late]. Others are those of [game.Read].
func (s *Shelf) ChangeGames(ctx context.Context, g Games, base int, c GamesChange) (revision.Version, error) {
	id := g.Document.ID
	from := g
	if base != g.Version.Number {
		v, err := s.keeper.Version(ctx, id, base)
		if err != nil {
			return revision.Version{}, err
		}
		from.Version = v
		if from.Text, err = s.text(ctx, id+".yaml", v.Text); err != nil {
			return revision.Version{}, err
		}
	}
	for top := g; ; {
		doc, err := c.Make(top.Text)
		if err != nil {
			return revision.Version{}, err
		}
		next := revision.Draft{At: s.now(), Who: c.Who, What: c.What, Text: string(doc.Text())}
		if _, err := s.texts.get(ctx, id+".yaml"+arena.Revision(doc.Text()), func(context.Context) (*form.Document, error) { return doc.Afresh(), nil }); err != nil {
			return revision.Version{}, err
		}
		if touched(from.Text, top.Text, c.Touches) {
			return revision.Version{}, s.lateGames(id, from, top, c, next)
		}
		v, err := s.SaveGames(ctx, top, top.Version.Number, next)
		var late *Late
		if err == nil || !errors.As(err, &late) {
			return v, err
		}
		if top, err = s.OpenGames(ctx, id); err != nil {
			return revision.Version{}, err
		}
	}
}

// touched reports whether somebody changed one of the parts between two documents.
func touched(from, to *form.Document, parts []string) bool {
	for _, p := range parts {
		list, _, _ := strings.Cut(p, "[")
		if slices.Contains(from.Differ(to, list), p) {
			return true
		}
	}
	return false
}

func (s *Shelf) lateGames(id string, from, top Games, c GamesChange, next revision.Draft) error {
	return &Late{Stale: &revision.Stale{Base: from.Version.Number, Head: top.Version}, From: from.Version, Mine: next.Text, What: c.What, Both: c.Touches,
		read: func(text string) error { return s.checkGames(context.Background(), top, text) }}
}

// SaveGames puts a text on top of a version of a games document. Errors: [*Late], those of
// [game.Read] and of [revision.Keeper].
func (s *Shelf) SaveGames(ctx context.Context, g Games, base int, next revision.Draft) (revision.Version, error) {
	next.At = s.now()
	if err := s.checkGames(ctx, g, next.Text); err != nil {
		return revision.Version{}, err
	}
	doc, err := game.Part(g.Document.ID, next.Text, "name")
	if err != nil {
		return revision.Version{}, err
	}
	return s.put(ctx, g.Document.ID, cmp.Or(doc.Value("name"), g.Document.Name), base, next, func(text string) error { return s.checkGames(ctx, g, text) })
}

// checkGames reads a text that shall become the next version: it must fit a version of its
// arena, since what no longer fits the newest is put right one after the other.
func (s *Shelf) checkGames(ctx context.Context, g Games, text string) error {
	next, err := s.readGames(ctx, Games{Document: g.Document, Version: revision.Version{Text: text}})
	if err != nil {
		return err
	}
	return plays(next, g.Arena.Document.ID)
}
