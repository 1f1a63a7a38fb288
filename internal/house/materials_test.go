package house

import (
	"encoding/json"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"

	"example.org/rinkpane/internal/desk/survey"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// A material is one row of the table in package glass. What follows from the
// table, the schema, the cautions, the styles and the desk's hints, is held
// against it here, row by row; so are the documents, which are written by hand.
func TestAMaterialIsOneRow(t *testing.T) {
	var schema struct {
		Defs struct {
			Material struct{ Enum []any } `json:"material"`
		} `json:"$defs"`
	}
	if err := json.Unmarshal(arena.Schema(), &schema); err != nil {
		t.Fatal(err)
	}
	enum, rows := schema.Defs.Material.Enum, glass.Table()
	if len(enum) != len(rows)+1 || enum[len(rows)] != nil {
		t.Fatalf("the schema's materials are %v, the table has %d", enum, len(rows))
	}
	styles := map[string]bool{}
	for _, r := range chart.Styles() {
		styles[r.Class] = true
	}
	options := survey.Materials()[1:]
	cautions := strings.Join(glass.Cautions(), " ")
	file, formulas := read(t, "docs/arena-file.md"), read(t, "docs/formulas/glass.md")
	for i, p := range rows {
		name := string(p.Name)
		if enum[i] != name || options[i].Value != name {
			t.Errorf("%s: the schema says %v, the desk asks %q", name, enum[i], options[i].Value)
		}
		if !styles["pane-"+p.Slug] || !styles["glass-"+p.Slug] {
			t.Errorf("%s: no style pane-%s or glass-%s", name, p.Slug, p.Slug)
		}
		if strings.Contains(cautions, name) != p.MadeToOrder() || strings.Contains(glass.OrderedMade(), name) != p.MadeToOrder() {
			t.Errorf("%s: ordered made %v; the cautions: %s", name, p.MadeToOrder(), cautions)
		}
		if !strings.Contains(file, "`"+name+"`") || !strings.Contains(strings.ToLower(formulas), name) {
			t.Errorf("%s is not in docs/arena-file.md and docs/formulas/glass.md", name)
		}
		for _, d := range documents(t) { // a caution in a document names all, or it is out of date
			for _, line := range neverCut.FindAllString(d.text, -1) {
				if p.MadeToOrder() && !strings.Contains(strings.ToLower(line), name) {
					t.Errorf("%s: %q leaves %s out", d.name, line, name)
				}
			}
		}
	}
}

// neverCut is a document's sentence on what is never cut.
var neverCut = regexp.MustCompile(`(?i)never cut [a-z, ]* glass`)

// Two materials in one line of the program are a list, and a list of materials
// is made from the table.
func TestNoListOfMaterialsIsWrittenByHand(t *testing.T) {
	names := strings.Join(glass.Names(nil), "|")
	word := regexp.MustCompile(`(?i)\b(` + names + `)\b`)
	files := 0
	err := walkTracked(func(name string) error {
		switch path.Ext(name) {
		case ".go", ".json", ".tmpl", ".html", ".js", ".css":
		default:
			return nil
		}
		if strings.HasSuffix(name, "_test.go") || strings.HasPrefix(name, "internal/survey/glass/") || strings.Contains(name, "/testdata/") {
			return nil
		}
		files++
		text, err := os.ReadFile(name)
		for i, line := range strings.Split(string(text), "\n") {
			met := map[string]bool{}
			for _, w := range word.FindAllString(line, -1) {
				met[strings.ToLower(w)] = true
			}
			if len(met) > 1 {
				t.Errorf("%s:%d lists materials: %s\nask glass.Names or a field of the table", name, i+1, strings.TrimSpace(line))
			}
		}
		return err
	})
	if err != nil || files < 300 {
		t.Fatalf("%d files, %v", files, err)
	}
}

func read(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
