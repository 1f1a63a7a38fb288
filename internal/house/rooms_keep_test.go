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
	{name: "keep/store/cluster", floor: 10, needs: []arrow{
		{"github.com/jackc/pgx/v5", "makes databases for tests"},
	}},
	{name: "keep/job", floor: 9},
}
