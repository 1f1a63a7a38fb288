package house

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
)

const module = "example.org/rinkpane"

// goPackage is one package's source without its tests.
type goPackage struct {
	name    string // its folder below internal, or below the root
	fset    *token.FileSet
	files   []*ast.File
	paths   []string // of files, in the same order
	imports []string // sorted, each once
}

var parsed struct {
	once sync.Once
	pkgs []*goPackage
	err  error
}

// goPackages parses every package of the house once, in the order of their names.
func goPackages(t *testing.T) []*goPackage {
	t.Helper()
	parsed.once.Do(func() { parsed.pkgs, parsed.err = parseHouse() })
	if parsed.err != nil {
		t.Fatal(parsed.err)
	}
	return parsed.pkgs
}

func parseHouse() ([]*goPackage, error) {
	byName := map[string]*goPackage{}
	err := walkTracked(func(name string) error {
		dir := path.Dir(name)
		if dir == "." || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		p := byName[dir]
		if p == nil {
			p = &goPackage{name: strings.TrimPrefix(dir, "internal/"), fset: token.NewFileSet()}
			byName[dir] = p
		}
		return p.parse(name)
	})
	var pkgs []*goPackage
	for _, p := range byName {
		pkgs = append(pkgs, p)
	}
	slices.SortFunc(pkgs, func(a, b *goPackage) int { return strings.Compare(a.name, b.name) })
	return pkgs, err
}

func (p *goPackage) parse(name string) error {
	f, err := parser.ParseFile(p.fset, name, nil, parser.ParseComments)
	if err != nil {
		return err
	}
	p.files = append(p.files, f)
	p.paths = append(p.paths, name)
	for _, imp := range f.Imports {
		to, err := strconv.Unquote(imp.Path.Value)
		if err != nil {
			return err
		}
		if !slices.Contains(p.imports, to) {
			p.imports = append(p.imports, to)
		}
	}
	slices.Sort(p.imports)
	return nil
}

// walkTracked calls visit with each file that belongs to the project: hidden
// folders (but .ci), build output and a vendored tree are left out.
func walkTracked(visit func(name string) error) error {
	return fs.WalkDir(os.DirFS("."), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			hidden := strings.HasPrefix(d.Name(), ".") && name != "." && name != ".ci"
			if hidden || d.Name() == "rinkpane-plan" || d.Name() == "node_modules" {
				return fs.SkipDir
			}
			return nil
		}
		return visit(name)
	})
}
