package book

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

func tool(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).Output()
	if err != nil {
		t.Fatalf("%s %v: %v", name, args, err)
	}
	return string(out)
}

// TestBookByPoppler reads the book back with poppler and mupdf: pages and
// their size, metadata, bookmarks, and text that can be searched.
func TestBookByPoppler(t *testing.T) {
	c := content(t, smallArena, "a4", unit.Metric)
	print, err := c.PDF(t.Context())
	data, pages := print.Data, print.Pages
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "book.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	info := tool(t, "pdfinfo", path)
	for _, w := range []string{"Arena book: Test Rink", "rinkpane-plan-" + c.Plan.Revision, fmt.Sprintf("Pages: %d", pages), "(A4)"} {
		if !strings.Contains(regexp.MustCompile(` +`).ReplaceAllString(info, " "), w) {
			t.Errorf("pdfinfo lacks %q:\n%s", w, info)
		}
	}
	text := strings.Join(strings.Fields(tool(t, "pdftotext", path, "-")), " ")
	for _, w := range append(glass.Cautions(), "Hole H1: picture, place, verdict", "Hole H2: lenses, light, reach", "Sign-off, plan revision "+c.Mark,
		"Rink operator", "Glass contractor", "League", "Photographer", "no strength check", "page 1 of "+strconv.Itoa(pages-2), "Dispensations") {
		if !strings.Contains(text, w) {
			t.Errorf("the book's text lacks %q", w)
		}
	}
	if n := strings.Count(text, "page "); n < pages-2 { // the cover has none, the summary is page ii
		t.Errorf("%d page numbers on %d pages", n, pages)
	}
	if labels := tool(t, "mutool", "show", path, "trailer/Root/PageLabels"); !strings.Contains(strings.Join(strings.Fields(labels), " "), "0 << /S /r >> 2 << /S /D >>") {
		t.Errorf("labels of the pages: %s", labels)
	}
	if strings.Contains(info, "CreationDate") {
		t.Errorf("a date that nobody gave:\n%s", info)
	}
	outline := tool(t, "mutool", "show", path, "outline")
	for _, w := range []string{`"Summary"`, `"Holes"`, `"Hole H1"`, `"Hole H2"`, `"Rule findings"`, `"Cautions and sign-off"`} {
		if !strings.Contains(outline, w) {
			t.Errorf("the bookmarks lack %s:\n%s", w, outline)
		}
	}
}

// Every entry of the contents names the page on which its chapter begins.
func TestContentsAreTrue(t *testing.T) {
	c := content(t, smallArena, "a4", unit.Metric)
	print, err := c.PDF(t.Context())
	data, pages := print.Data, print.Pages
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "book.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	first, n := 1, 0
	for _, ch := range chaptersOf(t, c) {
		page := tool(t, "pdftotext", "-f", strconv.Itoa(first), "-l", strconv.Itoa(first), path, "-")
		if !strings.Contains(page, ch.pages[0].Title) {
			t.Errorf("page %d is not the first of %q", first, ch.title)
		}
		first += len(ch.pages)
		n++
	}
	if first-1 != pages || n < 9 {
		t.Errorf("%d chapters on %d pages of %d", n, first-1, pages)
	}
}
