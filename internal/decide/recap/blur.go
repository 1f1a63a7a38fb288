package recap

import "example.org/rinkpane/internal/survey/play"

// What blur is told for (own choice, no published source).
const (
	crossing    = 5.0       // m/s: skating at a game's pace
	fill        = 0.5       // share of the picture's height that a player takes
	visibleBlur = 1.0 / 500 // of the picture's height: seen on a screen
)

// blur returns how far a skater who crosses the view smears over the picture's pixels, of
// whom the photographer filled half its height: speed x shutter x pixels on a metre. The
// focal length does not matter then: a player twice as far is taken twice as long.
func (f Frame) blur() (px float64, seen, ok bool) {
	t, told := f.Shutter.Get()
	height := f.Shown()[1]
	if !told || height <= 0 {
		return 0, false, false
	}
	a := play.DefaultAssumptions()
	px = crossing * t.Seconds() * fill * float64(height) / (a.Stature.Mean + a.Equipment)
	return px, px > visibleBlur*float64(height), true
}
