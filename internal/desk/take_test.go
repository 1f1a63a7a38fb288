package desk

import (
	"archive/zip"
	"bytes"
	"html"
	"strings"
	"testing"

	"example.org/rinkpane/internal/desk/parcel"
)

// TestEverythingIsTakenAwayInOnePlace: each kind of file stands on the page once, of
// the version that is asked for, in the visitor's units, and leads to the file.
func TestEverythingIsTakenAwayInOnePlace(t *testing.T) {
	h, _, _ := ownDesk(t, false)
	says(t, move(t, h, 1, "B2", "1.6", ""), 303)
	page := ask(t, h, "GET", demoPage+"/take?version=1&units=metric", "").Body.String()
	for _, k := range parcel.Kinds() {
		links := between(page, `href="/api/arenas/quillhaven/files/`+string(k)+`?`, `"`)
		if n := len(links); n == 0 || n > 1 && k != parcel.Outline {
			t.Errorf("%s stands on the page %d times", k, n)
			continue
		}
		if q := html.UnescapeString(links[0]); !strings.Contains(q, "version=1") || !strings.Contains(q, "units=metric") {
			t.Errorf("%s is of %s", k, q)
		}
	}
	says(t, ask(t, h, "GET", demoPage+"/take", ""), 200, "version 2, revision", "choose holes", "The plan’s folder")
	says(t, ask(t, h, "GET", demoPage+"/versions?to=1", ""), 200, `href="`+demoPage+`/take?version=1"`)
	says(t, ask(t, h, "GET", demoPage+"/take?version=9", ""), 404)
	archive := ask(t, h, "GET", "/api/arenas/quillhaven/files/versions.zip", "").Body.Bytes()
	z, err := zip.NewReader(bytes.NewReader(archive), int64(len(archive)))
	if err != nil || len(z.File) != 3 || !strings.HasSuffix(z.File[1].Name, "v2-arena.yaml") {
		t.Errorf("the archive: %v, %+v", err, z)
	}
}
