// Package resect answers: where does a hole truly stand? From places of the rink that
// somebody marked in a frame it finds the camera that took it, and so the hole that
// the camera looked through.
//
//	marks (pixels) --start--> a camera behind the boards --fit--> the best one
//	                                                       |-- its place, with an error ellipse
//	                                                       |-- marks that do not fit
//	                                                       '-- the mark that would help most
//
// # The model
//
// A camera without distortion, its principal point in the frame's middle, looks
// through the hole along its axis: it is told by the hole's station and height, by
// how far its eye (the entrance pupil) stands behind the hole's rink face along the
// axis, by pan and tilt as everywhere in the house, by roll (positive when the camera's
// right side is up) and by its focal length. The hole lies on the glass, which stands
// behind the boards as the survey says.
//
// The camera is held to the shooting side: a photographer's eye stands [usualBack]
// behind the glass, give or take as much. That is one observation more, with the weight
// of its spread; where the marks know better, they win. A focal length that a frame
// tells is another one, within [focalSpread]; a user's word is taken as exact.
//
// Marks have errors of one size in both directions, which is estimated from what the
// marks leave over; the ellipse is that of 95 % by the F distribution of the degrees of
// freedom that are left, so that four marks prove as little as they do. Source: Hartley
// and Zisserman, Multiple View Geometry, 2nd edition, chapter 7 and appendix 6 (camera
// from marks, Levenberg-Marquardt); Huber and Ronchetti, Robust Statistics, 2nd edition,
// chapter 7 (robust regression).
//
// # Limits
//
// Goal posts are their middles: half a post outside the clear width that rule books give
// ([rink.Goal.PostMiddles]), the bar's upper edge above them. Goals are pushed,
// ice is painted by hand, and a zoom's focal length is nominal: a rink's own markings
// are good to some centimetres, and no ellipse knows more than its marks.
package resect
