package house

import (
	"go/ast"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"
)

// calledFromOutside are methods that no code of ours need name: packages of Go
// and of others call them by interface.
var calledFromOutside = map[string]string{
	"String": "fmt", "Error": "error", "Unwrap": "errors", "Is": "errors", "GoString": "fmt", "Format": "fmt",
	"MarshalJSON": "encoding/json", "UnmarshalJSON": "encoding/json", "MarshalText": "encoding/json", "UnmarshalText": "encoding/json",
	"ServeHTTP": "net/http", "Write": "io", "Read": "io", "Close": "io", "WriteTo": "io", "Flush": "net/http", "WriteHeader": "net/http",
	"Len": "sort", "Less": "sort", "Swap": "sort", "Push": "container/heap", "Pop": "container/heap",
	"MarshalYAML": "go.yaml.in/yaml/v3", "UnmarshalYAML": "go.yaml.in/yaml/v3",
	"At": "image", "Bounds": "image", "ColorModel": "image", "Set": "pflag", "Type": "pflag",
	"InsertBegin": "github.com/riverqueue/river", "NextRetry": "github.com/riverqueue/river",
}

// calledByTests are exported functions that only tests call, each with the
// reason why it stands in the product. They stay few.
var calledByTests = map[string]string{
	"draw/sheet.Drawing.TextBoxes":        "drawings of other rooms are tested for texts that meet",
	"draw/sheet.Collisions":               "drawings of other rooms are tested for texts that meet",
	"examples.Largest":                    "tests and benchmarks of other rooms plan it",
	"keep/store/cluster.Alone":            "the room is for tests",
	"keep/store/cluster.Cluster.Database": "the room is for tests",
}

// leastExported is how many exported functions the reading must meet to be believed.
const leastExported = 300

// TestExportedFunctionsHaveCallers finds exported functions and methods that no
// code of the product names. It compares names, not types: a method with the
// name of another that is called passes.
func TestExportedFunctionsHaveCallers(t *testing.T) {
	used := usedNames(t)
	met, idle := 0, map[string]bool{}
	for _, pkg := range goPackages(t) {
		for _, f := range pkg.files {
			for _, decl := range f.Decls {
				fn, ok := decl.(*ast.FuncDecl)
				if !ok || !fn.Name.IsExported() {
					continue
				}
				met++
				name, full := fn.Name.Name, pkg.name+"."+receiverName(fn)+fn.Name.Name
				if used[pkg.name+"."+name] || fn.Recv != nil && (used["."+name] || calledFromOutside[name] != "") {
					continue
				}
				idle[full] = true
				if calledByTests[full] == "" {
					t.Errorf("%s: no code of the product calls %s: take it out", pkg.fset.Position(fn.Pos()), full)
				}
			}
		}
	}
	for full := range calledByTests {
		if !idle[full] {
			t.Errorf("calledByTests lists %s, which is called or gone: take it out of the list", full)
		}
	}
	if met < leastExported {
		t.Errorf("met %d exported functions, expected %d or more", met, leastExported)
	}
}

// usedNames gathers what code and the desk's templates name: "room.Name" for a
// name of a package, ".Name" for any selector.
func usedNames(t *testing.T) map[string]bool {
	t.Helper()
	used := map[string]bool{}
	templates := regexp.MustCompile(`\.([A-Z]\w*)`)
	err := walkTracked(func(name string) error {
		if path.Ext(name) != ".tmpl" {
			return nil
		}
		text, err := os.ReadFile(name)
		for _, m := range templates.FindAllStringSubmatch(string(text), -1) {
			used["."+m[1]] = true
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, pkg := range goPackages(t) {
		for _, f := range pkg.files {
			rooms := importedRooms(f)
			declares := map[*ast.Ident]bool{}
			ast.Inspect(f, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.FuncDecl:
					declares[n.Name] = true
				case *ast.SelectorExpr:
					used["."+n.Sel.Name] = true
					if id, ok := n.X.(*ast.Ident); ok && rooms[id.Name] != "" {
						used[rooms[id.Name]+"."+n.Sel.Name] = true
					}
				case *ast.Ident:
					if !declares[n] {
						used[pkg.name+"."+n.Name] = true
					}
				}
				return true
			})
		}
	}
	return used
}

// importedRooms maps the names by which a file calls packages of the house.
func importedRooms(f *ast.File) map[string]string {
	rooms := map[string]string{}
	for _, imp := range f.Imports {
		room, inside := roomAt(strings.Trim(imp.Path.Value, `"`))
		if !inside {
			continue
		}
		name := room[strings.LastIndex(room, "/")+1:]
		if imp.Name != nil {
			name = imp.Name.Name
		}
		rooms[name] = room
	}
	return rooms
}

// receiverName returns "Type." for a method, "" for a function.
func receiverName(fn *ast.FuncDecl) string {
	if fn.Recv == nil {
		return ""
	}
	at := fn.Recv.List[0].Type
	for {
		switch x := at.(type) {
		case *ast.StarExpr:
			at = x.X
		case *ast.IndexExpr:
			at = x.X
		case *ast.IndexListExpr:
			at = x.X
		case *ast.Ident:
			return x.Name + "."
		default:
			return ""
		}
	}
}
