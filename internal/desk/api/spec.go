package api

import (
	"encoding/json"
	"net/http"
	"reflect"
	"strings"

	"github.com/danielgtaylor/huma/v2"
)

// allowNulls lets fields be null whose Go type is a pointer to a group of fields
// that is always written: huma describes them as always there.
func allowNulls(spec *huma.OpenAPI) {
	registry := spec.Components.Schemas
	for name, schema := range registry.Map() {
		t := registry.TypeFromRef("#/components/schemas/" + name)
		if t == nil || t.Kind() != reflect.Struct {
			continue
		}
		for _, f := range reflect.VisibleFields(t) {
			field, options, _ := strings.Cut(f.Tag.Get("json"), ",")
			p := schema.Properties[field]
			if p == nil || p.Ref == "" || f.Type.Kind() != reflect.Pointer || strings.Contains(options, "omitempty") {
				continue
			}
			schema.Properties[field] = &huma.Schema{
				Description: p.Description,
				AnyOf:       []*huma.Schema{{Ref: p.Ref}, {Type: "null"}},
			}
		}
	}
}

// serveSpec serves the specification, made once after every operation is there.
func serveSpec(mux *http.ServeMux, spec *huma.OpenAPI) {
	text, err := json.Marshal(spec)
	mux.HandleFunc("GET /api/openapi.json", func(w http.ResponseWriter, _ *http.Request) {
		if err != nil {
			http.Error(w, "the specification cannot be written", http.StatusInternalServerError)
			return
		}
		w.Header().Set("Content-Type", "application/openapi+json")
		_, _ = w.Write(text) // the visitor may have left
	})
}
