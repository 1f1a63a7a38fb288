package house

import (
	"maps"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// storeys are the folders of the house from the ground up, the way of an answer.
// A package imports only lower storeys, and within its own only lower floors.
var storeys = []string{"examples", "measure", "survey", "answer", "decide", "tell", "draw", "keep", "desk", "cmd"}

// storeyOf returns how high a package stands, -1 for one outside the storeys.
func storeyOf(name string) int {
	first, _, _ := strings.Cut(name, "/")
	return slices.Index(storeys, first)
}

// upward are arrows that go up a storey, each with the reason why it may for now.
// One that no import follows any more must go.
var upward = map[string]string{}

// A room is one package of the house: its floor, which orders the packages of one
// storey, and the packages it may import. Whoever adds an arrow adds it here and
// says why.
type room struct {
	name  string
	floor float64
	uses  []arrow // rooms of the house
	needs []arrow // modules from outside; the standard library needs no entry
}

// An arrow is an import and the reason for it.
type arrow struct{ to, why string }

// leastRooms is how many packages the walk must find to be believed.
const leastRooms = 8

// TestFloors walks the imports of every package and fails on an arrow that is
// not in the house's table, or that does not go down.
func TestFloors(t *testing.T) {
	found := goPackages(t)
	if len(found) < leastRooms {
		t.Fatalf("found %d packages, expected %d or more: the walk is broken", len(found), leastRooms)
	}
	rooms, idle := roomsByName(t), maps.Clone(upward)
	for _, pkg := range found {
		if storeyOf(pkg.name) < 0 {
			t.Errorf("package %s stands outside the storeys %s", pkg.name, strings.Join(storeys, ", "))
		}
		r, ok := rooms[pkg.name]
		if !ok {
			t.Errorf("package %s has no room: add it to houseRooms with its floor, and to the map in CONTRIBUTING.md", pkg.name)
			continue
		}
		for _, path := range pkg.imports {
			checkImport(t, rooms, r, path)
			if to, inside := roomAt(path); inside {
				delete(idle, r.name+" -> "+to)
			}
		}
	}
	for arrow := range idle {
		t.Errorf("upward lists %s, which no import follows: take it out", arrow)
	}
}

func checkImport(t *testing.T, rooms map[string]room, r room, path string) {
	t.Helper()
	if to, inside := roomAt(path); inside {
		target, known := rooms[to]
		switch {
		case !listed(r.uses, to):
			t.Errorf("%s imports %s, which its room does not list: add the arrow with its reason, or do without", r.name, to)
		case upward[r.name+" -> "+to] != "":
		case storeyOf(to) > storeyOf(r.name):
			t.Errorf("%s imports %s, a storey above it: an arrow may only go down", r.name, to)
		case known && storeyOf(to) == storeyOf(r.name) && target.floor >= r.floor:
			t.Errorf("%s (floor %g) imports %s (floor %g): an arrow may only go down", r.name, r.floor, to, target.floor)
		}
		return
	}
	if strings.Contains(strings.SplitN(path, "/", 2)[0], ".") && !listed(r.needs, path) {
		t.Errorf("%s imports %s from outside, which its room does not list", r.name, path)
	}
}

// roomAt returns the room that an import path of the module leads to.
func roomAt(path string) (name string, inside bool) {
	name, inside = strings.CutPrefix(path, module+"/")
	return strings.TrimPrefix(name, "internal/"), inside
}

func listed(arrows []arrow, path string) bool {
	return slices.ContainsFunc(arrows, func(a arrow) bool {
		return a.to == path || strings.HasPrefix(path, a.to+"/")
	})
}

func roomsByName(t *testing.T) map[string]room {
	t.Helper()
	rooms := map[string]room{}
	for _, r := range houseRooms {
		if _, twice := rooms[r.name]; twice {
			t.Errorf("houseRooms lists %s twice", r.name)
		}
		met := map[string]bool{}
		for _, a := range append(slices.Clone(r.uses), r.needs...) {
			if met[a.to] {
				t.Errorf("houseRooms: the arrow %s -> %s stands twice", r.name, a.to)
			}
			met[a.to] = true
			if a.why == "" {
				t.Errorf("houseRooms: the arrow %s -> %s has no reason", r.name, a.to)
			}
		}
		rooms[r.name] = r
	}
	return rooms
}

// TestNoIdleArrows fails on an arrow that stands in the table and that no
// import follows: the table is read as the map of the house.
func TestNoIdleArrows(t *testing.T) {
	rooms := roomsByName(t)
	for _, pkg := range goPackages(t) {
		r := rooms[pkg.name]
		for _, a := range r.uses {
			if !slices.ContainsFunc(pkg.imports, func(path string) bool { to, inside := roomAt(path); return inside && to == a.to }) {
				t.Errorf("the room of %s lists %s, which it does not import: take the arrow out", r.name, a.to)
			}
		}
		for _, a := range r.needs {
			follows := func(path string) bool { return path == a.to || strings.HasPrefix(path, a.to+"/") }
			if !slices.ContainsFunc(pkg.imports, follows) {
				t.Errorf("the room of %s lists %s, which it does not import: take the arrow out", r.name, a.to)
			}
		}
		delete(rooms, pkg.name)
	}
	for name := range rooms {
		t.Errorf("houseRooms lists %s, and there is no such package", name)
	}
}

// TestDependenciesHaveTheirReason looks every module from outside up in the
// document that says why it is here.
func TestDependenciesHaveTheirReason(t *testing.T) {
	text, err := os.ReadFile("docs/dependencies.md")
	if err != nil {
		t.Fatal(err)
	}
	named := regexp.MustCompile("`([^`]+)`").FindAllStringSubmatch(string(text), -1)
	seen := 0
	for _, r := range houseRooms {
		for _, a := range r.needs {
			seen++
			if !slices.ContainsFunc(named, func(m []string) bool { return a.to == m[1] || strings.HasPrefix(a.to, m[1]+"/") }) {
				t.Errorf("docs/dependencies.md does not say why %s is here; %s uses it", a.to, r.name)
			}
		}
	}
	if seen < leastRooms {
		t.Errorf("looked up %d modules, expected %d or more", seen, leastRooms)
	}
}
