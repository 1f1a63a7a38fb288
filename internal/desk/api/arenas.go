package api

import (
	"cmp"
	"context"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/wire"
)

// ArenaLine is one arena of the list.
type ArenaLine struct {
	ID      string       `json:"id"`
	Name    string       `json:"name"`
	Version int          `json:"version" doc:"The newest."`
	Away    bool         `json:"away" doc:"Put away: kept, but not listed unless asked for."`
	Verdict rules.Status `json:"verdict" enum:"pass,fail,unknown"`
	Survey  *wire.Survey `json:"survey,omitempty"`
	Problem string       `json:"problem,omitempty" doc:"Why it cannot be planned."`
}

// VersionLine is one version without its text.
type VersionLine struct {
	Number int       `json:"number"`
	Parent int       `json:"parent" doc:"The version it was made from; 0 for the first."`
	At     time.Time `json:"at"`
	Who    string    `json:"who"`
	What   string    `json:"what"`
	// Renames are told where there are any.
	Renames []revision.Rename `json:"renames,omitempty" doc:"Holes that are called otherwise than in the version before."`
}

func lineOf(v revision.Version) VersionLine {
	return VersionLine{v.Number, v.Parent, v.At, v.Who, v.What, v.Renames}
}

func linesOf(versions []revision.Version) []VersionLine {
	out := make([]VersionLine, len(versions))
	for i, v := range versions {
		out[i] = lineOf(v)
	}
	return out
}

// ArenaState is one version of one arena with what its pages start from.
type ArenaState struct {
	ID      string      `json:"id"`
	Name    string      `json:"name"`
	Head    int         `json:"head" doc:"The newest version."`
	Away    bool        `json:"away"`
	Version VersionLine `json:"version"`
	Mark    string      `json:"mark" doc:"Of the text: the same text has the same mark."`
	Undo    int         `json:"undo" doc:"The version that an undo puts on top; 0 without one."`
	Redo    int         `json:"redo" doc:"The version that a redo puts on top; 0 without one."`
	Units   string      `json:"units" enum:"metric,imperial"`
	Layout  Layout      `json:"layout"`
	Now     wire.Now    `json:"now"`
}

// ID names an arena in a path.
type ID struct {
	ID string `path:"id" maxLength:"64" doc:"The arena's id."`
}

// AtVersion names a version in a query.
type AtVersion struct {
	ID
	Version int `query:"version" minimum:"0" doc:"The newest for 0 or none."`
}

func (at *AtVersion) version() (string, int) { return at.ID.ID, at.Version }

type listed struct {
	Arenas []ArenaLine `json:"arenas"`
}

type imported struct {
	ID   string `json:"id,omitempty" pattern:"^[a-z0-9]([a-z0-9-]{0,62}[a-z0-9])?$" doc:"From the arena's name without it."`
	Text string `json:"text" minLength:"1" doc:"The arena document."`
	What string `json:"what,omitempty" maxLength:"200"`
}

// mostSent is the most bytes of a request with a document in it: a megabyte of
// text, every character escaped.
const mostSent = 3 << 20

// fewWords is the most bytes of a request without a document.
const fewWords = 4 << 10

// Saved says where a save went.
type Saved struct {
	ID      string      `json:"id"`
	Version VersionLine `json:"version"`
	Mark    string      `json:"mark"`
	Undo    int         `json:"undo" doc:"The version that an undo puts on top; 0 without one."`
	Redo    int         `json:"redo" doc:"The version that a redo puts on top; 0 without one."`
}

// saved answers a save. That it was saved is true even when the steps cannot be told.
func (s *server) saved(ctx context.Context, v revision.Version, err error) (Saved, error) {
	if err != nil {
		return Saved{}, err
	}
	to, err := s.Shelf.Steps(ctx, v.Document)
	if err != nil {
		s.Log.WarnContext(ctx, "api", "steps", v.Document, "error", err)
	}
	return Saved{v.Document, lineOf(v), arena.Mark([]byte(v.Text)), to.Undo, to.Redo}, nil
}

func (s *server) arenas() {
	answer(s, "GET /api/arenas", "list-arenas", "The arenas, each with its verdict", s.list)
	answer(s, "POST /api/arenas", "import-arena", "Import an arena document", s.importArena, created)
	ofBook(s, "GET /api/arenas/{id}", "get-arena", "One arena: layout, holes, findings", s.state)
	route(s, "POST /api/arenas/{id}/away", "put-away", "Put an arena away, or bring it back", s.putAway, short, silent)
	ofBook(s, "GET /api/arenas/{id}/plan", "plan-arena", "All results of one version, as the command plan writes them", s.plan)
}

func (s *server) list(ctx context.Context, in *struct {
	Away bool `query:"away" doc:"Those put away as well."`
}) (listed, error) {
	docs, err := s.Shelf.Keeper().Documents(ctx, revision.Arena, in.Away)
	out := listed{[]ArenaLine{}}
	for _, d := range docs {
		line := ArenaLine{ID: d.ID, Name: d.Name, Version: d.Head, Away: d.Away, Verdict: rules.Unknown}
		proof, err := s.proofOf(ctx, d.ID)
		if err != nil {
			line.Problem = err.Error()
		} else {
			survey := wire.SurveyOf(proof.Survey)
			line.Verdict, line.Survey = proof.Verdict, &survey
		}
		out.Arenas = append(out.Arenas, line)
	}
	return out, err
}

func (s *server) proofOf(ctx context.Context, id string) (plan.Proof, error) {
	b, err := s.Shelf.Open(ctx, id, 0)
	if err != nil {
		return plan.Proof{}, err
	}
	return s.Shelf.Proof(ctx, b)
}

func (s *server) importArena(ctx context.Context, in *body[imported]) (Saved, error) {
	doc, err := s.Shelf.Read(cmp.Or(in.Body.ID, "arena"), in.Body.Text)
	if err != nil {
		return Saved{}, err
	}
	v, err := s.Shelf.Add(ctx, in.Body.ID, doc, s.Who(ctx), cmp.Or(in.Body.What, "import"))
	return s.saved(ctx, v, err)
}

func (s *server) state(ctx context.Context, b shelf.Book, _ *AtVersion) (ArenaState, error) {
	now, err := b.Live.Try(b.Arena, plan.Question{})
	if err != nil {
		return ArenaState{}, err
	}
	a, err := b.Arena.Check()
	if err != nil {
		return ArenaState{}, err
	}
	to, err := s.Shelf.Steps(ctx, b.Document.ID)
	return ArenaState{
		Undo: to.Undo, Redo: to.Redo,
		ID: b.Document.ID, Name: b.Document.Name, Head: b.Document.Head, Away: b.Document.Away,
		Version: lineOf(b.Version), Mark: b.Mark, Units: a.Units.String(), Layout: layoutOf(a), Now: wire.NowOf(now, a.Units),
	}, err
}

// putting says whether something is put away or brought back.
type putting struct {
	Away bool `json:"away"`
}

func (s *server) putAway(ctx context.Context, in *struct {
	ID
	Body putting
}) (*struct{}, error) {
	return nil, s.Shelf.Keeper().SetAway(ctx, in.ID.ID, in.Body.Away)
}

func (s *server) plan(ctx context.Context, b shelf.Book, _ *AtVersion) (wire.Plan, error) {
	p, err := s.Shelf.Whole(ctx, b)
	if err != nil {
		return wire.Plan{}, err
	}
	return wire.PlanOf(p, p.Survey.Units), nil
}
