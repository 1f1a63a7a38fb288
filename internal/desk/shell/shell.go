// Package shell answers: what do all pages of the desk have in common?
//
//	request -> door -> Route -> an area's Answer -> Page, File, Redirect
//	                                    |
//	                                    '-- error -> the error table -> page or problem
//
// The model: an [Area] is a folder of the desk with its templates and its
// [Route]s; it knows the shell and no other area. An area's handler returns what
// went wrong as an error, and one table says which status and words that is, on a
// page for people and as problem details for programs. Whatever can be picked on
// an arena's page stands in its [Address].
//
// The shell also holds what pages are made with: frame, style sheets, modules,
// forms that keep what was typed, and the save that tells who was quicker.
package shell

import (
	"html/template"
	"io/fs"
	"log/slog"
	"time"

	"example.org/rinkpane/internal/desk/shelf"
)

// Shell is what every area stands on. Make one with [New], then mount the areas.
type Shell struct {
	Shelf *shelf.Shelf
	Log   *slog.Logger
	// Under returns the work under way for an arena, for its pages; set by the
	// area that does such work, nil without one.
	Under func(at Address) (Work, bool)
	// Close closes the desk; nil where a page does not do that.
	Close func()
	// LookAgain is how often the door looks whether who listens is still signed in.
	LookAgain time.Duration

	assets    assetSet
	templates *template.Template
	turns     *turns
}

// Area is a part of the desk.
type Area struct {
	Templates fs.FS // its *.tmpl; nil for none
	Routes    []Route
}

// New makes a shell whose style sheets and modules are the files of assets.
func New(on *shelf.Shelf, log *slog.Logger, assets fs.FS) (*Shell, error) {
	s := &Shell{Shelf: on, Log: log, LookAgain: lookAgain, turns: newTurns()}
	var err error
	if s.assets, err = loadAssets(assets); err != nil {
		return nil, err
	}
	s.templates, err = s.funcs().ParseFS(ownTemplates, "templates/*.tmpl")
	return s, err
}

// Add takes in an area's templates and returns its routes, which may be served
// once every area has been added.
func (s *Shell) Add(a Area) ([]Route, error) {
	if a.Templates == nil {
		return a.Routes, nil
	}
	_, err := s.templates.ParseFS(a.Templates, "*.tmpl")
	return a.Routes, err
}
