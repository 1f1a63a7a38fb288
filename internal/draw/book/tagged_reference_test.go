package book

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// TestBookIsTagged has poppler tell the book's structure: a title for each chapter,
// headings one level below, the cells of tables under heads that say so, and every
// figure in words; what decorates is not told.
func TestBookIsTagged(t *testing.T) {
	c := content(t, smallArena, "a4", unit.Metric)
	print, err := c.PDF(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "book.pdf")
	if err := os.WriteFile(path, print.Data, 0o600); err != nil {
		t.Fatal(err)
	}
	told := tool(t, "pdfinfo", "-struct-text", path)
	titles := regexp.MustCompile(`(?m)^ *H1 \(block\)\n *"([^"]*) "`).FindAllStringSubmatch(told, -1)
	chapters := chaptersOf(t, c)
	if len(titles) != len(chapters) {
		t.Errorf("%d titles of %d chapters:\n%v", len(titles), len(chapters), titles)
	}
	if titles[0][1] != c.Arena.Name {
		t.Errorf("the first title is %q", titles[0][1])
	}
	for kind, least := range map[string]int{"H2 (block)": 15, "Table (block)": 12, "TR": 60, "TH": 40, "/Scope /Column": 40, "TD": 200, "LI (block)": 5, "Figure": 8, "TOCI": 9, "Link": 9} {
		if n := strings.Count(told, kind); n < least {
			t.Errorf("%d of %s, want %d at least", n, kind, least)
		}
	}
	if strings.Contains(told, "plan "+c.Mark) {
		t.Error("the foot of the pages is told")
	}
	figures := regexp.MustCompile(`/S /Figure /P [0-9]+ 0 R( /Alt .)?`).FindAllSubmatch(print.Data, -1)
	if len(figures) < 8 {
		t.Errorf("%d figures", len(figures))
	}
	for _, f := range figures {
		if len(f[1]) == 0 {
			t.Errorf("a figure without words: %s", f[0])
		}
	}
	for _, want := range []string{"/Marked true", "/Lang (en)", "/DisplayDocTitle true", "/Tabs /S"} {
		if !strings.Contains(string(print.Data), want) {
			t.Errorf("the file lacks %s", want)
		}
	}
}
