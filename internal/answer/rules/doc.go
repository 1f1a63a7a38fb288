// Package rules answers: do this arena's holes keep the rule sets in force, and
// by what margin?
//
// A rule set is a YAML document ([Read]); several ship with the program
// ([Shipped]). [Sets] are those in force together: [Sets.Check] gives every
// rule's finding on every hole, pair or group that it concerns. A rule is one
// of these:
//
//	concerns       kinds
//	one opening    stretches, hole-size, size-at-most, hole-least, height-range,
//	               corner-radius, edge-rounding, cover, tether, in-one-pane,
//	               pane-edge, pane-corner, cut-out-share, materials,
//	               trade-distance, forbidden-zones, no-opening
//	a group        most-in-all, most-per-corner, stretches (each stretch), and
//	               the openings that no-opening exempts
//	a pair         least-separation, hole-to-hole, no-overlap, trade-distance
//	no finding     inspection, what is asked of a hole in service ([Applied.Service]);
//	               kept-for-camera, what is kept at games ([Applied.Keeps])
//
// A kind is a file and a row of its table. The set [Trade] is always in force
// ([InForce]): what a shop or a factory asks by the material of the pane. All
// that is found of a hole ([About]) is the one verdict on it.
//
// For planners the same rules are laid open at one arena ([Sets.On]):
// [Applied.Alone] for one hole by itself, [Applied.Groups] for what is capped,
// [Applied.Conflict] for a pair, [Applied.Permitted] for the boards where a
// standard hole would pass.
//
// Assumptions: a hole stands on the boards where its centre stands, unless a
// rule says that its rim counts; along the boards, curves included, distance is
// the difference of stations; within a pane it is straight. A limit met to
// within a micrometre is met: files hold rounded numbers.
//
// Limits: a rule set knows plan, size and equipment, not strength; a finding of
// pass is no approval by a league, and a league's own document always governs.
package rules
