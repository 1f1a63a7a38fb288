// Package sight answers: what part of the ice does a hole see?
//
// The reach of a hole is the share of the ice, at a height, at which some lens
// can be aimed with half of its light or more (T >= 0.5, see package fit):
//
//   - face or puck on the ice, at a height z
//     .
//     .          rink face of the boards
//     .            |
//     glass  | .            |     seen when both hold:
//     hole  o - - - - - - -|     1. the lens's traced limit contains the aim from
//     |  setback     |        the hole's centre (pan, tilt): the hole's edges
//     --------+--------------'     2. where the sight line crosses the boards' rink
//     top of the boards        face it passes above their top: the ledge
//
// Sight lines start at the hole's centre on the pane's rink face. The pupil in
// truth stands some centimetres behind and beside it, in the pose that the limit
// was traced for; at the ice that moves a limit by as much.
//
// Assumptions: the far boards hide nothing, nor do players, goals and stanchions;
// the eye's height is the hole's; a flat pane in a corner stands as a tangent at
// the hole's station, so near the ends of a wide flat pane the true aim differs by
// up to half its bend. A lens is used bare, without its hood, landscape, wide open;
// a zoom counts at both ends of its range.
package sight
