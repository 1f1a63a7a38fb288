// Package frame answers: what will the picture look like? It draws what a lens
// sees through a hole or a low window: the rink with its markings, boards,
// glass and plain stands, goals, players and officials of a moment as solid
// figures with numbers.
//
//	       boards' ledge        focus plane
//	eye  |hole|   ___|               :
//	(O---|    |--/---+--------( )----:----   each figure is its own layer,
//	 pupil    pane   ice      /|\    :       blurred for its own distance
//
// # The model
//
// A [Shot] is a camera in its best pose (package fit) with an aim, a focus
// distance, a stop and a shutter time. Points are projected in true perspective
// from the centre of the entrance pupil:
//
//	x = (P.Right / P.Forward) / tan(half width), y likewise; -1..1 over the frame
//
// The hole's shadow is T(u) of package fit for each direction of the frame; the
// boards' ledge covers the share of the pupil that lies below the plane
// through its front edge along u; a panel takes its Fresnel loss. Depth of
// field is a disc of confusion c = f^2 |z-s| / (N (s-f) z) for a point at depth
// z with focus at s (thin lens), motion blur the way of a figure along its
// heading during the exposure.
//
// The pose is fit's best one for the whole frame. A view can be so wide that no
// pose lights every corner; all poses are then equal to fit, and the picture
// takes the pose for the largest part of the frame, about its centre, whose
// corners keep half of their light ([Shot].Served says how large that part is).
//
// It is exposed for faces at the aim, in the survey's light and colour, through sRGB's own tone
// curve, with the sensor's noise at its ISO ([Lighting]). Lights behind the focus are drawn in
// the shape that hole and ledge leave of the pupil ([Shot.PupilShape]).
//
// A picture is drawn in four steps, each shared over the cores: hall and ice
// ([Shot.Picture]), blurred by how deep they lie on a stair of sizes; each
// figure on a layer of its own; the layers over the hall, the farthest first;
// the veil of hole, panel and ledge over all.
//
// By the pane instead of by the hole ([ByPane]) the same moment is drawn as
// through the whole pane: its Fresnel loss, then in light, not in display
// values, what it scatters (as much of the picture's mean), what it mirrors of
// the stands behind the camera, and the ghost, all after [optics.Pane.See]. Scuffs of a worn
// pane before the lens take their share of the pupil.
//
// # Limits
//
// Figures are balls and rounded rods, shaded as under many lamps; nothing casts a shadow but a
// dark spot below each figure. What the light makes brighter than white is cut off before the
// hole darkens it. A figure is blurred as a whole, for the distance of its
// middle. Blur is a box of the disc's second moment, twice over. What the pane
// around the hole would let through is dark, lens errors are not drawn, and a printed film is not: the clear patch of package cut
// is made so large that it does not cut the view.
package frame
