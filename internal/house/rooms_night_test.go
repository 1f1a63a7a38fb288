package house

// nightRooms are the rooms of game night.
var nightRooms = []room{
	{name: "decide/seat", floor: 6.95, uses: []arrow{
		{"decide/solve", "the search of what prices leave open"},
		{"measure/cores", "nights shared over the cores, how far a season is"},
		{"measure/form", "the nearest name to one that is unknown"},
		{"measure/unit", "how far a hole has moved"},
	}},
	{name: "decide/game", floor: 7.06, uses: []arrow{
		{"answer/sight", "the scores that worth is made of"},
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
}
