package house

import (
	"go/ast"
	"regexp"
	"strings"
	"testing"
)

// docLink is a link in a comment: [Name], [Type.Method], [room.Name],
// [room.Type.Method], with a star before a type or without.
var docLink = regexp.MustCompile(`(?:^|[\s(])\[\*?((?:[a-z]\w*\.)?[A-Z]\w*(?:\.[A-Za-z]\w*)?)\]`)

// leastLinks is how many links the reading must follow to be believed.
const leastLinks = 100

// TestDocLinksLeadSomewhere follows the links in comments to names of the house;
// links to other modules are theirs to keep.
func TestDocLinksLeadSomewhere(t *testing.T) {
	names := map[string]map[string]bool{} // by room: Name, Type.Member
	byLast := map[string][]string{}
	for _, pkg := range goPackages(t) {
		names[pkg.name] = declaredNames(pkg)
		last := pkg.name[strings.LastIndex(pkg.name, "/")+1:]
		byLast[last] = append(byLast[last], pkg.name)
	}
	followed := 0
	for _, pkg := range goPackages(t) {
		for _, f := range pkg.files {
			for _, group := range f.Comments {
				for _, m := range docLink.FindAllStringSubmatch(group.Text(), -1) {
					rooms, name := []string{pkg.name}, m[1]
					if first, rest, found := strings.Cut(name, "."); found && first[0] >= 'a' {
						rooms, name = byLast[first], rest
						if len(rooms) == 0 {
							continue // a package of another module
						}
					}
					followed++
					known := false
					for _, room := range rooms {
						known = known || names[room][name]
					}
					if !known {
						t.Errorf("%s: the comment links to [%s], which is not there", pkg.fset.Position(group.Pos()), m[1])
					}
				}
			}
		}
	}
	if followed < leastLinks {
		t.Errorf("followed %d links, expected %d or more", followed, leastLinks)
	}
}

// declaredNames gathers what a package declares at its top: names, methods and
// the fields of its structs and interfaces.
func declaredNames(pkg *goPackage) map[string]bool {
	out := map[string]bool{}
	for _, f := range pkg.files {
		for _, decl := range f.Decls {
			switch d := decl.(type) {
			case *ast.FuncDecl:
				out[receiverName(d)+d.Name.Name] = true
			case *ast.GenDecl:
				for _, spec := range d.Specs {
					switch s := spec.(type) {
					case *ast.ValueSpec:
						for _, id := range s.Names {
							out[id.Name] = true
						}
					case *ast.TypeSpec:
						out[s.Name.Name] = true
						for _, member := range members(s.Type) {
							out[s.Name.Name+"."+member] = true
						}
					}
				}
			}
		}
	}
	return out
}

// members returns the fields of a struct and the methods of an interface.
func members(e ast.Expr) (names []string) {
	var fields *ast.FieldList
	switch x := e.(type) {
	case *ast.StructType:
		fields = x.Fields
	case *ast.InterfaceType:
		fields = x.Methods
	default:
		return nil
	}
	for _, f := range fields.List {
		for _, id := range f.Names {
			names = append(names, id.Name)
		}
	}
	return names
}
