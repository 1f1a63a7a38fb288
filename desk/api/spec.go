package api

import (
	"encoding/json"
	"net/http"

	"github.com/danielgtaylor/huma/v2"
)

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
