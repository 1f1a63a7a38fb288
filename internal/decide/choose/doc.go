// Package choose answers: which legal set of photo holes is best for an arena,
// is it provably best, and why?
//
// [ForArena] does it all. It lays candidate places over the panes (the arena's
// own holes, and places along each pane at a step), scores each for thousands
// of moments of a game (packages play and sight), states the rule sets and the
// user's wishes as caps on groups of candidates ([Problem]), and searches
// ([Solver]).
//
// # The value of a set
//
// With c_im in [0, 1] the score of moment m from candidate i, w_m the moment's
// weight, and d in [0, 1) the worth of a second view:
//
//	value(S) = sum over m of w_m [ best of c_im + d second best of c_im, i in S ],   sum w = 1.
//
// A value of 1 sees every moment perfectly once, 1 + d twice.
//
// # As an integer program
//
// y_i = 1 when candidate i is chosen; x_im and z_im when it is the first and
// second view of moment m:
//
//	max  sum w_m c_im x_im + d w_m c_im z_im
//	     sum_i x_im <= 1,  sum_i z_im <= 1          each moment
//	     x_im + z_im <= y_i                          each moment and candidate
//	     sum of y_i over a group <= its cap          each group; y_i in {0, 1}
//
// For whole y the best x and z pick the two best chosen scores, the better one
// first because d < 1: that is value(S). So the two problems have the same
// optimum. [Problem.WriteLP] writes this program for any other solver.
//
// # How it is solved
//
// x and z are never stored. For fixed prices p and q of a moment's first and
// second view, linear duality bounds the moment's value for every y at once; the
// bound, summed over moments, is a cut, linear in y (see type cut, with the
// proof). A small linear program over y, one variable for each of twelve parts
// of the value, the groups and the cuts drawn so far bounds all sets from above
// (Benders' decomposition of the program above); its solution tells where the
// next cuts are worth drawing, and a best-first branch and bound over groups'
// counts and single candidates closes what the relaxation leaves open:
//
//	+--> relax: max of sum theta, groups, cuts --> y, bound --+
//	|                                                         |
//	+-- cuts at y <-- not whole, bound above best so far <----+--> whole: a set
//	                  no new cut: branch
//
// Every bound is worked out again from the stated numbers by weak duality
// (hunt.proved), so that rounding in the simplex cannot make a proof false.
//
// # Assumptions and limits
//
// One hole per pane. A hole that is cut and not chosen means a whole pane in its
// place, which counts as no new cut. A place where the survey lacks a number
// that a rule needs is no candidate. Candidates stand at a step along the pane,
// so the best place between two of them is not found. The value is that of the
// sampled moments: another seed moves it by the sampling error, about
// 0.8/sqrt(moments) at most.
package choose
