package people

import (
	"errors"
	"strings"
	"testing"
)

// cast reads people from their initials: "Ap Bv" is Ap, a planner, and Bv, a viewer.
func cast(names string) (out []Person) {
	for _, n := range strings.Fields(names) {
		out = append(out, Person{Name: n, Role: map[byte]Role{'p': Planner, 'v': Viewer}[n[1]]})
	}
	return out
}

func TestEdits(t *testing.T) {
	planner, viewer := Adding(cast("Np")[0]), Adding(cast("Nv")[0])
	demote := func(name string) Edit { return Changing(name, func(p *Person) { p.Role = Viewer }) }
	for _, c := range []struct {
		what     string
		before   string
		edit     Edit
		somebody bool
		want     error
	}{
		{"the first is a planner", "", planner, false, nil},
		{"the first is a viewer", "", viewer, false, ErrFirst},
		{"one more", "Ap", viewer, false, nil},
		{"twice the same", "Ap", Adding(cast("Ap")[0]), false, ErrTaken},
		{"nearly the same", "Ap", Adding(Person{Name: "AP", Role: Viewer}), false, ErrTaken},
		{"the last planner goes", "Ap Bv", Removing("Ap"), false, ErrLast},
		{"the last planner becomes a viewer", "Ap Bv", demote("Ap"), false, ErrLast},
		{"one of two planners goes", "Ap Bp", Removing("Ap"), false, nil},
		{"a viewer goes", "Ap Bv", Removing("Bv"), false, nil},
		{"the last of all goes", "Ap", Removing("Ap"), false, nil},
		{"the last of all stays where others reach", "Ap", Removing("Ap"), true, ErrLast},
		{"somebody who is not there", "Ap", Removing("Bp"), false, ErrNone},
		{"a change of somebody who is not there", "Ap", demote("Bp"), false, ErrNone},
		{"viewers alone, from before, may go", "Av Bv", Removing("Av"), false, nil},
	} {
		before := cast(c.before)
		if _, err := c.edit.KeepingPlanner(c.somebody)(before); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, expected %v", c.what, err, c.want)
		}
		for i, p := range cast(c.before) {
			if before[i] != p {
				t.Errorf("%s: the edit changed what it was given", c.what)
			}
		}
	}
}
