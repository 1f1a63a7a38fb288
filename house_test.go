package rinkpane

import (
	"slices"
	"strings"
	"testing"
)

// A room is one package of the house: the floor it stands on and the packages
// it may import. A package may import only rooms of lower floors; a fraction
// orders packages that share a floor. Whoever adds an arrow adds it here and
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
	rooms := roomsByName(t)
	for _, pkg := range found {
		r, ok := rooms[pkg.name]
		if !ok {
			t.Errorf("package %s has no room: add it to houseRooms with its floor, and to the map in CONTRIBUTING.md", pkg.name)
			continue
		}
		for _, path := range pkg.imports {
			checkImport(t, rooms, r, path)
		}
	}
}

func checkImport(t *testing.T, rooms map[string]room, r room, path string) {
	t.Helper()
	if to, inside := strings.CutPrefix(path, module+"/"); inside {
		target, known := rooms[to]
		switch {
		case !listed(r.uses, to):
			t.Errorf("%s imports %s, which its room does not list: add the arrow with its reason, or do without", r.name, to)
		case known && target.floor >= r.floor:
			t.Errorf("%s (floor %g) imports %s (floor %g): an arrow may only go down", r.name, r.floor, to, target.floor)
		}
		return
	}
	if strings.Contains(strings.SplitN(path, "/", 2)[0], ".") && !listed(r.needs, path) {
		t.Errorf("%s imports %s from outside, which its room does not list", r.name, path)
	}
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
		for _, a := range append(slices.Clone(r.uses), r.needs...) {
			if a.why == "" {
				t.Errorf("houseRooms: the arrow %s -> %s has no reason", r.name, a.to)
			}
		}
		rooms[r.name] = r
	}
	return rooms
}
