// Package starter helps to fill an arena file: it writes a first one for a rink,
// and tells what one still lacks and what each gap costs.
//
// [Begin] lays a schedule of panes all round, stretch by stretch:
//
//	     A-box corner      box side: boxes, timekeeper      B-box corner
//	           .-----------------------------------------------.
//	ice       /                                                 \
//	machine  |                        x -->                      |  end B
//	          \                                                 /
//	           '-----------------------------------------------'
//	     A-bench corner    bench side: two benches    B-bench corner
//	                             ^ station 0, stations rise toward end B
//
// Panes of the nominal width follow one another in each stretch; what is left
// over goes to the stretch's last pane, or is shared by its last two. Lengths
// are written in whole sixteenths of an inch or whole millimetres, stretches
// starting on or after, and ending on or before, their exact station.
//
// Assumptions: benches, boxes, timekeeper and the ice machine's gate stand where
// they commonly do (see layout.go). All of it is a proposal to be measured.
package starter
