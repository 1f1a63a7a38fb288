package api_test

import (
	"net/http"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/desk/api"
)

type arenaList struct {
	Arenas []api.ArenaLine `json:"arenas"`
}

const demo = "/api/arenas/quillhaven"

func TestListAndPutAway(t *testing.T) {
	onEachStore(t, func(t *testing.T, c *caller) {
		all := want[arenaList](c, 200, "GET", "/api/arenas", "").Arenas
		verdicts := map[string]rules.Status{"brennholm": rules.Fail, "quillhaven": rules.Pass, "sorrel-flats": rules.Unknown}
		if len(all) != len(verdicts) {
			t.Fatalf("%d arenas", len(all))
		}
		for _, a := range all {
			if a.Verdict != verdicts[a.ID] || a.Survey == nil || a.Version != 1 || a.Problem != "" {
				t.Errorf("%+v, expected %s", a, verdicts[a.ID])
			}
		}
		want[any](c, 204, "POST", "/api/arenas/brennholm/away", `{"away": true}`)
		if now := want[arenaList](c, 200, "GET", "/api/arenas", "").Arenas; len(now) != 2 {
			t.Errorf("%d arenas with one put away", len(now))
		}
		if now := want[arenaList](c, 200, "GET", "/api/arenas?away=true", "").Arenas; len(now) != 3 || !now[0].Away {
			t.Errorf("asked for all: %+v", now)
		}
		want[any](c, 204, "POST", "/api/arenas/brennholm/away", `{"away": false}`)
		want[api.Problem](c, 404, "POST", "/api/arenas/nowhere/away", `{"away": true}`)
	})
}

func TestGetTellsLayoutAndHoles(t *testing.T) {
	c := call(t, folderStore(t))
	a := want[api.ArenaState](c, 200, "GET", demo, "")
	if a.Head != 1 || a.Version.Who != "Ada" || !a.Version.At.Equal(noon) || a.Units != "imperial" || len(a.Mark) != 12 {
		t.Errorf("%+v", a.Version)
	}
	if len(a.Layout.Panes) != 127 || len(a.Layout.Zones) != 8 || len(a.Now.Holes) != 8 || len(a.Now.Permitted) == 0 {
		t.Errorf("%d panes, %d zones, %d holes, %d permitted", len(a.Layout.Panes), len(a.Layout.Zones), len(a.Now.Holes), len(a.Now.Permitted))
	}
	landmarks := 0
	for _, s := range a.Layout.Snaps {
		if s.Kind == "landmark" {
			landmarks++
		}
		if s.Station < 0 || s.Station >= a.Layout.Perimeter {
			t.Errorf("snap %+v lies off the boards", s)
		}
	}
	if landmarks != 16 || len(a.Layout.Snaps) != 16+127 {
		t.Errorf("%d landmarks among %d snaps", landmarks, len(a.Layout.Snaps))
	}
}

func TestImportKeepsEveryByte(t *testing.T) {
	onEachStore(t, func(t *testing.T, c *caller) {
		text := strings.Replace(c.text("quillhaven", 0), "name: Tidewater Pavilion", "name: Far Rink  # ours, ½ way", 1)
		first := want[api.Saved](c, 201, "POST", "/api/arenas", `{"text": `+quote(text)+`}`)
		second := want[api.Saved](c, 201, "POST", "/api/arenas", `{"text": `+quote(text)+`}`)
		if first.ID != "far-rink" || second.ID != "far-rink-2" || first.Version.Number != 1 {
			t.Errorf("imported as %+v and %+v", first, second)
		}
		if got := c.text("far-rink", 0); got != text {
			t.Errorf("the text came back changed")
		}
		taken := want[api.Problem](c, 409, "POST", "/api/arenas", `{"id": "far-rink", "text": `+quote(text)+`}`)
		if taken.Conflict != nil || !strings.Contains(taken.Detail, "taken") {
			t.Errorf("%+v", taken)
		}
	})
}

func TestImportRefusesWhatIsNoArena(t *testing.T) {
	c := call(t, folderStore(t))
	good := c.text("quillhaven", 0)
	for name, x := range map[string]struct {
		text, field string
		line        int
	}{
		"no yaml":         {"{", "", 1},
		"another kind":    {"rinkpane: kit 1\n", "rinkpane", 1},
		"no unit":         {strings.Replace(good, "height: 42 in ", "height: 42 ", 1), "boards.height", 18},
		"unknown field":   {strings.Replace(good, "ledge:", "lege:", 1), "boards", 19},
		"hole off a pane": {strings.Replace(good, "height: 58 in", "height: 158 in", 1), "holes[B1].height", 177},
	} {
		p := want[api.Problem](c, 422, "POST", "/api/arenas", `{"text": `+quote(x.text)+`}`)
		if p.Place == nil || p.Place.Field != x.field || p.Place.Line != x.line || p.Place.Text == "" {
			t.Errorf("%s: %+v, expected line %d, field %q", name, p.Place, x.line, x.field)
		}
	}
	want[api.Problem](c, 422, "POST", "/api/arenas", `{"text": ""}`)
	want[api.Problem](c, 422, "POST", "/api/arenas", `{"id": "../etc", "text": `+quote(good)+`}`)
	if all := want[arenaList](c, 200, "GET", "/api/arenas?away=true", "").Arenas; len(all) != 3 {
		t.Errorf("%d arenas after refused imports", len(all))
	}
}

func TestForgedNamesFindNothing(t *testing.T) {
	c := call(t, folderStore(t))
	for _, path := range []string{
		"/api/arenas/nowhere", "/api/arenas/..%2f..%2fetc", "/api/arenas/%00", "/api/arenas/Quillhaven", "/api/arenas/quillhaven%27--",
		demo + "?version=2", demo + "/versions/2", demo + "/diff?from=2", demo + "/text?version=99", demo + "/plan?version=7",
		"/api/arenas/nowhere/versions", "/api/arenas/nowhere/files", demo + "/reach?hole=B1&version=3",
	} {
		if w := c.ask("GET", path, ""); w.Code != http.StatusNotFound {
			t.Errorf("GET %s: %d, expected 404: %.200s", path, w.Code, w.Body)
		}
	}
	for path, says := range map[string]string{
		demo + "?version=-1": "version", demo + "?version=x": "version", demo + "/versions/0": "number",
		demo + "/versions?limit=0": "limit", demo + "/versions?limit=100000": "limit",
		"/api/arenas/" + strings.Repeat("a", 65): "id", demo + "/files/passwd": "kind",
		demo + "/reach?hole=nobody": "no working hole", demo + "/reach?hole=B1&step_m=0.01": "cell",
		demo + "/files/hole.dxf?hole=nobody": "none of that name", demo + "/files/cut.zip?paper=papyrus": "paper",
	} {
		if w := c.ask("GET", path, ""); w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), says) {
			t.Errorf("GET %s: %d, expected 422 and %q: %.300s", path, w.Code, says, w.Body)
		}
	}
}
