package solve

import (
	"errors"
	"fmt"
	"slices"
)

// Program is a choice laid bare: columns of which each is chosen or not, rows
// that say how many of some columns are chosen, and what a set of columns is
// worth. Every coefficient of a row is 1, as in assignments, packings and
// covers; that is what makes a row's count worth branching on.
type Program struct {
	Columns int
	Rows    []Row
	Caps    []Cap
	In      []int // columns that must be chosen
	Worth   Worth
}

// Cap says that what its chosen columns cost adds up to at most Most: money, hours.
// Costs are whole numbers, so that no rounding decides what a budget buys; below
// zero for a column whose choice saves.
type Cap struct {
	Cost []int // by column
	Most int
}

// Of adds up what a set costs.
func (c Cap) Of(set []int) (sum int) {
	for _, i := range set {
		sum += c.Cost[i]
	}
	return sum
}

func (c Cap) keeps(set []int) bool { return c.Of(set) <= c.Most }

// Row says that at least Least and at most Most of its columns are chosen.
type Row struct {
	Columns     []int // ascending
	Least, Most int
}

func (r Row) keeps(set []int) bool {
	n := Shared(r.Columns, set)
	return n >= r.Least && n <= r.Most
}

// Worth is what sets of columns are worth: a sum of parts, each bounded from
// above by linear cuts. Values are best of order 1, since [Tolerance] is.
type Worth interface {
	// Of returns what a set, ascending, is worth, without unit.
	Of(set []int) float64
	// Spans returns for each part between what values it lies for any set.
	Spans() []Span
	// Cuts returns for each part a cut that no set passes, met at y in [0, 1]^n;
	// at a whole y the cuts together equal the worth of that set.
	Cuts(y []float64) []Cut
	// Gains returns what each column that may join a set would add to its worth,
	// without unit; minus infinity for the others.
	Gains(set []int, may func(i int) bool) []float64
}

// Span is between what values, without unit, a part of the worth lies.
type Span struct {
	Least, Most float64 // without unit
}

// Check reports what is wrong with the program, if anything.
func (p *Program) Check() error {
	known := func(list []int) bool {
		return !slices.ContainsFunc(list, func(i int) bool { return i < 0 || i >= p.Columns })
	}
	if !known(p.In) {
		return errors.New("a fixed column does not exist")
	}
	for r, row := range p.Rows {
		if !known(row.Columns) || !slices.IsSorted(row.Columns) || row.Least < 0 || row.Most < row.Least {
			return fmt.Errorf("row %d: columns must exist and ascend, 0 <= least <= most", r)
		}
	}
	for k, c := range p.Caps {
		if len(c.Cost) != p.Columns {
			return fmt.Errorf("cap %d: %d costs for %d columns", k, len(c.Cost), p.Columns)
		}
	}
	return nil
}

// Allows reports whether a set of columns, ascending, keeps every row and cap and
// holds every column that must be chosen.
func (p *Program) Allows(set []int) bool {
	for _, i := range p.In {
		if _, ok := slices.BinarySearch(set, i); !ok {
			return false
		}
	}
	return !slices.ContainsFunc(p.Rows, func(r Row) bool { return !r.keeps(set) }) &&
		!slices.ContainsFunc(p.Caps, func(c Cap) bool { return !c.keeps(set) })
}

// Shared counts what two ascending lists have in common.
func Shared(a, b []int) int {
	n := 0
	for i, j := 0, 0; i < len(a) && j < len(b); {
		switch {
		case a[i] < b[j]:
			i++
		case a[i] > b[j]:
			j++
		default:
			n, i, j = n+1, i+1, j+1
		}
	}
	return n
}
