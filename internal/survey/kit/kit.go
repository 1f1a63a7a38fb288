// Package kit is the photographer's bag: which bodies and lenses are there, and
// what of a lens matters at a hole?
//
// A lens is a nose, a disc that must enter the hole, and behind it the entrance
// pupil, the disc that the light must reach:
//
//	          pupil depth
//	        |<---------->|
//	     ___|            .          nose: outer diameter of the foremost part,
//	 hood   |            |          with hood nose-hood, standing hood-length
//	|       | front      | pupil    before the bare nose; front: clear diameter
//	|       | glass      | f/N      of the front glass; pupil: focal length
//	|_______|            |          over stop
//
// Behind both stands the camera: a body whose front lies the lens's length behind
// the bare nose, its middle on the axis.
//
// [Default] is the built-in kit of lenses by class, without brands; [Read] reads
// a user's own YAML file of the same form. Sizes are typical of their class and
// no maker's figures: callipers give better ones. Entrance pupils are taken as
// round and centred, and the nose as a plain disc.
package kit

import "example.org/rinkpane/internal/measure/unit"

// Kit is a checked set of bodies and lenses.
type Kit struct {
	Name   string // one line for people; "" when the file has none
	Bodies []Body
	Lenses []Lens
}

// Body is a camera body.
type Body struct {
	ID, Name string
	Sensor   unit.Size
	Front    unit.Maybe[unit.Size] // of the body seen from the front, held level; unknown: it is taken to meet no pane
	PixelsW  int
	PixelsH  int
	ISOMax   int // highest ISO that its user accepts
}

// Lens is a lens by class: "a 70-200 mm f/2.8 zoom".
type Lens struct {
	ID, Name   string
	FocalMin   unit.Length
	FocalMax   unit.Length             // same as FocalMin for a lens of one focal length
	Stop       unit.Stop               // widest opening at FocalMin
	StopLong   unit.Stop               // widest opening at FocalMax
	Nose       unit.Length             // outer diameter of the foremost part without hood
	NoseHood   unit.Length             // with hood; 0: the lens has none
	HoodLength unit.Length             // how far the hood stands before the bare nose
	Front      unit.Maybe[unit.Length] // clear diameter of the front glass; 0.9 x nose when unknown
	PupilDepth unit.Maybe[unit.Length] // entrance pupil behind the bare nose; a consistent default when unknown
	Length     unit.Maybe[unit.Length] // from the bare nose to the mount, at its shortest; unknown as [Body.Front]
	MinFocus   unit.Length
	Body       string // id of the body that it cannot be taken off, as of a phone; "": it is changed
}
