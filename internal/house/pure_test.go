package house

import (
	"go/ast"
	"go/token"
	"go/types"
	"slices"
	"strings"
	"testing"
)

// pure reports whether a package takes values and returns values: all below the
// storey of keep do, and so do the rooms of it that say what is to be kept.
func pure(name string) bool {
	return storeyOf(name) < slices.Index(storeys, "keep") || name == "keep/revision" || name == "keep/people"
}

// impureImports are doors to the machine that no pure package opens. Readers,
// writers and fs.FS come in as arguments.
var impureImports = []string{
	"crypto/rand", "database/sql", "math/rand", "net", "net/http", "os", "os/exec",
	"os/signal", "os/user", "path/filepath", "syscall", "testing", "unsafe",
}

// impureCalls read the clock or print past the caller.
var impureCalls = map[string][]string{
	"time": {"Now", "Since", "Until", "Sleep", "After", "Tick", "NewTimer", "NewTicker", "AfterFunc"},
	"fmt":  {"Print", "Printf", "Println"},
	"rand": {"Int", "IntN", "Int64N", "Float64", "NormFloat64", "ExpFloat64", "Perm", "Shuffle", "N", "Uint64", "Uint32"},
	"log":  {"Print", "Printf", "Println", "Fatal", "Fatalf"},
}

// TestPureFloors reads every package below the desk: no files, no clock, no
// init, no exit by panic and no variable of the package that a function changes.
func TestPureFloors(t *testing.T) {
	seen := 0
	for _, pkg := range goPackages(t) {
		if !pure(pkg.name) {
			continue
		}
		seen++
		for _, imp := range impureImports {
			if slices.Contains(pkg.imports, imp) {
				t.Errorf("%s imports %s: packages below keep take values, readers and seeds from their caller", pkg.name, imp)
			}
		}
		checkPureBodies(t, pkg)
	}
	if seen < leastRooms-1 {
		t.Errorf("read %d pure packages, expected %d or more", seen, leastRooms-1)
	}
}

func checkPureBodies(t *testing.T, pkg *goPackage) {
	t.Helper()
	info := looseTypes(pkg)
	for _, f := range pkg.files {
		for _, decl := range f.Decls {
			fn, ok := decl.(*ast.FuncDecl)
			if !ok || fn.Body == nil {
				continue
			}
			if fn.Recv == nil && fn.Name.Name == "init" {
				t.Errorf("%s: init hides an order of events; make it a function that its user calls", pkg.fset.Position(fn.Pos()))
			}
			ast.Inspect(fn.Body, func(n ast.Node) bool {
				if why := impurity(info, n); why != "" {
					t.Errorf("%s: %s", pkg.fset.Position(n.Pos()), why)
				}
				return true
			})
		}
	}
}

// impurity says what is wrong with a node of a pure function, or "".
func impurity(info *types.Info, n ast.Node) string {
	switch n := n.(type) {
	case *ast.SelectorExpr:
		if id, ok := n.X.(*ast.Ident); ok && slices.Contains(impureCalls[id.Name], n.Sel.Name) {
			return id.Name + "." + n.Sel.Name + ": pass the value in"
		}
	case *ast.AssignStmt:
		if n.Tok == token.DEFINE {
			return ""
		}
		for _, left := range n.Lhs {
			if name := packageVariable(info, left); name != "" {
				return "changes the package's variable " + name
			}
		}
	case *ast.IncDecStmt:
		if name := packageVariable(info, n.X); name != "" {
			return "changes the package's variable " + name
		}
	}
	return ""
}

// packageVariable returns the name of the package-level variable at the root of
// an assigned expression, or "".
func packageVariable(info *types.Info, e ast.Expr) string {
	for {
		switch x := e.(type) {
		case *ast.IndexExpr:
			e = x.X
		case *ast.SelectorExpr:
			e = x.X
		case *ast.StarExpr:
			e = x.X
		case *ast.ParenExpr:
			e = x.X
		case *ast.Ident:
			v, ok := info.Uses[x].(*types.Var)
			if ok && v.Pkg() != nil && v.Parent() == v.Pkg().Scope() {
				return v.Name()
			}
			return ""
		default:
			return ""
		}
	}
}

// looseTypes resolves the names of one package without reading its imports:
// enough to tell a package's own variables and basic types from the rest.
func looseTypes(pkg *goPackage) *types.Info {
	info := &types.Info{Uses: map[*ast.Ident]types.Object{}, Defs: map[*ast.Ident]types.Object{}}
	conf := types.Config{
		Importer: emptyImporter{},
		Error:    func(error) {}, // names from other packages are unknown on purpose
	}
	_, _ = conf.Check(module+"/"+pkg.name, pkg.fset, pkg.files, info)
	return info
}

type emptyImporter struct{}

func (emptyImporter) Import(path string) (*types.Package, error) {
	p := types.NewPackage(path, path[strings.LastIndex(path, "/")+1:])
	p.MarkComplete()
	return p, nil
}
