package house

// nightRooms are the rooms of game night.
var nightRooms = []room{
	{name: "decide/seat", floor: 6.95, uses: []arrow{
		{"decide/solve", "the search of what prices leave open"},
		{"measure/cores", "nights shared over the cores, how far a season is"},
		{"measure/form", "the nearest name to one that is unknown"},
		{"measure/unit", "how far a hole has moved; a share that nobody has yet"},
	}},
	{name: "decide/game", floor: 7.06, uses: []arrow{
		{"answer/sight", "the scores that worth is made of"},
		{"answer/rules", "which holes are refused"},
		{"decide/choose", "at what heights somebody works, what counts as seen"},
		{"decide/seat", "the seating problem that a game is"},
		{"measure/form", "reads the document strictly"},
		{"measure/say", "what speaks for a hole, in no units yet"},
		{"measure/unit", "room for elbows"},
		{"survey/arena", "the rink and its holes"},
		{"survey/glass", "holes that are cut"},
		{"survey/kit", "the lenses that people bring"},
		{"survey/play", "ends, phases and moments"},
	}, needs: []arrow{
		{"github.com/arran4/golang-ical", "the lines of calendars"},
		{"github.com/teambition/rrule-go", "events that repeat"},
	}},
	{name: "draw/card", floor: 8.6, uses: []arrow{
		{"answer/fit", "how far a lens turns in the hole"},
		{"answer/light", "what to set, by zone of the ice"},
		{"answer/optics", "the exposure asked for"},
		{"answer/puck", "what is to be kept clear behind the hole"},
		{"decide/game", "who asks for what, toward which ends is played"},
		{"decide/seat", "the seats that were given"},
		{"draw/chart", "the small map"},
		{"draw/sheet", "sets the pages, writes the PDF"},
		{"measure/geom", "where a hole stands on the map"},
		{"measure/say", "what speaks for a hole, names in a row"},
		{"measure/unit", "lengths in the reader's units"},
		{"survey/arena", "the rink of the card"},
		{"survey/kit", "the lens that is mounted"},
		{"tell/table", "the exposure and the seats as tables"},
		{"tell/words", "columns of light, how far a sector reaches"},
	}, needs: []arrow{
		{"github.com/arran4/golang-ical", "writes calendars"},
	}},
}
