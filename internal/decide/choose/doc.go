// Package choose answers: which legal set of photo holes is best for an arena,
// is it provably best, and why?
//
// [ForArena] does it all. It lays candidate places over the panes (the arena's
// own holes, and places along each pane at a step), scores each for thousands
// of moments of a game (packages play and sight), states the rule sets and the
// user's wishes as caps on groups of candidates ([Problem]), and searches
// ([Solver], which stands on package solve).
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
// Package solve does it; y is all that it chooses. x and z are never stored: for
// fixed prices p and q of a moment's first and second view, linear duality
// bounds the moment's value for every y at once, and the bound, summed over the
// moments of a part, is a cut, linear in y (cut.go has the proof). The value has
// twelve parts, each with cuts of its own.
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
