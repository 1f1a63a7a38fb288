package frame

import (
	"image/color"

	"example.org/rinkpane/internal/survey/play"
)

// The picture's paints: own choice, plain and without badges.
var (
	darkPaint   = color.RGBA{14, 17, 22, 255} // where nothing is drawn
	roofPaint   = color.RGBA{20, 24, 30, 255}
	wallPaint   = color.RGBA{30, 35, 43, 255}
	trussPaint  = color.RGBA{33, 38, 46, 255}
	lampPaint   = color.RGBA{238, 240, 232, 255}
	seatPaints  = [2]color.RGBA{{38, 43, 54, 255}, {46, 52, 64, 255}}
	aislePaint  = color.RGBA{60, 66, 78, 255}
	icePaint    = color.RGBA{228, 236, 243, 255}
	shadePaint  = color.RGBA{150, 166, 182, 110}
	boardPaint  = color.RGBA{240, 241, 238, 255}
	kickPaint   = color.RGBA{214, 178, 58, 255}
	railPaint   = color.RGBA{92, 104, 122, 255}
	glassPaint  = color.RGBA{28, 34, 38, 40}
	postPaint   = color.RGBA{96, 104, 116, 255}
	redPaint    = color.RGBA{190, 44, 52, 255}
	bluePaint   = color.RGBA{38, 84, 168, 255}
	creasePaint = color.RGBA{164, 204, 232, 255}
	netPaint    = color.RGBA{200, 204, 208, 200}
	puckPaint   = color.RGBA{16, 16, 18, 255}
	bladePaint  = color.RGBA{186, 194, 202, 255}
	stickPaint  = color.RGBA{58, 48, 40, 255}
	padPaint    = color.RGBA{226, 220, 206, 255}
	skinPaint   = color.RGBA{196, 152, 122, 255}
)

// livery is what a person wears.
type livery struct{ jersey, sleeve, pants, sock, helmet, glove, skate, number color.RGBA }

var (
	dark = color.RGBA{30, 32, 38, 255}

	// home wears deep green with sand, away pale grey with plum: far apart in
	// lightness, so that they differ without colour too.
	home = livery{
		jersey: color.RGBA{18, 92, 84, 255}, sleeve: color.RGBA{14, 76, 70, 255}, pants: color.RGBA{24, 40, 44, 255},
		sock: color.RGBA{18, 92, 84, 255}, helmet: color.RGBA{20, 44, 46, 255}, glove: color.RGBA{206, 180, 130, 255},
		skate: dark, number: color.RGBA{232, 214, 170, 255},
	}
	away = livery{
		jersey: color.RGBA{226, 222, 228, 255}, sleeve: color.RGBA{204, 198, 208, 255}, pants: color.RGBA{84, 42, 84, 255},
		sock: color.RGBA{214, 208, 218, 255}, helmet: color.RGBA{96, 52, 96, 255}, glove: color.RGBA{84, 42, 84, 255},
		skate: dark, number: color.RGBA{84, 30, 84, 255},
	}
	official = livery{
		jersey: color.RGBA{70, 72, 78, 255}, sleeve: color.RGBA{224, 224, 224, 255}, pants: color.RGBA{26, 28, 32, 255},
		sock: color.RGBA{26, 28, 32, 255}, helmet: color.RGBA{34, 36, 40, 255}, glove: color.RGBA{60, 62, 66, 255},
		skate: dark, number: color.RGBA{240, 240, 240, 255},
	}
)

// wears returns the livery of the person at place i of a moment.
func wears(m play.Moment, i int) livery {
	attacking := i < play.Defenders || i == play.AttackerGoalie
	switch {
	case i >= play.Officials:
		return official
	case attacking == (m.Team == 0):
		return home
	}
	return away
}

// shirt returns the number on the back of the person at place i: invented, the
// same for every moment.
func shirt(m play.Moment, i int) int {
	numbers := [play.People]int{17, 24, 61, 5, 28, 9, 72, 38, 4, 44, 30, 35, 11, 22, 53, 67}
	return (numbers[i]+6*m.Team-1)%98 + 1
}
