package api

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/arena"
)

// OwnLine is a kit or a rule set of the desk's own, in a list.
type OwnLine struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Head int    `json:"head" doc:"The newest version."`
	Away bool   `json:"away" doc:"Put away: kept, and not to be named by arenas."`
}

// OwnText is the newest version of one with its text.
type OwnText struct {
	OwnLine
	Version  VersionLine   `json:"version"`
	Mark     string        `json:"mark"`
	Text     string        `json:"text"`
	Users    []string      `json:"users" doc:"The arenas that name it: a change counts there at once."`
	Versions []VersionLine `json:"versions" doc:"The newest first, 50 at most."`
}

// OwnSaved says where a kit or a rule set was saved.
type OwnSaved struct {
	ID      string      `json:"id"`
	Version VersionLine `json:"version"`
	Mark    string      `json:"mark"`
}

// tagged is an answer about a version, which its ETag names.
type tagged[T any] struct {
	ETag string `header:"ETag" doc:"Of the version, for If-Match."`
	Body T
}

func tagOf(version int) string { return fmt.Sprintf(`"%d"`, version) }

// OwnKind names a kind in a path.
type OwnKind struct {
	Kind string `path:"kind" enum:"kit,rules"`
}

// OwnID names a kit or a rule set in a path.
type OwnID struct {
	OwnKind
	ID string `path:"id" maxLength:"64"`
}

type ownTexts struct {
	Text string `json:"text" minLength:"1" doc:"The document of the kit or rule set."`
	What string `json:"what,omitempty" maxLength:"200" doc:"What changed, in a line."`
}

type ownList struct {
	Documents []OwnLine `json:"documents"`
}

func (s *server) library() {
	answer(s, "GET /api/library/{kind}", "list-own", "The kits or the rule sets of this desk", s.ownList)
	route(s, "POST /api/library/{kind}", "add-own", "Add a kit or a rule set", s.addOwn, created,
		more("The id is that in a rule set's document, and from a kit's name."))
	route(s, "GET /api/library/{kind}/{id}", "get-own", "A kit or a rule set with its text", s.getOwn)
	route(s, "PUT /api/library/{kind}/{id}", "save-own", "Save a kit or a rule set as a new version", s.saveOwn,
		more("If-Match is the ETag of the version that it was made from. When somebody saved since, nothing is saved and the answer is 412 with conflict; without If-Match it is 428."))
	route(s, "POST /api/library/{kind}/{id}/away", "put-own-away", "Put a kit or a rule set away, or bring it back", s.putOwnAway, short, silent,
		more("One that an arena names stays: 409."))
}

// ownError says of which kind nothing was found.
func ownError(kind string, err error) error {
	if errors.Is(err, revision.ErrNone) {
		return problem(http.StatusNotFound, "this desk keeps no such document of the kind "+kind+", or no such version of it")
	}
	return err
}

func (s *server) ownList(ctx context.Context, in *OwnKind) (ownList, error) {
	docs, err := s.Shelf.Keeper().Documents(ctx, revision.Kind(in.Kind), true)
	out := ownList{[]OwnLine{}}
	for _, d := range docs {
		out.Documents = append(out.Documents, OwnLine{d.ID, d.Name, d.Head, d.Away})
	}
	return out, err
}

func (s *server) addOwn(ctx context.Context, in *struct {
	OwnKind
	Body ownTexts
}) (*tagged[OwnSaved], error) {
	v, err := s.Shelf.AddOwn(ctx, revision.Kind(in.Kind), in.Body.Text, s.Who(ctx), in.Body.What)
	return ownSaved(v), err
}

func ownSaved(v revision.Version) *tagged[OwnSaved] {
	return &tagged[OwnSaved]{tagOf(v.Number), OwnSaved{v.Document, lineOf(v), arena.Mark([]byte(v.Text))}}
}

func (s *server) getOwn(ctx context.Context, in *OwnID) (*tagged[OwnText], error) {
	o, err := s.Shelf.OwnPage(ctx, revision.Kind(in.Kind), in.ID)
	if err != nil {
		return nil, ownError(in.Kind, err)
	}
	d, v := o.Document, o.Version
	return &tagged[OwnText]{tagOf(v.Number), OwnText{
		OwnLine{d.ID, d.Name, d.Head, d.Away}, lineOf(v), arena.Mark([]byte(v.Text)), v.Text, append([]string{}, o.Users...), linesOf(o.Versions),
	}}, nil
}

// saveOwn saves on top of the version that If-Match names (RFC 9110, section
// 13.1.1); what is missing is asked for (RFC 6585, section 3).
func (s *server) saveOwn(ctx context.Context, in *struct {
	OwnID
	Match string `header:"If-Match" doc:"The ETag of the version that it was made from, such as \"3\"."`
	Body  ownTexts
}) (*tagged[OwnSaved], error) {
	if in.Match == "" {
		return nil, problem(http.StatusPreconditionRequired, "If-Match is missing: send the ETag that reading the document answered")
	}
	if _, _, err := s.Shelf.Own(ctx, revision.Kind(in.Kind), in.ID); err != nil {
		return nil, ownError(in.Kind, err)
	}
	base, err := strconv.Atoi(strings.Trim(in.Match, `"`))
	if err == nil && tagOf(base) != in.Match {
		err = revision.ErrNone
	}
	var v revision.Version
	if err == nil {
		v, err = s.Shelf.SaveOwn(ctx, revision.Kind(in.Kind), in.ID, base, in.Body.Text, s.Who(ctx), in.Body.What)
	}
	var late *shelf.Late
	switch {
	case errors.As(err, &late):
		return nil, conflict(ctx, http.StatusPreconditionFailed, late)
	case errors.Is(err, revision.ErrNone), errors.Is(err, strconv.ErrSyntax), errors.Is(err, strconv.ErrRange):
		return nil, problem(http.StatusPreconditionFailed, "If-Match names no version: send the ETag that reading the document answered")
	}
	return ownSaved(v), err
}

func (s *server) putOwnAway(ctx context.Context, in *struct {
	OwnID
	Body putting
}) (*struct{}, error) {
	return nil, ownError(in.Kind, s.Shelf.PutOwnAway(ctx, revision.Kind(in.Kind), in.ID, in.Body.Away))
}
