package house

// learnRooms are the rooms that learn from the frames of a game.
var learnRooms = []room{
	{name: "decide/resect", floor: 7, uses: []arrow{
		{"measure/form", "the nearest name to one that is unknown"},
		{"measure/unit", "lengths, angles, what is not known"},
		{"measure/geom", "places of landmarks, eyes"},
		{"survey/rink", "posts, lines, spots; stations along the boards"},
		{"survey/glass", "the hole that is meant"},
		{"survey/arena", "the rink with its panes and holes"},
		{"survey/edit", "the edit that takes the place over"},
		{"answer/frame", "how a camera at a hole sees"},
	}, needs: []arrow{
		{"gonum.org/v1/gonum", "normal equations, inverses, singular values"},
	}},
	{name: "decide/recap", floor: 7.1, uses: []arrow{
		{"measure/chance", "rates of keepers with their intervals"},
		{"measure/form", "files of readings, and where one is wrong"},
		{"measure/unit", "focal lengths, exposures, ratings that are not known"},
		{"survey/arena", "the holes, the light that was surveyed"},
		{"survey/edit", "the readings that are offered to the survey"},
		{"survey/glass", "holes that are scored"},
		{"survey/kit", "the lenses that a score is for"},
		{"survey/play", "shares and news weights of the moments"},
		{"measure/geom", "where subjects and zones are"},
		{"answer/fit", "what a hole lets through to a lens that is turned"},
		{"answer/light", "the ice's zones, what the survey says of them"},
		{"answer/optics", "light from exposures"},
		{"answer/sight", "what each hole sees of each kind of moment"},
		{"decide/game", "the game's stages and seats"},
		{"decide/seat", "seats that were solved, not written down"},
		{"decide/custody", "how long holes were open"},
	}},
	{name: "draw/lookback", floor: 9.3, uses: []arrow{
		{"decide/recap", "what the frames of a game said"},
		{"measure/unit", "the reader's units"},
		{"tell/words", "the same in tables"},
		{"draw/chart", "timeline and intervals"},
		{"draw/sheet", "sets the pages, writes the PDF"},
	}},
	{name: "keep/frames", floor: 9, uses: []arrow{
		{"decide/recap", "what a frame says"},
		{"measure/cores", "files shared over the cores, how far it is"},
		{"measure/unit", "exposures"},
	}, needs: []arrow{
		{"github.com/bep/imagemeta", "Exif and XMP in JPEG, HEIF and raw files"},
	}},
}
