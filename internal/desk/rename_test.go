package desk

import (
	"encoding/json"
	"net/http/httptest"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/rinkpane/internal/keep/revision"
)

// TestRenamingAHoleIsKept renames a hole on the survey's page, then over the API,
// and takes the last back: the versions tell it, and the hole can be followed.
func TestRenamingAHoleIsKept(t *testing.T) {
	h, d, _ := ownDesk(t, false)
	form := url.Values{"base": {"1"}, "item": {"holes[B1]"}, "id": {"Corner"}, "place": {"-42 in"}, "place.from": {"B-bench goal-line"},
		"height": {"58 in"}, "size": {"5.5 in x 4.5 in"}, "corner-radius": {"1/2 in"}, "rounding": {"1/8 in"}, "cover": {"yes"}, "state": {"cut"}}
	if w := ask(t, h, "POST", demoPage+"/survey/holes", form.Encode()); w.Code != 303 {
		t.Fatalf("%d %.600s", w.Code, w.Body)
	}
	says(t, ask(t, h, "GET", demoPage+"/versions", ""), 200, "rename B1 to Corner", "B1 is now Corner")
	call := func(path, body string) {
		t.Helper()
		r := httptest.NewRequest("POST", "http://127.0.0.1:8417/api/arenas/quillhaven"+path, strings.NewReader(body))
		r.Header.Set("Content-Type", "application/json")
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		says(t, w, 200)
	}
	call("/edits", `{"base": 2, "edits": [{"do": "rename", "hole": "Corner", "as": "X"}, {"do": "rename", "hole": "B2", "as": "Corner"}]}`)
	says(t, ask(t, h, "POST", demoPage+"/restore", "base=3&version=2&act=undo"), 303)
	says(t, ask(t, h, "GET", demoPage+"?hole=Corner", ""), 200, "Hole Corner")
	call("/restore", `{"base": 4, "version": 1}`)
	versions, err := d.shell.Shelf.Keeper().History(t.Context(), "quillhaven", 9)
	if err != nil || len(versions) != 5 {
		t.Fatalf("%d versions, %v", len(versions), err)
	}
	var names []string
	for n := 1; n <= 5; n++ {
		names = append(names, follow(versions, "B1", 1, n)+" "+follow(versions, "B2", 1, n))
	}
	if want := []string{"B1 B2", "Corner B2", "X Corner", "Corner B2", "B1 B2"}; !slices.Equal(names, want) {
		t.Errorf("B1 and B2 are called %q, expected %q", names, want)
	}
	var told struct {
		Versions []struct{ Renames []revision.Rename }
	}
	if err := json.Unmarshal(ask(t, h, "GET", "/api/arenas/quillhaven/versions", "").Body.Bytes(), &told); err != nil || len(told.Versions[2].Renames) != 2 {
		t.Errorf("the API tells %+v, %v", told.Versions, err)
	}
	text, base := headText(t, d, "quillhaven")
	says(t, fillIn(t, h, demoPage+"/text", map[string]string{"base": strconv.Itoa(base), "text": strings.ReplaceAll(text, "id: B1", "id: Corner")}), 303)
	says(t, ask(t, h, "GET", demoPage+"/versions", ""), 200, "B1 is now Corner")
	says(t, ask(t, h, "POST", demoPage+"/restore", "base=6&version=5&act=undo"), 303)
	says(t, ask(t, h, "POST", demoPage+"/survey/holes", "base=7&item=holes%5BB1%5D&id=B2&height=58+in&size=5.5+in+x+4.5+in&place=-42+in&place.from=B-bench+goal-line"), 422, "is there already", `aria-invalid="true"`)
}

// follow returns what a hole of one version is called in another.
func follow(versions []revision.Version, hole string, from, to int) string {
	for _, r := range revision.Renames(versions, from, to) {
		if r.From == hole {
			return r.To
		}
	}
	return hole
}
