package desk

import (
	"html"
	"net/url"
	"regexp"
	"strings"
	"testing"
)

// TestUnitsGoAlong follows every way from every page of an arena: who chose
// metric stays metric, on the page and wherever it leads.
func TestUnitsGoAlong(t *testing.T) {
	h := exampleDesk(t).Handler()
	link := regexp.MustCompile(`(?:href|action)="(/arena/quillhaven[^"]*)"`)
	for _, below := range []string{"?units=metric", "/survey?units=metric", "/survey/holes?item=holes%5BB1%5D&units=metric", "/picture?units=metric", "/choose?units=metric",
		"/versions?units=metric", "/compare?units=metric", "/paper?units=metric"} {
		body := ask(t, h, "GET", demoPage+below, "").Body.String()
		_, inside, _ := strings.Cut(body, `<main id="content">`)
		ways := 0
		for _, m := range link.FindAllStringSubmatch(inside, -1) {
			to, err := url.Parse(html.UnescapeString(m[1]))
			if err != nil {
				t.Fatal(err)
			}
			q := to.Query()
			// Forms carry the units as a field; a file has none; the text is the document's own.
			if strings.Contains(m[0], "action=") || strings.HasSuffix(to.Path, ".png") || strings.HasSuffix(to.Path, ".svg") || strings.HasSuffix(to.Path, "/text") {
				continue
			}
			ways++
			if q.Get("units") == "" {
				t.Errorf("from %s the way to %s loses the units", below, to)
			}
		}
		if ways < 7 {
			t.Errorf("%s leads to %d pages only", below, ways)
		}
	}
	for path, words := range map[string]string{"/arena/brennholm?units=imperial": "Move hole A-T 32 5/8 in", "/arena/brennholm?hole=A-T&units=imperial": "Move hole A-T 32 5/8 in",
		"/arena/brennholm/paper?units=imperial": "Move hole A-T 32 5/8 in", "/arena/brennholm": "Move hole A-T 828 mm"} {
		says(t, ask(t, h, "GET", path, ""), 200, words)
	}
	says(t, ask(t, h, "GET", demoPage+"/choose?units=metric", ""), 200, "16.46 m", `action="/arena/quillhaven/choose?units=metric"`)
}
