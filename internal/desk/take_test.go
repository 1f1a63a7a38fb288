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

// TestComparisonBeginsWithThreeNumbers: what both plans see of the news, which rules
// they break and how many holes that takes, before the maps.
func TestComparisonBeginsWithThreeNumbers(t *testing.T) {
	muchComputed(t)
	h, _, _ := ownDesk(t, false)
	says(t, ask(t, h, "POST", demoPage+"/holes", "base=1&act=off&hole=B1"), 303)
	page := ask(t, h, "GET", demoPage+"/compare", "").Body.String()
	rows := between(strings.Join(between(page, `<table class="rules numbers">`, "</table>"), ""), "<tr><th scope=\"row\">", "</tr>")
	if len(rows) != 3 || strings.Index(page, "numbers") > strings.Index(page, "sheet-plan-map") {
		t.Fatalf("%q", rows)
	}
	for i, want := range [][]string{{"News in view", " %</td>", "points"}, {"Rules broken", "<td>0</td><td>0</td>"}, {"Holes at work", "8, 5 of them cut", "7, 4 of them cut"}} {
		for _, w := range want {
			if !strings.Contains(rows[i], w) {
				t.Errorf("row %d lacks %s: %s", i+1, w, rows[i])
			}
		}
	}
}
