package people

import (
	"errors"
	"fmt"
	"slices"
)

// An Edit answers who shall be set up, given who is. A [Register] asks it within
// one transaction, so that nobody else's change comes between the look and the
// act; an error leaves everything as it was.
type Edit func(all []Person) ([]Person, error)

// The errors of an edit.
var (
	ErrNone  = errors.New("no such person or session")
	ErrTaken = errors.New("this name is taken")
	// ErrFirst and ErrLast answer an edit that would leave people without a planner.
	ErrFirst = errors.New("the first must be a planner: nobody else could let more in")
	ErrLast  = errors.New("this is the last planner, without whom nobody could let anybody in: let another planner in first")
)

// Adding lets a person in whose name is sound and like no other.
func Adding(p Person) Edit {
	return func(all []Person) ([]Person, error) {
		if err := CheckName(p.Name); err != nil {
			return nil, err
		}
		for _, other := range all {
			switch {
			case other.Name == p.Name:
				return nil, fmt.Errorf("%q: %w", p.Name, ErrTaken)
			case Alike(other.Name, p.Name):
				return nil, fmt.Errorf("%q: %w, or nearly: it reads like %s", p.Name, ErrTaken, other.Name)
			}
		}
		return append(slices.Clip(all), p), nil
	}
}

// Changing gives the person of a name another role or password.
func Changing(name string, change func(*Person)) Edit {
	return onOne(name, func(all []Person, i int) []Person { change(&all[i]); return all })
}

// Removing lets the person of a name sign in no more.
func Removing(name string) Edit {
	return onOne(name, func(all []Person, i int) []Person { return slices.Delete(all, i, i+1) })
}

func onOne(name string, do func(all []Person, i int) []Person) Edit {
	return func(all []Person) ([]Person, error) {
		i := slices.IndexFunc(all, func(p Person) bool { return p.Name == name })
		if i < 0 {
			return nil, ErrNone
		}
		return do(slices.Clone(all), i), nil
	}
}

// KeepingPlanner refuses the edit when it would leave people without a planner,
// and, where somebody must be able to sign in, when it would leave nobody.
func (e Edit) KeepingPlanner(somebody bool) Edit {
	return func(all []Person) ([]Person, error) {
		after, err := e(all)
		plans := func(p Person) bool { return p.Role == Planner }
		switch {
		case err != nil || slices.ContainsFunc(after, plans) || len(after) == 0 && !somebody:
			return after, err
		case slices.ContainsFunc(all, plans):
			return nil, ErrLast
		case len(all) == 0:
			return nil, ErrFirst
		}
		return after, nil
	}
}
