package desk

import (
	"fmt"
	"net/http"
	"net/url"
	"os"
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/desk/results"
	"example.org/rinkpane/internal/keep/revision"
)

const (
	framesAt = demoPage + "/frames"
	ofGame   = "?season=" + results.SampleSeason + "&game=nov-07"
)

// TestFramesOfAGame goes from an empty page over the readings of two cards to the light in
// the survey: what is kept, what is told, what can be taken away.
func TestFramesOfAGame(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	page := func(words ...string) {
		t.Helper()
		says(t, ask(t, h, "GET", framesAt+ofGame, ""), http.StatusOK, words...)
	}
	post := func(path, what string, fields url.Values, status int, words ...string) {
		t.Helper()
		w := ask(t, h, "POST", framesAt+path+ofGame, fields.Encode())
		if says(t, w, status, words...); status != w.Code {
			t.Fatalf("%s: %d", what, w.Code)
		}
	}
	page("Nothing is kept of this game", "rinkpane recap /media/card --readings nov-07.csv")
	says(t, ask(t, h, "GET", framesAt+".pdf"+ofGame, ""), http.StatusNotFound, "Nothing is kept")
	says(t, ask(t, h, "GET", demoPage+"/game"+ofGame, ""), http.StatusOK, "what the frames of this game gave")

	for n, card := range []string{cardOf("0042", 60), cardOf("0077", 30), cardOf("0042", 60)} {
		if w := fillIn(t, h, framesAt+ofGame, map[string]string{"file": card}); w.Code != http.StatusSeeOther {
			t.Fatalf("card %d: %d %.500s", n, w.Code, w.Body)
		}
	}
	page("90 frames", "of 90 ambiguous", "say whose body 0042 is", "not checked")
	kept, err := d.shell.Shelf.Keeper().Documents(t.Context(), revision.Frames, false)
	if err != nil || len(kept) != 1 || kept[0].Head != 2 {
		t.Fatalf("a card twice is no version: %+v, %v", kept, err)
	}

	post("/body", "a person", url.Values{"base": {"1"}, "body": {"0042"}, "whose": {"who:cleo"}}, http.StatusSeeOther)
	post("/body", "a hole", url.Values{"base": {"2"}, "body": {"0077"}, "whose": {"hole:A2"}}, http.StatusSeeOther)
	post("/clock", "the scoreboard", url.Values{"base": {"3"}, "frame": {"0042-1.jpg"}, "shows": {"19:00:00"}}, http.StatusSeeOther)
	page("cleo works B2 in period-1", "the hole was said", "10s ahead", "0042-1.jpg shows <strong>19:00:00", "Keepers in an hour worked", "Light by exposures", "Plan and fact")
	post("/body", "nobody", url.Values{"base": {"4"}, "body": {"0042"}, "whose": {"who:nobody"}}, 422, "no person is called")
	post("/body", "nothing", url.Values{"base": {"4"}, "body": {"0042"}, "whose": {"cleo"}}, 400, "incomplete")
	post("/clock", "no clock", url.Values{"base": {"4"}, "frame": {"0042-2.jpg"}, "shows": {"19.01"}}, 422, "is no clock; write PERIOD/MM:SS")
	post("/clock", "no frame", url.Values{"base": {"4"}, "frame": {"elsewhere.jpg"}, "shows": {"19:00:00"}}, 422, "no such frame was read")
	post("/clock", "a contradiction", url.Values{"base": {"4"}, "frame": {"0042-9.jpg"}, "shows": {"21:00:00"}}, 422, "check both")
	post("/unclock", "none there", url.Values{"base": {"4"}, "frame": {"0042-9.jpg"}}, 409, "no longer there")

	post("/light", "the light", nil, http.StatusSeeOther)
	text, version := headText(t, d, "quillhaven")
	if version != 2 || strings.Count(text, "source: frames") == 0 {
		t.Errorf("version %d has %d readings by frames", version, strings.Count(text, "source: frames"))
	}
	noted := strings.Count(text, "source: frames")
	post("/light", "again", nil, http.StatusSeeOther)
	if text, version = headText(t, d, "quillhaven"); strings.Count(text, "source: frames") != noted {
		t.Errorf("noted again in version %d, there are %d readings by frames, %d before", version, strings.Count(text, "source: frames"), noted)
	}

	for file, want := range map[string]string{".pdf": "%PDF-", ".csv": "hole,stage,frames", "/readings.csv": "file,taken,body", "/learnt.yaml": "# Learnt from "} {
		w := ask(t, h, "GET", framesAt+file+ofGame, "")
		if w.Code != http.StatusOK || !strings.Contains(w.Body.String(), want) {
			t.Errorf("%s: %d %.200s", file, w.Code, w.Body)
		}
	}
	says(t, ask(t, h, "GET", framesAt+ofGame+"&stars=5&best=on", ""), http.StatusOK, "0 of 30 kept", "The best holes by what the frames say", "best set by what was assumed before")
	post("/unclock", "left out", url.Values{"base": {"4"}, "frame": {"0042-1.jpg"}}, http.StatusSeeOther)
	page("not checked")
}

// cardOf is the readings of a body's frames at nov-07, ten seconds ahead of the rink.
func cardOf(body string, n int) string {
	var b strings.Builder
	b.WriteString("file,taken,body,focal_mm,shutter_s,stop,iso,rating\n")
	for i := range n {
		fmt.Fprintf(&b, "%s-%d.jpg,2026-11-07T19:%02d:10,%s,200,0.001,2.8,3200,%d\n", body, i+1, i/2, body, i%3)
	}
	return b.String()
}

// TestReadingsThatCannotBeTaken: what is wrong is told by line, column and value, all of it
// at once, and nothing is kept.
func TestReadingsThatCannotBeTaken(t *testing.T) {
	muchComputed(t)
	h, d, _ := ownDesk(t, false)
	picture, err := os.ReadFile("assets/icon.svg")
	if err != nil {
		t.Fatal(err)
	}
	const head = "file,taken,iso\n"
	for name, c := range map[string]struct {
		file   string
		status int
		words  []string
	}{
		"a bad number": {head + "a.jpg,2026-11-07T19:00:00,loud\n", 422, []string{"Line 2, iso", "loud", "write a number above 0"}},
		"two bad lines": {head + "a.jpg,7 Nov,\nb.jpg,2026-11-07T19:00:00,-1\n", 422,
			[]string{"2 rows cannot be read", "readings.csv:2:7: taken:", "readings.csv:3:27: iso:"}},
		"another file": {string(picture), 422, []string{"Line 1"}},
		"no text":      {"\xff\xd8\xff\xe0\x00", 422, []string{"This is no file of readings", "pictures stay on the card"}},
		"no frame":     {head, 422, []string{"no frame stands in this file"}},
		"nothing":      {"", 422, []string{"the first line names the columns"}},
		"too much":     {head + strings.Repeat("x", recap.MaxReadings+300_000), 413, []string{"four"}},
	} {
		w := fillIn(t, h, framesAt+ofGame, map[string]string{"file": c.file})
		t.Run(name, func(t *testing.T) { says(t, w, c.status, c.words...) })
	}
	for _, path := range []string{"?season=none&game=nov-07", "?season=" + results.SampleSeason + "&game=none", ofGame + "&stars=9"} {
		if w := ask(t, h, "GET", framesAt+path, ""); w.Code != 404 && w.Code != 400 {
			t.Errorf("%s: %d", path, w.Code)
		}
	}
	if kept, err := d.shell.Shelf.Keeper().Documents(t.Context(), revision.Frames, true); err != nil || len(kept) != 0 {
		t.Errorf("kept: %+v, %v", kept, err)
	}
}
