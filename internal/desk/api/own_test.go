package api_test

import (
	"net/http/httptest"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/desk/api"
	"example.org/rinkpane/internal/survey/kit"
)

// put saves a text of the desk's own over a version that match names.
func (c *caller) put(path, match, text string) *httptest.ResponseRecorder {
	c.t.Helper()
	r := httptest.NewRequest("PUT", path, strings.NewReader(`{"text": `+quote(text)+`, "what": "another most"}`))
	r.Header.Set("Content-Type", "application/json")
	if match != "" {
		r.Header.Set("If-Match", match)
	}
	w := httptest.NewRecorder()
	c.handler.ServeHTTP(w, r)
	return w
}

// TestOwnRulesOverTheAPI adds a rule set, reads it, saves it over the version that
// was read, is told of somebody quicker, and puts it away once nobody names it.
func TestOwnRulesOverTheAPI(t *testing.T) {
	onEachStore(t, func(t *testing.T, c *caller) {
		shipped, err := rules.Document("common-practice")
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Replace(string(shipped), "id: common-practice", "id: our-league", 1)
		const list, one = "/api/library/rules", "/api/library/rules/our-league"
		if s := want[api.OwnSaved](c, 201, "POST", list, `{"text": `+quote(text)+`}`); s.ID != "our-league" || s.Version.Number != 1 || s.Version.Who != "Ada" || s.Version.What != "added" {
			t.Fatalf("%+v", s)
		}
		want[api.Problem](c, 409, "POST", list, `{"text": `+quote(text)+`}`)
		wrong := want[api.Problem](c, 422, "POST", list, `{"text": `+quote(strings.Replace(text, "most: 8", "most: many", 1))+`}`)
		if wrong.Place == nil || wrong.Place.Line == 0 || !strings.Contains(wrong.Place.Field, "most") {
			t.Errorf("%+v", wrong.Place)
		}

		read := c.ask("GET", one, "")
		if tag := read.Header().Get("ETag"); read.Code != 200 || tag != `"1"` {
			t.Fatalf("%d, ETag %s", read.Code, tag)
		}
		four, six := strings.Replace(text, "most: 8", "most: 4", 1), text+"# ours\n"
		for match, status := range map[string]int{"": 428, "*": 412, `"7"`: 412, `W/"1"`: 412, "1": 412} {
			if w := c.put(one, match, four); w.Code != status {
				t.Errorf("If-Match %s: %d, expected %d: %.300s", match, w.Code, status, w.Body)
			}
		}
		if w := c.put(one, `"1"`, four); w.Code != 200 || w.Header().Get("ETag") != `"2"` {
			t.Fatalf("%d, ETag %s: %.300s", w.Code, w.Header().Get("ETag"), w.Body)
		}
		if w := c.put(one, `"1"`, six); w.Code != 412 || !strings.Contains(w.Body.String(), `"merged":`) || !strings.Contains(w.Body.String(), `# ours`) {
			t.Errorf("the second of two: %d %.400s", w.Code, w.Body)
		}
		if w := c.put(one, `"2"`, strings.Replace(four, "id: our-league", "id: other", 1)); w.Code != 422 || !strings.Contains(w.Body.String(), "arenas name this rule set") {
			t.Errorf("another id: %d %.400s", w.Code, w.Body)
		}

		want[api.Saved](c, 200, "POST", demo+"/edits", `{"base": 1, "edits": [{"do": "set", "path": "rules", "value": ["our-league"]}]}`)
		o := want[api.OwnText](c, 200, "GET", one, "")
		if o.Text != four || o.Head != 2 || len(o.Versions) != 2 || o.Versions[0].What != "another most" || len(o.Users) != 1 || len(o.Mark) != 12 {
			t.Errorf("%d bytes, head %d, %+v, used by %v", len(o.Text), o.Head, o.Versions, o.Users)
		}
		if p := want[api.Problem](c, 409, "POST", one+"/away", `{"away": true}`); !strings.Contains(p.Detail, "in use at Tidewater") {
			t.Error(p.Detail)
		}
		want[api.Saved](c, 200, "POST", demo+"/restore", `{"base": 2, "version": 1}`)
		want[any](c, 204, "POST", one+"/away", `{"away": true}`)
		var all struct{ Documents []api.OwnLine }
		if all = want[struct{ Documents []api.OwnLine }](c, 200, "GET", list, ""); len(all.Documents) != 1 || !all.Documents[0].Away {
			t.Errorf("%+v", all)
		}
	})
}

// TestOwnKitsOverTheAPI names a kit after what its document says, and refuses what
// is no kit and what is not there.
func TestOwnKitsOverTheAPI(t *testing.T) {
	c := call(t, folderStore(t))
	text := strings.Replace(string(kit.DefaultYAML()), "name: Lenses and bodies by class", "name: My bag", 1)
	if s := want[api.OwnSaved](c, 201, "POST", "/api/library/kit", `{"text": `+quote(text)+`, "what": "from my old bag"}`); s.ID != "my-bag" || s.Version.What != "from my old bag" {
		t.Errorf("%+v", s)
	}
	for path, status := range map[string]int{
		"/api/library/kit/my-bag": 200, "/api/library/rules/my-bag": 404, "/api/library/kit/none": 404, "/api/library/kit/quillhaven": 404,
		"/api/library/shoes": 422, "/api/library/kit/%00": 404,
	} {
		if w := c.ask("GET", path, ""); w.Code != status {
			t.Errorf("%s: %d, expected %d: %.200s", path, w.Code, status, w.Body)
		}
	}
	if w := c.put("/api/library/kit/none", `"1"`, text); w.Code != 404 {
		t.Errorf("saving what is not there: %d", w.Code)
	}
	want[api.Problem](c, 422, "POST", "/api/library/kit", `{"text": "rinkpane: arena 1"}`)
	want[api.Problem](c, 404, "POST", "/api/library/kit/none/away", `{"away": true}`)
	set, err := rules.Document("common-practice")
	if err != nil {
		t.Fatal(err)
	}
	odd := strings.Replace(string(set), "id: common-practice", "id: Our_League", 1)
	if p := want[api.Problem](c, 422, "POST", "/api/library/rules", `{"text": `+quote(odd)+`}`); p.Place == nil || p.Place.Field != "id" {
		t.Errorf("%+v", p)
	}
}
