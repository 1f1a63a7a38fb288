// Package fit answers the question at the heart of the house: which lens
// works in which hole, how far can it pan and tilt there, and what light does
// it lose?
//
// The model, in three dimensions and in the hole frame (origin at the hole's
// centre on the rink face, X along the boards to the camera's right, Y up, Z
// into the rink; left-handed, so no cross products):
//
//	    spectators            pane           ice
//	                       -t      0
//	 endless cylinder       |######|            Z ->
//	================.       |######|
//	      pupil |    |      +------+  hole's edge
//	- - - - - - | - -|- - - - - - - - - -> axis a
//	            |    |      +------+
//	================'       |######|
//	             <p> nose   |######|
//
// The nose (barrel or hood) is a disc square to the axis with an endless
// cylinder behind it, the entrance pupil a disc p behind the nose, the hole a
// rounded-rectangle prism; edge rounding is left out, which is the safe side.
// Nothing of the lens passes the rink face or cuts the pane. The transmission
// T(u) toward a direction u is the share of the pupil's area that both hole
// outlines, projected along u, leave free; an outline limits only those
// points of the pupil that lie behind it. Optics are geometric: no
// diffraction, no vignetting of the lens's own, the pupil seen from every
// direction as the same disc.
//
// Make a [Case] from a [Setup] or with [FromKit], then ask it for [Case.Limits],
// [Case.Loss], [Case.At] and, for maps, [Case.Trace].
package fit
