package fit

import (
	"errors"
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// clearFront is the clear diameter of the front glass over the nose's
// diameter when nobody measured it (contract, fine print of fit).
const clearFront = 0.9

// maxStop is the narrowest stop that counts as one: no lens goes that far.
const maxStop = 1000

// Setup is a lens in a hole as people state it. [Setup.Case] checks it.
type Setup struct {
	Hole       unit.Size
	Corner     unit.Length // corner radius of the hole
	Thick      unit.Length // of the pane
	Nose       unit.Length // outer diameter, hood included when it is on
	Focal      unit.Length
	Stop       unit.Stop
	Sensor     unit.Size               // landscape
	Portrait   bool                    // the camera is held upright
	Pupil      unit.Maybe[unit.Length] // entrance pupil's diameter; f/N when unknown
	Front      unit.Maybe[unit.Length] // clear diameter of the front glass; 0.9 x nose when unknown
	PupilDepth unit.Maybe[unit.Length] // behind the nose; see [PupilDepth] when unknown
	Back       unit.Maybe[unit.Length] // foremost point behind the rear face; depth free when unknown
	Pivot      Pivot
	Length     unit.Maybe[unit.Length] // of the lens, from the nose to the body's front
	Body       unit.Maybe[unit.Size]   // of the body's front, landscape; with Length: where the camera meets the pane
}

// PupilDepth returns the depth of the entrance pupil at which a front glass of
// clear diameter front just passes the field to the frame's corners:
// (front - pupil) / (2 tan a), a half the diagonal view; 0 when that is negative.
// Lengths in metres, tanDiagonal above 0. Own derivation.
func PupilDepth(front, pupil, tanDiagonal float64) float64 {
	return max(0, (front-pupil)/(2*tanDiagonal))
}

// Case checks the setup and returns it in plain numbers.
func (s Setup) Case() (Case, error) {
	focal := s.Focal.Metres()
	if !(focal > 0 && focal <= maxLength) {
		return Case{}, fmt.Errorf("focal length %g mm: must be above 0", focal*1e3)
	}
	if _, known := s.Pupil.Get(); !known && !(s.Stop > 0 && s.Stop <= maxStop) {
		return Case{}, fmt.Errorf("stop f/%g: must be above 0 and at most f/%d; or state the pupil's diameter", float64(s.Stop), maxStop)
	}
	if !(s.Sensor.W > 0 && s.Sensor.H > 0) {
		return Case{}, errors.New("sensor: width and height must be above 0")
	}
	c := Case{
		Width: s.Hole.W.Metres(), Height: s.Hole.H.Metres(), Corner: s.Corner.Metres(), Thick: s.Thick.Metres(),
		Nose:  s.Nose.Metres(),
		Pupil: s.Pupil.Or(unit.Length(focal / float64(s.Stop))).Metres(),
		TanX:  s.Sensor.W.Metres() / (2 * focal),
		TanY:  s.Sensor.H.Metres() / (2 * focal),
		Pivot: s.Pivot,
	}
	front := s.Front.Or(clearFront * s.Nose).Metres()
	c.PupilDepth = s.PupilDepth.Or(unit.Length(PupilDepth(front, c.Pupil, math.Hypot(c.TanX, c.TanY)))).Metres()
	long, measured := s.Length.Get()
	if body, known := s.Body.Get(); known && measured {
		c.Camera = unit.Known(Camera{long.Metres(), body.W.Metres(), body.H.Metres()})
	}
	if s.Portrait {
		c = c.turned()
	}
	if b, ok := s.Back.Get(); ok {
		c.Back = unit.Known(b.Metres())
	}
	if err := c.Validate(); err != nil {
		return Case{}, err
	}
	return c, nil
}

// Setting is how a lens of the kit is used.
type Setting struct {
	Focal    unit.Length
	Stop     unit.Stop
	Hood     bool // the hood is on
	Portrait bool
}

// Use sets a lens of the kit: at the long end of its range and wide open unless
// said. What the lens cannot do is an error that begins with the setting's name.
func Use(l kit.Lens, focal unit.Maybe[unit.Length], stop unit.Maybe[unit.Stop], hood, portrait bool) (Setting, error) {
	s := Setting{Focal: focal.Or(l.FocalMax), Hood: hood, Portrait: portrait}
	widest := l.WidestAt(s.Focal)
	s.Stop = stop.Or(widest)
	mm := func(f unit.Length) string { return f.Format(unit.Metric) }
	switch {
	case s.Focal < l.FocalMin || s.Focal > l.FocalMax:
		return s, fmt.Errorf("focal %s: lens %s goes from %s to %s", mm(s.Focal), l.ID, mm(l.FocalMin), mm(l.FocalMax))
	case float64(s.Stop) < float64(widest)*sameStop:
		return s, fmt.Errorf("stop f/%.3g: lens %s opens to f/%.3g at %s", float64(s.Stop), l.ID, float64(widest), mm(s.Focal))
	case hood && l.NoseHood == 0:
		return s, fmt.Errorf("hood: lens %s has no hood that comes off; leave it out", l.ID)
	}
	return s, nil
}

// sameStop is the share of a stop that is still written as the same: two figures,
// so that f/2.8 may stand for 2.83.
const sameStop = 0.97

// Ends returns how a lens is used wide open: at the short end of its range and at
// the long end, or once when it has one focal length.
func Ends(l kit.Lens) []Setting {
	short := Setting{Focal: l.FocalMin, Stop: l.Stop}
	if l.FocalMax == l.FocalMin {
		return []Setting{short}
	}
	return []Setting{short, {Focal: l.FocalMax, Stop: l.StopLong}}
}

// FromKit returns the case of a kit lens on a body in an opening. With the hood
// on, the nose is the hood's and the pupil lies the hood's length deeper. It
// rests on the opening's [Facts].
func FromKit(o arena.Opening, lens kit.Lens, body kit.Body, use Setting) (Case, error) {
	s := Setup{
		Hole: o.Hole.Size, Corner: o.Corner.Value, Thick: o.Thick.Value,
		Nose: lens.Nose, Focal: use.Focal, Stop: use.Stop, Sensor: body.Sensor, Portrait: use.Portrait,
		Front: lens.Front, PupilDepth: lens.PupilDepth, Length: lens.Length, Body: body.Front,
	}
	c, err := s.Case()
	if err == nil && use.Hood && lens.NoseHood > 0 {
		c.Nose = lens.NoseHood.Metres()
		c.PupilDepth += lens.HoodLength.Metres()
		if k, known := c.Camera.Get(); known {
			k.Length += lens.HoodLength.Metres()
			c.Camera = unit.Known(k)
		}
		err = c.Validate()
	}
	if err != nil {
		return Case{}, fmt.Errorf("lens %s in hole %s: %w", lens.ID, o.Hole.ID, err)
	}
	return c, nil
}

// Facts are the lengths of an opening that a case rests on.
func Facts(o arena.Opening) []arena.Fact { return []arena.Fact{o.Thick, o.Corner} }
