package recap

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
)

// Smear is how far a subject smears while the shutter is open and the camera is held
// still, over the moments that a frame may show.
type Smear struct {
	Mean float64 // a share of the picture's height
	Risk float64 // that it is seen on a screen, 0 to 1
}

// crossing is how fast a skater crosses the view where the hole is not known, m/s.
const crossing = 5.0

// blur returns a frame's smear by the moments that its hole has; of one whose hole is not
// known that of a skater at a game's pace, straight across, who fills half the picture's
// height: then the focal length does not matter, for a player twice as far is taken twice
// as long.
func (m Matched) blur() (Smear, bool) {
	t, told := m.Shutter.Get()
	if s, known := m.Smear.Get(); known || !told {
		return s, known
	}
	a := play.DefaultAssumptions()
	s := Smear{Mean: crossing * t.Seconds() * fill / (a.Stature.Mean + a.Equipment)}
	if s.Mean > visibleBlur {
		s.Risk = 1
	}
	return s, true
}

// sensorHeight is the sensor's side up the picture as it is to be turned: by the two focal
// lengths that the frame tells, else that of full frame.
func (f Frame) sensorHeight() unit.Length {
	p := f.Shown()
	across, told := f.Across()
	switch {
	case told && p[0] > 0 && p[1] > 0:
		return across * unit.Length(p[1]) / unit.Length(p[0])
	case p[1] > p[0]:
		return fullFrame
	}
	return fullFrame * 2 / 3
}
