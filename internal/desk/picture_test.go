package desk

import (
	"bytes"
	"image/png"
	"net/http/httptest"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/survey/arena"
)

func TestPictureAnswers(t *testing.T) {
	h := exampleDesk(t).Handler()
	for _, c := range []struct {
		query  string
		status int
		says   string
	}{
		{"/picture", 200, "Through hole"},
		{"/picture?hole=B1&pan=-20&tilt=-1&focal=120&stop=4&shutter=1/500&moment=3&planes=1", 200, "120"},
		{"/picture?hole=LW1&lens=24-70", 200, "Through low window LW1"},
		{"/picture?hole=nobody", 422, "no hole or low window"},
		{"/picture?hole=B1&lens=fisheye", 422, "No such lens"},
		{"/picture?hole=B1&pan=north", 422, "Pan in degrees"},
		{"/picture?hole=B1&pan=400", 422, "from -85 to 85"},
		{"/picture?hole=B1&moment=60", 422, "0 to 59"},
		{"/picture?hole=B1&shutter=fast", 422, "Shutter: "},
		{"/picture.png?hole=B1&side=99999", 422, "number of pixels"},
		{"/picture.json?hole=B1&pan=5&tilt=0", 200, `"pan_deg":5`},
		{"/picture.json?hole=nobody", 422, `"problem"`},
		{"/picture.svg?hole=B1&side=300", 200, "<svg"},
	} {
		w := ask(t, h, "GET", demoPage+c.query, "")
		if w.Code != c.status || !strings.Contains(w.Body.String(), c.says) {
			t.Errorf("GET %s: %d, expected %d and %q in\n%.300s", c.query, w.Code, c.status, c.says, w.Body)
		}
	}
	if w := ask(t, h, "GET", demoPage+"/picture.svg?hole=B1&side=300", ""); !strings.Contains(w.Header().Get("Content-Security-Policy"), "img-src data:") || !strings.Contains(w.Body.String(), `href="data:image/png;base64,`) {
		t.Errorf("an SVG, opened by itself, may not show its own light: %s", w.Header().Get("Content-Security-Policy"))
	}
	if w := ask(t, h, "GET", "/arena/nowhere/picture.png", ""); w.Code != 404 {
		t.Errorf("a picture of no arena: %d", w.Code)
	}
}

// TestPicturesMayBeKept: the same picture has the same tag; whoever has it is told
// so without a new one, and an address with the text's whole SHA-256 may be kept.
// Its first twelve digits, which another text may have too, are not enough.
func TestPicturesMayBeKept(t *testing.T) {
	h := exampleDesk(t).Handler()
	first := ask(t, h, "GET", demoPage+"/picture.png?hole=B1&side=300", "")
	im, err := png.Decode(bytes.NewReader(first.Body.Bytes()))
	if err != nil || im.Bounds().Dx() != 300 || im.Bounds().Dy() != 200 {
		t.Fatalf("the picture: %v, %v", err, im)
	}
	tag := first.Header().Get("ETag")
	r := httptest.NewRequest("GET", "http://127.0.0.1:8417"+demoPage+"/picture.png?hole=B1&side=300", nil)
	r.Header.Set("If-None-Match", tag)
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	if tag == "" || w.Code != 304 || w.Body.Len() != 0 {
		t.Errorf("asked again with %s: %d, %d bytes", tag, w.Code, w.Body.Len())
	}
	if other := ask(t, h, "GET", demoPage+"/picture.png?hole=B1&side=300&stop=8", "").Header().Get("ETag"); other == tag {
		t.Error("another stop has the same tag")
	}
	if kept := first.Header().Get("Cache-Control"); kept != "private, no-cache" {
		t.Errorf("an address without the text's revision may be kept: %s", kept)
	}
	text, err := examples.Files.ReadFile("quillhaven.yaml")
	if err != nil {
		t.Fatal(err)
	}
	is := arena.Revision(text)
	for of, want := range map[string]string{is: "private, max-age=86400, immutable", arena.Mark(text): "private, no-cache"} {
		if kept := ask(t, h, "GET", demoPage+"/picture.png?hole=B1&side=300&of="+of, "").Header().Get("Cache-Control"); kept != want {
			t.Errorf("of=%s: %s, expected %s", of, kept, want)
		}
	}
	says(t, ask(t, h, "GET", demoPage+"/picture?hole=B1", ""), 200, "of="+is, `data-of="`+is+`"`)
}

// TestFocusInTheVisitorsUnits: feet on a document in feet, metres for who reads metres.
func TestFocusInTheVisitorsUnits(t *testing.T) {
	h := exampleDesk(t).Handler()
	says(t, ask(t, h, "GET", demoPage+"/picture?hole=B1", ""), 200, `name="focus-ft"`, `<span aria-hidden="true">ft</span>`)
	says(t, ask(t, h, "GET", demoPage+"/picture?hole=B1&units=metric", ""), 200, `name="focus"`, `<span aria-hidden="true">m</span>`)
}
