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
		{"answer/frame", "how a camera at a hole sees"},
	}, needs: []arrow{
		{"gonum.org/v1/gonum", "normal equations, inverses, singular values"},
	}},
}
