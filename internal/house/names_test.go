package house

import (
	"go/ast"
	"go/token"
	"regexp"
	"strings"
	"testing"
)

// unitWord matches a word that tells what a plain number counts: a unit, or
// that the number has none. It is a reasonable check, no proof.
var unitWord = regexp.MustCompile(`(?i)\b(` + strings.Join([]string{
	`met(re|er)s?`, `m`, `m2`, `square metres?`, `millimet(re|er)s?`, `mm`, `inch(es)?`, `f(oo|ee)t`, `ft`,
	`radians?`, `rad`, `degrees?`, `deg`, `lux`, `lx`, `seconds?`, `hz`, `m/s`, `kelvin`, `kg`, `kg/m3`, `joules?`, `J`,
	`EV`, `ev100`, `ISO`, `stops?`, `f-numbers?`, `px`, `pixels?`, `pt`, `minutes?`, `hours?`, `m/s2`,
	`shares?`, `ratios?`, `factors?`, `indices`, `index`, `probability`, `weights?`, `scores?`, `counts?`, `number of`, `how many`,
	`between 0 and 1`, `from 0 to 1`, `dimensionless`, `without (a )?unit`, `no unit`, `bare number`, `units?`, `scale`,
}, "|") + `)\b|\[0, ?1\]|\b0 ?\.\. ?1\b|0 to 1`)

// jsonUnit matches a JSON field name that carries its unit.
var jsonUnit = regexp.MustCompile(`json:"[a-z0-9_]*_(m|m2|mm|deg|lx|s|px|k|j|kg|m_s|hz|ev|stops)\b`)

// unitless are packages whose numbers have the unit of what their user puts in.
var unitless = map[string]bool{"measure/geom": true}

// leastNumericNames is how many exported plain numbers the reading must meet to be believed.
const leastNumericNames = 10

// TestNumbersStateTheirUnit reads the comments of exported names that are plain
// floating-point numbers: constants, variables, struct fields and functions'
// results. Names with a type of package unit carry their unit in the type.
func TestNumbersStateTheirUnit(t *testing.T) {
	seen := 0
	for _, pkg := range goPackages(t) {
		if strings.HasPrefix(pkg.name, "cmd/") || strings.Contains(pkg.name, "/internal/") || unitless[pkg.name] {
			continue
		}
		for _, f := range pkg.files {
			for _, decl := range f.Decls {
				for _, n := range numericNames(decl) {
					seen++
					if !unitWord.MatchString(n.says+" "+n.tag) && !jsonUnit.MatchString(n.tag) {
						t.Errorf("%s: %s is a plain number: its comment must say its unit", pkg.fset.Position(n.pos), n.name)
					}
				}
			}
		}
	}
	if seen < leastNumericNames {
		t.Errorf("met %d plain numbers, expected %d or more: the reading is broken", seen, leastNumericNames)
	}
}

// numericName is one exported plain number and all that is said about it.
type numericName struct {
	name, says, tag string
	pos             token.Pos
}

func numericNames(decl ast.Decl) []numericName {
	switch d := decl.(type) {
	case *ast.FuncDecl:
		return numericResults(d)
	case *ast.GenDecl:
		var out []numericName
		for _, spec := range d.Specs {
			switch s := spec.(type) {
			case *ast.ValueSpec:
				out = append(out, numericValues(d, s)...)
			case *ast.TypeSpec:
				if st, ok := s.Type.(*ast.StructType); ok && s.Name.IsExported() {
					out = append(out, numericFields(d, s, st)...)
				}
			}
		}
		return out
	}
	return nil
}

func numericResults(d *ast.FuncDecl) []numericName {
	if !d.Name.IsExported() || d.Type.Results == nil || !exportedReceiver(d) {
		return nil
	}
	for _, r := range d.Type.Results.List {
		if plainNumber(r.Type) {
			return []numericName{{name: d.Name.Name, says: d.Doc.Text(), pos: d.Pos()}}
		}
	}
	return nil
}

func exportedReceiver(d *ast.FuncDecl) bool {
	if d.Recv == nil {
		return true
	}
	typ := d.Recv.List[0].Type
	if star, ok := typ.(*ast.StarExpr); ok {
		typ = star.X
	}
	id, ok := typ.(*ast.Ident)
	return !ok || id.IsExported()
}

func numericValues(d *ast.GenDecl, s *ast.ValueSpec) []numericName {
	plain := plainNumber(s.Type)
	if s.Type == nil {
		for _, v := range s.Values {
			lit, ok := v.(*ast.BasicLit)
			plain = plain || ok && lit.Kind == token.FLOAT
		}
	}
	var out []numericName
	for _, id := range s.Names {
		if plain && id.IsExported() {
			out = append(out, numericName{id.Name, d.Doc.Text() + s.Doc.Text() + s.Comment.Text(), "", id.Pos()})
		}
	}
	return out
}

func numericFields(d *ast.GenDecl, s *ast.TypeSpec, st *ast.StructType) []numericName {
	var out []numericName
	for _, f := range st.Fields.List {
		if !plainNumber(f.Type) {
			continue
		}
		tag := ""
		if f.Tag != nil {
			tag = f.Tag.Value
		}
		for _, id := range f.Names {
			if id.IsExported() {
				says := d.Doc.Text() + s.Doc.Text() + f.Doc.Text() + f.Comment.Text()
				out = append(out, numericName{s.Name.Name + "." + id.Name, says, tag, id.Pos()})
			}
		}
	}
	return out
}

// plainNumber reports whether a type is float64, or a pointer, list or array of it.
func plainNumber(e ast.Expr) bool {
	switch x := e.(type) {
	case *ast.Ident:
		return x.Name == "float64" || x.Name == "float32"
	case *ast.StarExpr:
		return plainNumber(x.X)
	case *ast.ArrayType:
		return plainNumber(x.Elt)
	}
	return false
}

// TestOneMeaningPerWord holds words that have meant several things to one: a type of
// the name is declared in one package, and in tell/wire where it is the same as JSON.
func TestOneMeaningPerWord(t *testing.T) {
	want := map[string]string{"Plan": "decide/plan", "Mark": "answer/optics", "Reach": "answer/sight", "Place": "survey/arena"}
	met := 0
	for _, pkg := range goPackages(t) {
		for _, f := range pkg.files {
			ast.Inspect(f, func(n ast.Node) bool {
				if s, ok := n.(*ast.TypeSpec); ok && want[s.Name.Name] != "" && pkg.name != "tell/wire" {
					met++
					if home := want[s.Name.Name]; pkg.name != home {
						t.Errorf("%s: the word %s is for the type of %s: name this one otherwise", pkg.fset.Position(s.Pos()), s.Name.Name, home)
					}
				}
				return true
			})
		}
	}
	if met < len(want) {
		t.Errorf("met %d types, expected %d or more", met, len(want))
	}
}
