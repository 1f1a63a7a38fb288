package house

import (
	"io/fs"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"
)

// document is one Markdown file of the project.
type document struct{ name, text string }

// fewestDocuments is how many the walk must meet to be believed.
const fewestDocuments = 4

func documents(t *testing.T) []document {
	t.Helper()
	var docs []document
	err := walkTracked(func(name string) error {
		if path.Ext(name) != ".md" {
			return nil
		}
		text, err := os.ReadFile(name)
		docs = append(docs, document{name, string(text)})
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(docs) < fewestDocuments {
		t.Fatalf("found %d documents, expected %d or more", len(docs), fewestDocuments)
	}
	return docs
}

var (
	// fenced is a block of code; its paths are the reader's, not ours.
	fenced = regexp.MustCompile("(?s)```.*?```")
	// linked is a Markdown link or picture: [words](place).
	linked = regexp.MustCompile(`\]\(([^)\s]+)\)`)
	// quoted is a name in back quotes.
	quoted = regexp.MustCompile("`([^`\n]+)`")
	// pathLike is a name in back quotes that reads as a path of the repository:
	// a folder of ours and a slash, or a file with a known ending at the root.
	pathLike = regexp.MustCompile(`^(\.?[A-Za-z0-9_-]+/)*[A-Za-z0-9_.-]+\.(go|md|yaml|json|txt|svg|png|js|css|tmpl|sh)$|^[a-z.][A-Za-z0-9_-]*(/[A-Za-z0-9_.-]+)+/?$`)
	// testNamed is the name of a test, a benchmark or a fuzz target.
	testNamed = regexp.MustCompile(`\b(Test|Benchmark|Fuzz|Example)[A-Z][A-Za-z0-9_]+\b`)
)

// TestDocumentsNameRealPaths follows every link and every path that a document names.
func TestDocumentsNameRealPaths(t *testing.T) {
	seen := 0
	for _, d := range documents(t) {
		for _, m := range linked.FindAllStringSubmatch(d.text, -1) {
			place, _, _ := strings.Cut(m[1], "#")
			if place == "" || strings.Contains(place, "://") {
				continue
			}
			seen++
			if _, err := os.Stat(path.Join(path.Dir(d.name), place)); err != nil {
				t.Errorf("%s links to %s, which is not there", d.name, m[1])
			}
		}
		for _, m := range quoted.FindAllStringSubmatch(fenced.ReplaceAllString(d.text, ""), -1) {
			name := m[1]
			if !pathLike.MatchString(name) || !ours(name) {
				continue
			}
			seen++
			if !exists(path.Dir(d.name), name) {
				t.Errorf("%s names `%s`, which is not there", d.name, name)
			}
		}
	}
	if seen < fewestDocuments {
		t.Errorf("followed %d paths, expected %d or more", seen, fewestDocuments)
	}
}

// ours reports whether a path starts with a folder of the repository: other
// names with a slash are import paths, units or files of the user's.
func ours(name string) bool {
	first, _, folder := strings.Cut(name, "/")
	if !folder {
		return path.Ext(name) == ".go" || path.Ext(name) == ".md"
	}
	info, err := os.Stat(first)
	return err == nil && info.IsDir()
}

// exists looks for a path from the root and from the document's own folder; a
// bare file name may lie anywhere.
func exists(dir, name string) bool {
	for _, full := range []string{name, path.Join(dir, name)} {
		if _, err := os.Stat(full); err == nil {
			return true
		}
	}
	if strings.Contains(name, "/") {
		return false
	}
	found := false
	_ = fs.WalkDir(os.DirFS("."), ".", func(p string, d fs.DirEntry, err error) error {
		found = found || err == nil && d.Name() == name
		return nil
	})
	return found
}

// TestDocumentsNameRealTests looks up each test that a document names as its proof.
func TestDocumentsNameRealTests(t *testing.T) {
	declared := map[string]bool{}
	decl := regexp.MustCompile(`(?m)^func (Test|Benchmark|Fuzz|Example)(\w*)\(`)
	err := walkTracked(func(name string) error {
		if !strings.HasSuffix(name, "_test.go") {
			return nil
		}
		text, err := os.ReadFile(name)
		for _, m := range decl.FindAllStringSubmatch(string(text), -1) {
			declared[m[1]+m[2]] = true
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range documents(t) {
		for _, name := range testNamed.FindAllString(d.text, -1) {
			if !declared[name] {
				t.Errorf("%s names %s, and no test has that name", d.name, name)
			}
		}
	}
}

// TestHouseMap compares CONTRIBUTING's map with the house: every package has a
// line, storey by storey from the ground up.
func TestHouseMap(t *testing.T) {
	text, err := os.ReadFile("CONTRIBUTING.md")
	if err != nil {
		t.Fatal(err)
	}
	line := regexp.MustCompile("(?m)^\\| (?:\\d+ \\| )?`([a-z/]+)` \\|")
	mapped := map[string]bool{}
	last := ""
	for _, m := range line.FindAllStringSubmatch(string(text), -1) {
		if last != "" && storeyOf(m[1]) < storeyOf(last) {
			t.Errorf("CONTRIBUTING.md maps %s after %s: lower storeys come first", m[1], last)
		}
		mapped[m[1]], last = true, m[1]
	}
	for _, pkg := range goPackages(t) {
		if !mapped[pkg.name] {
			t.Errorf("CONTRIBUTING.md has no line for %s", pkg.name)
		}
		delete(mapped, pkg.name)
	}
	for name := range mapped {
		t.Errorf("CONTRIBUTING.md maps %s, which is not in the house", name)
	}
}
