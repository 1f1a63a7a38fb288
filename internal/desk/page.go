package desk

import (
	"bytes"
	"embed"
	"html/template"
	"net/http"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/keep/people"
)

//go:embed templates
var templateFiles embed.FS

func loadTemplates(assets assetSet) (*template.Template, error) {
	return template.New("").Funcs(template.FuncMap{
		"slots":    func() []int { return []int{0, 1} }, // pan, tilt
		"asset":    assets.address,
		"cautions": plan.Cautions,
		"status":   statusWord,
		"keeps":    keepsWords,
		"metres":   toMillimetre,
		"count":    plan.Count,
	}).ParseFS(templateFiles, "templates/*.tmpl")
}

// frame is what surrounds every page: title, theme, the way back.
type frame struct {
	Title  string
	Theme  theme
	Themes []theme
	Here   string // this page's own path and query, to return to
	Person string // who is signed in; "" while nobody is set up
	Role   people.Role
	Plans  bool // the visitor may change plans
}

func (d *Desk) frame(r *http.Request, title string) frame {
	here := "/"
	if r.Method == http.MethodGet {
		here = r.URL.RequestURI()
	}
	p, _ := door.Person(r.Context())
	return frame{
		Title: title, Theme: themeOf(r), Themes: themes, Here: here,
		Person: p.Name, Role: p.Role, Plans: door.May(r.Context(), people.Plan),
	}
}

// show renders a page whole before the first byte goes out, so that a template
// that fails gives an error page instead of half a page.
func (d *Desk) show(w http.ResponseWriter, r *http.Request, status int, name string, page any) {
	var out bytes.Buffer
	if err := d.templates.ExecuteTemplate(&out, name, page); err != nil {
		d.log.Error("desk", "path", r.URL.Path, "template", name, "error", err)
		http.Error(w, "This page broke; the terminal that runs the desk shows why.", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Cache-Control", "no-store")
	send(w, r, status, "text/html; charset=utf-8", out.Bytes(), nil)
}

// statusWord says a status in plain words.
func statusWord(s rules.Status) string {
	switch s {
	case rules.Pass:
		return "kept"
	case rules.Fail:
		return "broken"
	}
	return "not known"
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
