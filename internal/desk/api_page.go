package desk

import (
	"net/http"
	"slices"
	"strings"

	"github.com/danielgtaylor/huma/v2"

	"example.org/rinkpane/internal/keep/people"
)

// apiPage tells people what programs may ask.
type apiPage struct {
	frame
	About  string
	Groups []apiGroup
}

type apiGroup struct {
	Name  string
	Calls []apiCall
}

type apiCall struct {
	Method, Path  string
	Summary, More string
	Role          people.Role // the least that may call it
	Takes         []apiField  // in path, query and body
}

type apiField struct {
	Name, In, Kind, What string
	Needed               bool
}

func (d *Desk) apiPage(w http.ResponseWriter, r *http.Request) {
	page := apiPage{frame: d.frame(r, "API"), About: d.spec.Info.Description}
	for _, path := range slices.Sorted(mapKeys(d.spec.Paths)) {
		item := d.spec.Paths[path]
		for _, op := range []*huma.Operation{item.Get, item.Post, item.Put, item.Delete} {
			if op != nil {
				page.add(d.callOf(path, op), op.Tags)
			}
		}
	}
	d.show(w, r, http.StatusOK, "api.tmpl", page)
}

func mapKeys[V any](m map[string]V) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// add puts a call in its group, groups in the order in which they are met.
func (p *apiPage) add(c apiCall, tags []string) {
	name := "other"
	if len(tags) > 0 {
		name = tags[0]
	}
	for i := range p.Groups {
		if p.Groups[i].Name == name {
			p.Groups[i].Calls = append(p.Groups[i].Calls, c)
			return
		}
	}
	p.Groups = append(p.Groups, apiGroup{name, []apiCall{c}})
}

func (d *Desk) callOf(path string, op *huma.Operation) apiCall {
	c := apiCall{Method: op.Method, Path: path, Summary: op.Summary, More: op.Description}
	for _, r := range d.table(nil) {
		if r.pattern == op.Method+" "+path {
			c.Role = people.Roles()[r.need]
		}
	}
	for _, p := range op.Parameters {
		c.Takes = append(c.Takes, apiField{p.Name, p.In, kindOf(p.Schema), p.Description, p.Required})
	}
	if op.RequestBody == nil {
		return c
	}
	for _, media := range op.RequestBody.Content {
		s := media.Schema
		if s.Ref != "" {
			s = d.spec.Components.Schemas.SchemaFromRef(s.Ref)
		}
		for _, name := range slices.Sorted(mapKeys(s.Properties)) {
			f := s.Properties[name]
			c.Takes = append(c.Takes, apiField{name, "body", kindOf(f), f.Description, slices.Contains(s.Required, name)})
		}
	}
	return c
}

// kindOf says what a value is: "string", "list of Edit".
func kindOf(s *huma.Schema) string {
	switch {
	case s.Ref != "":
		return s.Ref[strings.LastIndexByte(s.Ref, '/')+1:]
	case s.Items != nil:
		return "list of " + kindOf(s.Items)
	}
	return s.Type
}
