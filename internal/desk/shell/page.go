package shell

import (
	"bytes"
	"embed"
	"encoding/json"
	"html/template"
	"net/http"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/words"
)

//go:embed templates
var ownTemplates embed.FS

func (s *Shell) funcs() *template.Template {
	return template.New("").Funcs(template.FuncMap{
		"slots":    func() []int { return []int{0, 1} }, // pan, tilt
		"asset":    s.assets.address,
		"needs":    s.assets.needs,
		"cautions": glass.Cautions,
		"status":   words.Status,
		"keeps":    keepsWords,
		"metres":   Metres,
		"angles":   func() string { return words.AnglesKey },
		"count":    say.Count,
		"when":     when,
	})
}

// Frame is what surrounds every page: title, theme, the way back.
type Frame struct {
	Title  string
	Module string // the page's script
	Theme  theme
	Themes []theme
	Here   string // this page's own path and query, to return to
	Person string // who is signed in; "" while nobody is set up
	Role   people.Role
	Plans  bool  // the visitor may change plans
	Under  *Work // of the arena that the page is about, of any where it is about none
	Alone  bool  // the page is about no arena
	Closes bool  // the visitor may close the desk
}

// Work is work under way for an arena, to be found again from any of its pages.
type Work struct {
	Words string // "a choice of holes is being worked out, 40 %"
	URL   string
}

// Frame returns the frame of a page for a visitor.
func (s *Shell) Frame(r *http.Request, title string) Frame {
	here := "/"
	if r.Method == http.MethodGet {
		here = r.URL.RequestURI()
	}
	p, _ := door.Person(r.Context())
	var under *Work
	at, err := ReadAddress(r.PathValue("slug"), r.URL.Query())
	if err == nil && s.Under != nil && door.May(r.Context(), people.Read) {
		if w, ok := s.Under(at.Shared()); ok {
			under = &w
		}
	}
	plans := door.May(r.Context(), people.Plan)
	return Frame{
		Module: "desk.js", Closes: plans && s.Close != nil,
		Under: under, Alone: at.Slug == "", Title: title, Theme: themeOf(r), Themes: themes, Here: here,
		Person: p.Name, Role: p.Role, Plans: plans,
	}
}

// Dim returns the frame for a page that is used in the dark: dim unless the visitor
// asked for light.
func (f Frame) Dim() Frame {
	if f.Theme == themeAuto {
		f.Theme = themeDim
	}
	return f
}

// Page renders a page whole before the first byte goes out, so that a template
// that fails gives an error page instead of half a page.
func (s *Shell) Page(w http.ResponseWriter, r *http.Request, status int, name string, page any) error {
	text, err := s.Piece(name, page)
	if err != nil {
		return err
	}
	w.Header().Set("Cache-Control", "no-store")
	Send(w, r, status, "text/html; charset=utf-8", text, nil)
	return nil
}

// Piece renders one template.
func (s *Shell) Piece(name string, data any) ([]byte, error) {
	var out bytes.Buffer
	err := s.templates.ExecuteTemplate(&out, name, data)
	return out.Bytes(), err
}

// JSON answers a page's module.
func (s *Shell) JSON(w http.ResponseWriter, r *http.Request, status int, v any) error {
	var text bytes.Buffer
	enc := json.NewEncoder(&text)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil {
		return err
	}
	w.Header().Set("Cache-Control", "no-store")
	Send(w, r, status, "application/json", text.Bytes(), nil)
	return nil
}

// Goto sends a visitor on after a form.
func (s *Shell) Goto(w http.ResponseWriter, r *http.Request, to string) error {
	http.Redirect(w, r, to, http.StatusSeeOther)
	return nil
}

// when is a time for people, "-" for none: a module turns it into the visitor's own.
func when(at time.Time) template.HTML {
	if at.IsZero() {
		return "-"
	}
	return template.HTML(at.UTC().Format(`<time datetime="2006-01-02T15:04:05Z">2 Jan 2006, 15:04 UTC</time>`)) // holds nothing but digits and months
}

// keepsWords says how a hole stands with the rules that concern it.
func keepsWords(s rules.Status) string {
	switch s {
	case rules.Pass:
		return "keeps every rule"
	case rules.Fail:
		return "breaks a rule"
	}
	return "a number is missing"
}
