package house

import (
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// A list that is written in one place and copied by hand to another: the
// pattern of each place takes the names out of its file. A group may be a list
// itself; several groups are one name.
type copied struct {
	what, copy, pattern, source, names string
	part                               bool // the copy may leave names out
}

// Patterns of the names where they are declared.
const (
	aCommand  = `(?m)^\t\t(\w+)Command\(a\),$`
	aPaper    = `\{"([\w-]+)", [\d.]+`
	aCall     = `\(s, "([A-Z]+) ([^"]+)", "`
	aFile     = `Kind = "([^"]+)"`
	aVerb     = `Verb = "([^"]+)"`
	aState    = `State = "([^"]+)"`
	aLandmark = `Landmark = "([^"]+)"`
	aZone     = `return \[\]string\{("bench"[^}]+)\}`
)

const (
	commandsFile = "cmd/rinkpane/commands.go"
	papersFile   = "internal/draw/sheet/paper.go"
	filesFile    = "internal/desk/parcel/parcel.go"
	editFile     = "internal/survey/edit/edit.go"
	statesFile   = "internal/survey/glass/glass.go"
	marksFile    = "internal/survey/rink/landmark.go"
)

func copies() []copied {
	const run = "(?m)(?:`|^(?:    )?|cmd/)rinkpane ([a-z]+)"
	list := []copied{
		{"papers", "cmd/rinkpane/cut.go", `"paper", "", "([^"]*), another`, papersFile, aPaper, true},
		{"papers", "cmd/rinkpane/book.go", `"paper", "", "paper of the PDF: ([^"]*) \.\.\.`, papersFile, aPaper, true},
		{"papers", "internal/desk/api/files.go", `book\.pdf: ([^"]*) \.\.\.`, papersFile, aPaper, true},
		{"calls", "docs/api.md", "`((?:GET|POST|PUT|DELETE)) (/api/[^`?]+)", "internal/desk/api/*.go", aCall, false},
		{"files to take away", "docs/api.md", "`(arena\\.yaml [^`]+)`", filesFile, aFile, false},
		{"files to take away", "internal/desk/api/files.go", `enum:"(arena\.yaml[^"]+)"`, filesFile, aFile, false},
		{"edits", "docs/api.md", `\{"do": "(\w+)"`, editFile, aVerb, false},
		{"edits", editFile, `Do    Verb .*enum:"([^"]+)"`, editFile, aVerb, false},
		{"states", editFile, `glass\.State .*enum:"([^"]+)"`, statesFile, aState, false},
		{"states", "docs/arena-file.md", "(?m)^- `state`: ([^;]+);", statesFile, aState, false},
		{"states", "internal/survey/arena/schema.json", `"state": \{"enum": \[(.*), null\]`, statesFile, aState, false},
		{"landmarks", editFile, `json:"landmark,.*enum:"([^"]+)"`, marksFile, aLandmark, false},
		{"landmarks", "internal/survey/arena/schema.json", `"landmark": \{"enum": \[([^]]+)\]`, marksFile, aLandmark, false},
		{"zones", "docs/arena-file.md", "- `kind` of a zone: (.+)\\.", "internal/survey/arena/read_rest.go", aZone, false},
	}
	for _, d := range []string{"README.md", "docs/arena-file.md", "docs/moments.md", "docs/performance.md", "docs/rule-sets.md"} {
		list = append(list, copied{"commands", d, run, commandsFile, aCommand, true})
	}
	return list
}

// TestCopiedListsAgree compares each list copied by hand with its source.
func TestCopiedListsAgree(t *testing.T) {
	for _, c := range copies() {
		got, want := namesIn(t, c.copy, c.pattern), namesIn(t, c.source, c.names)
		for _, name := range got {
			if !slices.Contains(want, name) {
				t.Errorf("%s names %q among the %s: %s has none", c.copy, name, c.what, c.source)
			}
		}
		for _, name := range want {
			if !c.part && !slices.Contains(got, name) {
				t.Errorf("%s leaves %q out of the %s of %s", c.copy, name, c.what, c.source)
			}
		}
	}
}

// namesIn returns what a pattern takes out of a file, or of all files that a
// wildcard names; none is an error, for then the pattern watches nothing.
func namesIn(t *testing.T, file, pattern string) []string {
	t.Helper()
	var out []string
	err := walkTracked(func(name string) error {
		if !alike(file, name) || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		for _, m := range regexp.MustCompile(pattern).FindAllStringSubmatch(read(t, name), -1) {
			if len(m) > 2 {
				out = append(out, strings.ToUpper(m[1])+" "+m[2])
				continue
			}
			out = append(out, strings.FieldsFunc(m[1], func(r rune) bool { return strings.ContainsRune(" ,\"`\n\t", r) })...)
		}
		return nil
	})
	if err != nil || len(out) == 0 {
		t.Fatalf("%s: %q finds no name (%v)", file, pattern, err)
	}
	return out
}

func alike(pattern, name string) bool {
	ok, err := path.Match(pattern, name)
	return err == nil && ok
}
