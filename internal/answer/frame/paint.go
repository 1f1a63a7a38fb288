package frame

import (
	"image/color"

	"example.org/rinkpane/internal/survey/play"
)

// The picture's paints: own choice, plain and without badges.
var (
	darkPaint    = color.NRGBA{14, 17, 22, 255} // where nothing is drawn
	roofPaint    = color.NRGBA{20, 24, 30, 255}
	wallPaint    = color.NRGBA{30, 35, 43, 255}
	trussPaint   = color.NRGBA{33, 38, 46, 255}
	seatPaints   = [2]color.NRGBA{{38, 43, 54, 255}, {46, 52, 64, 255}}
	aislePaint   = color.NRGBA{60, 66, 78, 255}
	icePaint     = color.NRGBA{216, 224, 232, 255}
	shadePaint   = color.NRGBA{150, 166, 182, 110}
	boardPaint   = color.NRGBA{226, 227, 224, 255}
	kickPaint    = color.NRGBA{214, 178, 58, 255}
	railPaint    = color.NRGBA{92, 104, 122, 255}
	glassPaint   = color.NRGBA{28, 34, 38, 40}
	postPaint    = color.NRGBA{96, 104, 116, 255}
	redPaint     = color.NRGBA{190, 44, 52, 255}
	bluePaint    = color.NRGBA{38, 84, 168, 255}
	creasePaint  = color.NRGBA{164, 204, 232, 255}
	scuffPaint   = color.NRGBA{24, 26, 30, 90}    // of pucks on glass
	scratchPaint = color.NRGBA{206, 212, 218, 46} // of sticks and blades on it
	sheenPaint   = color.NRGBA{214, 222, 230, 16} // the lit ice, mirrored in it
	netPaint     = color.NRGBA{200, 204, 208, 200}
	puckPaint    = color.NRGBA{16, 16, 18, 255}
	bladePaint   = color.NRGBA{186, 194, 202, 255}
	stickPaint   = color.NRGBA{58, 48, 40, 255}
	padPaint     = color.NRGBA{226, 220, 206, 255}
	skinPaint    = color.NRGBA{196, 152, 122, 255}
	eyePaint     = color.NRGBA{44, 36, 34, 255}
	lipPaint     = color.NRGBA{150, 88, 78, 255}
	strapPaint   = color.NRGBA{40, 40, 44, 255}   // of a helmet
	stripePaint  = color.NRGBA{34, 35, 40, 255}   // of an official
	visorPaint   = color.NRGBA{176, 196, 208, 96} // clear plastic under lamps

	// crowdPaints are coats in the stands, dimmed for the game.
	crowdPaints = [6]color.NRGBA{{78, 62, 66, 255}, {52, 66, 82, 255}, {96, 92, 84, 255}, {44, 58, 54, 255}, {92, 72, 52, 255}, {64, 60, 84, 255}}
	// panelPaints are boards' panels, plain and without words.
	panelPaints = [5]color.NRGBA{{30, 70, 96, 255}, {150, 62, 50, 255}, {208, 172, 74, 255}, {52, 56, 64, 255}, {62, 110, 92, 255}}
	facePaint   = color.NRGBA{112, 88, 74, 255} // in the stands
)

// livery is what a person wears.
type livery struct {
	jersey, sleeve, pants, sock, helmet, glove, skate, number color.NRGBA
	band                                                      color.NRGBA // around the socks
	striped                                                   bool        // an official's jersey
}

var (
	dark = color.NRGBA{30, 32, 38, 255}

	// home wears deep green with sand, away pale grey with plum: far apart in
	// lightness, so that they differ without colour too.
	home = livery{
		jersey: color.NRGBA{18, 92, 84, 255}, sleeve: color.NRGBA{14, 76, 70, 255}, pants: color.NRGBA{24, 40, 44, 255},
		sock: color.NRGBA{18, 92, 84, 255}, helmet: color.NRGBA{20, 44, 46, 255}, glove: color.NRGBA{206, 180, 130, 255},
		skate: dark, number: color.NRGBA{232, 214, 170, 255}, band: color.NRGBA{232, 214, 170, 255},
	}
	away = livery{
		jersey: color.NRGBA{226, 222, 228, 255}, sleeve: color.NRGBA{204, 198, 208, 255}, pants: color.NRGBA{84, 42, 84, 255},
		sock: color.NRGBA{214, 208, 218, 255}, helmet: color.NRGBA{96, 52, 96, 255}, glove: color.NRGBA{84, 42, 84, 255},
		skate: dark, number: color.NRGBA{84, 30, 84, 255}, band: color.NRGBA{84, 42, 84, 255},
	}
	official = livery{
		jersey: color.NRGBA{224, 224, 224, 255}, sleeve: color.NRGBA{224, 224, 224, 255}, pants: color.NRGBA{26, 28, 32, 255},
		sock: color.NRGBA{26, 28, 32, 255}, helmet: color.NRGBA{34, 36, 40, 255}, glove: color.NRGBA{60, 62, 66, 255},
		skate: dark, number: color.NRGBA{170, 40, 44, 255}, band: color.NRGBA{26, 28, 32, 255}, striped: true,
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
