// Package api serves the desk's engine as JSON over HTTP: what the pages use,
// and whoever wants to build on it. It answers for arenas and their versions,
// edits, trials without saving, and the rule sets and kit in force.
//
//	GET  /api                          this API for people
//	GET  /api/openapi.json             and for programs, OpenAPI 3.1
//	     /api/arenas ...               see docs/api.md
//
// The model: a request names the version it was made from, and a save from an
// older version than the newest is answered 409 with what came between and a
// merged proposal. Numbers are SI, fields carry their unit in their names.
// Errors are problem details (RFC 9457), with file, line and field where a
// document is wrong.
//
// Limits: who may call what is settled before a request comes here, by package
// door.
package api

import (
	"context"
	"log/slog"
	"math"
	"net/http"
	"path"
	"reflect"
	"strconv"
	"strings"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/adapters/humago"

	"example.org/rinkpane/internal/desk/parcel"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/survey/edit"
)

// Options is what the API needs.
type Options struct {
	Shelf   *shelf.Shelf
	Packer  *parcel.Packer
	Who     func(context.Context) string // the name of the person who asks
	Version string                       // of the program
	Log     *slog.Logger
}

type server struct {
	Options
	api huma.API
	tag string // of the calls that are being added
}

// Mount adds the API to a mux, all below /api.
func Mount(mux *http.ServeMux, o Options) *huma.OpenAPI {
	s := &server{Options: o}
	s.api = humago.New(mux, config(o.Version))
	s.api.UseMiddleware(func(c huma.Context, next func(huma.Context)) {
		c.SetHeader("Cache-Control", "no-store")
		next(c)
	})
	for _, area := range []struct {
		tag string
		add func()
	}{{"arenas", s.arenas}, {"versions", s.versions}, {"edits", s.edits}, {"files", s.files}, {"catalogue", s.catalogue}, {"library", s.library}} {
		s.tag = area.tag
		area.add()
	}
	spec := s.api.OpenAPI()
	describeProblems(spec)
	allowNulls(spec)
	serveSpec(mux, spec)
	return spec
}

func config(version string) huma.Config {
	registry := huma.NewMapRegistry("#/components/schemas/", schemaName)
	registry.RegisterTypeAlias(reflect.TypeFor[edit.Value](), reflect.TypeFor[anyValue]())
	return huma.Config{
		OpenAPI: &huma.OpenAPI{
			OpenAPI: "3.1.0",
			Info: &huma.Info{
				Title: "Rinkpane desk", Version: version,
				Description: "Plan, prove and share the photo holes of an ice rink. Lengths are metres unless a name says otherwise; " +
					"the frame has its origin at centre ice, x toward end B, y toward the box side; stations run along the boards " +
					"from the bench-side end of the red line, first toward end B.",
			},
			Components: &huma.Components{Schemas: registry},
		},
		Formats:       map[string]huma.Format{"application/json": huma.DefaultJSONFormat, "json": huma.DefaultJSONFormat},
		DefaultFormat: "application/json",
		Transformers:  []huma.Transformer{shortEcho},
	}
}

// schemaName names a type in the specification: bare for this package's own,
// with its package before it for others, since two packages may share a name.
func schemaName(t reflect.Type, hint string) string {
	name := huma.DefaultSchemaNamer(t, hint)
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	pkg := path.Base(t.PkgPath())
	if pkg == "." || pkg == "api" || pkg == "huma" {
		return name
	}
	return strings.ToUpper(pkg[:1]) + pkg[1:] + name
}

// anyValue describes [edit.Value] in the specification.
type anyValue struct{}

// Schema allows a text, a list, or an object of such values.
func (anyValue) Schema(huma.Registry) *huma.Schema {
	return &huma.Schema{Description: "A text as a person writes it, with its unit; a list; or an object of fields."}
}

// longestEcho is the most bytes of a value that an error repeats.
const longestEcho = 200

// shortEcho takes long values out of errors: a body of megabytes is not sent back.
// What JSON cannot write stands there as text.
func shortEcho(_ huma.Context, _ string, v any) (any, error) {
	if e, ok := v.(*huma.ErrorModel); ok {
		for _, d := range e.Errors {
			switch value := d.Value.(type) {
			case string:
				if len(value) > longestEcho {
					d.Value = nil
				}
			case float64:
				if math.IsInf(value, 0) || math.IsNaN(value) { // JSON has no such number
					d.Value = strconv.FormatFloat(value, 'g', -1, 64)
				}
			}
		}
	}
	return v, nil
}
