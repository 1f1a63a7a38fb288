// Package solve answers: which columns of a program of zeros and ones are best to
// choose, is it provably best, and if nothing can be chosen, why? It knows rows,
// columns and bounds, and nothing of a rink: holes of a set, and seats at a game,
// are both columns here.
//
//	max worth(y)   with   least <= sum of y_i over a row <= most   each row,
//	                      y_i in {0, 1},  y_i = 1 for columns that must be chosen
//
// A worth is a sum of parts ([Worth]): plain sums are [Linear]; any other is
// known by its values and by linear cuts that bound it from above.
//
// # How it is solved
//
// A small linear program over y, one variable for each part of the worth, the
// rows and the cuts drawn so far bounds all sets from above (Benders'
// decomposition); its solution tells where the next cuts are worth drawing, and
// a best-first branch and bound over rows' counts and single columns closes what
// the relaxation leaves open:
//
//	+--> relax: max of sum theta, rows, cuts --> y, bound ----+
//	|                                                         |
//	+-- cuts at y <-- not whole, bound above best so far <----+--> whole: a set
//	                  no new cut: branch
//
// Every bound is worked out again from the stated numbers by weak duality
// (hunt.proved), so that rounding in the simplex cannot make a proof false. A
// [Result] says why the search stopped; when its context ended first, the best
// set so far and the proved bound.
//
// # Limits
//
// The tableau is dense: rows times columns, 8 bytes each. Worths are best of
// order 1, and of order 1000 at most, since [Tolerance] is a plain number.
package solve
