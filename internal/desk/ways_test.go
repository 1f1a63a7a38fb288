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
	muchComputed(t)
	h := exampleDesk(t).Handler()
	link := regexp.MustCompile(`(?:href|action)="(/arena/quillhaven[^"]*)"`)
	pages := 0
	for _, path := range samplePages(t) {
		at, err := url.Parse(path)
		if err != nil || !strings.HasPrefix(path, demoPage) || strings.HasSuffix(at.Path, "/text") {
			continue
		}
		pages++
		q := at.Query()
		q.Set("units", "metric")
		below := strings.TrimPrefix(at.Path, demoPage) + "?" + q.Encode()
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
	if pages < 10 {
		t.Errorf("only %d pages of the demo were looked at", pages)
	}
	for path, words := range map[string]string{"/arena/brennholm?units=imperial": "Move hole A-T 32 5/8 in", "/arena/brennholm?hole=A-T&units=imperial": "Move hole A-T 32 5/8 in",
		"/arena/brennholm/paper?units=imperial": "Move hole A-T 32 5/8 in", "/arena/brennholm": "Move hole A-T 828 mm"} {
		says(t, ask(t, h, "GET", path, ""), 200, words)
	}
	says(t, ask(t, h, "GET", demoPage+"/choose?units=metric", ""), 200, "16.46 m", `action="/arena/quillhaven/choose?units=metric"`)
}
