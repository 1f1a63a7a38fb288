package api_test

import (
	"bytes"
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"example.org/rinkpane/internal/survey/kit"
)

// described compiles the specification's schemas as JSON Schema 2020-12, which
// OpenAPI 3.1 uses.
func described(t *testing.T, c *caller) (spec map[string]any, schema func(pointer string) *jsonschema.Schema) {
	t.Helper()
	text := c.ask("GET", "/api/openapi.json", "").Body.Bytes()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	compiler := jsonschema.NewCompiler()
	if err := compiler.AddResource("mem:///spec.json", doc); err != nil {
		t.Fatal(err)
	}
	return doc.(map[string]any), func(pointer string) *jsonschema.Schema {
		s, err := compiler.Compile("mem:///spec.json#" + pointer)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
}

// TestAnswersAreAsDescribed asks every call that answers JSON and holds the
// answer against the specification that is served.
func TestAnswersAreAsDescribed(t *testing.T) {
	c := call(t, folderStore(t))
	spec, schema := described(t, c)
	if v := spec["openapi"]; v != "3.1.0" {
		t.Errorf("openapi %v", v)
	}
	escape := strings.NewReplacer("~", "~0", "/", "~1", "{", "%7B", "}", "%7D")
	for _, x := range []struct {
		status             string
		method, path, call string
		body               string
	}{
		{"200", "GET", "/api/arenas", "/api/arenas", ""},
		{"200", "GET", "/api/arenas/{id}", demo, ""},
		{"200", "GET", "/api/arenas/{id}/plan", demo + "/plan", ""},
		{"200", "GET", "/api/arenas/{id}/versions", demo + "/versions", ""},
		{"200", "GET", "/api/arenas/{id}/versions/{number}", demo + "/versions/1", ""},
		{"200", "GET", "/api/arenas/{id}/diff", demo + "/diff?from=1", ""},
		{"200", "GET", "/api/arenas/{id}/files", demo + "/files", ""},
		{"200", "GET", "/api/arenas/{id}/reach", demo + "/reach?hole=B1&step_m=1", ""},
		{"200", "GET", "/api/rules", "/api/rules", ""},
		{"200", "GET", "/api/kit", "/api/kit", ""},
		{"200", "POST", "/api/arenas/{id}/try", demo + "/try", `{"base": 1, "edits": [], "hole": "B1", "all": true}`},
		{"200", "POST", "/api/arenas/{id}/reach", demo + "/reach", `{"base": 1, "edits": [{"do": "set", "path": "note", "value": "x"}], "hole": "B1", "step_m": 1, "face": true}`},
		{"200", "POST", "/api/arenas/{id}/edits", demo + "/edits", `{"base": 1, "edits": [{"do": "set", "path": "note", "value": "x"}]}`},
		{"200", "POST", "/api/arenas/{id}/restore", demo + "/restore", `{"base": 2, "version": 1}`},
		{"200", "GET", "/api/library/{kind}", "/api/library/kit", ""},
		{"201", "POST", "/api/library/{kind}", "/api/library/kit", `{"text": ` + quote(string(kit.DefaultYAML())) + `}`},
		{"200", "GET", "/api/library/{kind}/{id}", "/api/library/kit/lenses-and-bodies-by-class", ""},
		{"200", "PUT", "/api/library/{kind}/{id}", "/api/library/kit/lenses-and-bodies-by-class", `{"text": ` + quote(string(kit.DefaultYAML())) + `}`},
		{"default", "GET", "/api/library/{kind}/{id}", "/api/library/kit/none", ""},
		{"default", "POST", "/api/arenas/{id}/edits", demo + "/edits", `{"base": 1, "edits": [{"do": "set", "path": "note", "value": "y"}]}`},
		{"default", "POST", "/api/arenas/{id}/try", demo + "/try", `{"base": 1, "edits": [{"do": "set", "path": "boards.height", "value": "1"}]}`},
		{"default", "POST", "/api/arenas/{id}/try", demo + "/try", `{"base": "x"}`},
		{"default", "GET", "/api/arenas/{id}", "/api/arenas/nowhere", ""},
	} {
		media := "application/json"
		if x.status == "default" {
			media = "application/problem+json"
		}
		w := c.ask(x.method, x.call, x.body)
		if x.method == "PUT" {
			w = c.put(x.call, `"1"`, string(kit.DefaultYAML()))
		}
		if x.status != "default" && strconv.Itoa(w.Code) != x.status || x.status == "default" && w.Code < 400 {
			t.Errorf("%s %s: %d: %.300s", x.method, x.call, w.Code, w.Body)
			continue
		}
		if got := w.Header().Get("Content-Type"); got != media {
			t.Errorf("%s %s: %s, expected %s", x.method, x.call, got, media)
		}
		answer, err := jsonschema.UnmarshalJSON(w.Body)
		if err != nil {
			t.Fatal(err)
		}
		pointer := "/paths/" + escape.Replace(x.path) + "/" + strings.ToLower(x.method) + "/responses/" + x.status +
			"/content/" + escape.Replace(media) + "/schema"
		if err := schema(pointer).Validate(answer); err != nil {
			t.Errorf("%s %s is not as described: %v", x.method, x.call, err)
		}
	}
}

// TestDescriptionRefusesWhatItShould proves that the schemas can say no.
func TestDescriptionRefusesWhatItShould(t *testing.T) {
	_, schema := described(t, call(t, folderStore(t)))
	saved := schema("/components/schemas/Saved")
	for _, bad := range []string{`{}`, `{"id": 5}`, `{"id": "x", "version": {}, "mark": "m", "undo": 0, "redo": 0}`} {
		var v any
		if err := json.Unmarshal([]byte(bad), &v); err != nil {
			t.Fatal(err)
		}
		if err := saved.Validate(v); err == nil {
			t.Errorf("%s passes as Saved", bad)
		}
	}
}
