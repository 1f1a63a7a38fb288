package api

import (
	"iter"
	"maps"
	"net/http"
	"slices"
	"strings"

	"github.com/danielgtaylor/huma/v2"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

// apiPage tells people what programs may ask.
type apiPage struct {
	shell.Frame
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

func (d area) apiPage(w http.ResponseWriter, r *http.Request) error {
	page := apiPage{Frame: d.Frame(r, "API"), About: d.spec.Info.Description}
	for op, path := range operations(d.spec) {
		page.add(d.callOf(path, op), op.Tags)
	}
	return d.Page(w, r, http.StatusOK, "api.tmpl", page)
}

// operations are the calls that a specification describes, by their paths.
func operations(spec *huma.OpenAPI) iter.Seq2[*huma.Operation, string] {
	return func(yield func(*huma.Operation, string) bool) {
		for _, path := range slices.Sorted(maps.Keys(spec.Paths)) {
			item := spec.Paths[path]
			for _, op := range []*huma.Operation{item.Get, item.Post, item.Put, item.Patch, item.Delete} {
				if op != nil && !yield(op, path) {
					return
				}
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

func (d area) callOf(path string, op *huma.Operation) apiCall {
	c := apiCall{Method: op.Method, Path: path, Summary: op.Summary, More: op.Description, Role: people.Roles()[needOf(op)]}
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
		for _, name := range slices.Sorted(maps.Keys(s.Properties)) {
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
