package house

// keepRooms are the rooms that keep what happens, and those that say what a keeper promises.
var keepRooms = []room{
	{name: "keep/revision", floor: 9, needs: []arrow{
		{"github.com/rogpeppe/go-internal", "differences between texts, line by line"},
	}},
	{name: "keep/people", floor: 9, needs: []arrow{
		{"golang.org/x/crypto", "Argon2id"},
		{"golang.org/x/text", "one writing of each name (Unicode's normal forms)"},
	}},
	{name: "keep/store", floor: 10, uses: []arrow{
		{"decide/custody", "events of covers and holes to keep"},
		{"keep/revision", "documents and versions to keep"},
		{"keep/people", "people and sessions to keep"},
	}, needs: []arrow{
		{"modernc.org/sqlite", "the built-in store"},
		{"github.com/jackc/pgx/v5", "the shared store"},
		{"github.com/pressly/goose/v3", "migrations"},
	}},
	{name: "keep/queue", floor: 11, uses: []arrow{
		{"keep/store", "opens databases, brings tables up to date"},
		{"keep/revision", "a database that does not answer"},
	}, needs: []arrow{
		{"github.com/riverqueue/river", "who works which job, when, and when again"},
		{"github.com/jackc/pgx/v5", "its connections to the shared store"},
		{"github.com/minio/minio-go/v7", "large results in a bucket"},
	}},
	{name: "keep/work", floor: 12, uses: []arrow{
		{"keep/queue", "what a kind of jobs is"},
		{"decide/league", "arenas, seasons and games that are asked about"},
		{"draw/book", "sets an arena's book"},
		{"draw/cut", "the shop orders in it"},
		{"draw/sheet", "its paper"},
		{"measure/cores", "tells how far it is"},
	}},
	{name: "keep/store/cluster", floor: 10, needs: []arrow{
		{"github.com/jackc/pgx/v5", "makes databases for tests"},
	}},
	{name: "keep/job", floor: 9},

	// What a league asks of its arenas, which is worked as jobs.
	{name: "decide/league", floor: 7.3, uses: []arrow{
		{"decide/plan", "the arena with its kit and rules"},
		{"decide/choose", "the best legal set"},
		{"decide/cost", "what it costs"},
		{"decide/game", "a season's games document"},
		{"decide/seat", "who works which hole, game by game"},
		{"decide/recap", "the frames of a game"},
		{"answer/rules", "the rule sets, and what fails"},
		{"measure/cores", "tells how far it is"},
		{"measure/unit", "what has no answer"},
		{"survey/arena", "the document that is asked about"},
		{"survey/glass", "holes to cut and to give up"},
		{"survey/kit", "the kit that is asked with"},
		{"survey/play", "a rink too small for a game"},
	}},
	{name: "draw/league", floor: 9.3, uses: []arrow{
		{"decide/league", "the arenas beside one another"},
		{"answer/rules", "the verdict on a hole of the map"},
		{"survey/glass", "the cautions"},
		{"tell/words", "all that the book says"},
		{"draw/chart", "values and maps"},
		{"draw/sheet", "sets the pages, writes the PDF"},
	}},
}
