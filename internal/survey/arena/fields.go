package arena

import "example.org/rinkpane/internal/survey/rink"

// Kind is the format marker of an arena file: its first line reads
// "rinkpane: arena 1".
const Kind = "arena 1"

// The fields of each group of an arena file, in the order a starter writes
// them. The reader accepts no others; a test holds the JSON Schema to them.
var (
	arenaFields = []string{"rinkpane", "name", "place", "note", "units", "source", "rink", "boards", "glass",
		"panes", "holes", "low-windows", "zones", "light", "game", "dispensations", "lenses", "kit", "rules"}
	rinkFields         = []string{"standard", "length", "width", "corner-radius", "markings", "source"}
	markingsFields     = fieldsOfMarkings()
	boardsFields       = []string{"height", "ledge", "setback", "floor", "source"}
	glassFields        = []string{"height", "thickness", "material", "haze", "source"}
	paneFields         = []string{"id", "from", "width", "count", "height", "thickness", "material", "haze", "curved", "gate", "source"}
	holeFields         = []string{"id", "place", "station", "height", "size", "corner-radius", "rounding", "cover", "state", "note", "source"}
	placeFields        = []string{"corner", "landmark", "offset"}
	coverFields        = []string{"material", "tether"}
	windowFields       = []string{"id", "place", "station", "height", "size", "kind", "material", "thickness", "nearest", "printed", "corner-radius", "rounding", "cover", "note", "source"}
	zoneFields         = []string{"id", "kind", "from", "to", "note", "source"}
	lightFields        = []string{"mains", "readings", "upright-share", "colour", "source"}
	readingFields      = []string{"x", "y", "height", "light", "facing", "colour", "source"}
	gameFields         = []string{"officials", "referees", "linesmen", "benches", "home-defends", "cross-ice"}
	dispensationFields = []string{"rule", "holes", "by", "reference", "date", "until"}
)

func fieldsOfMarkings() []string {
	out := []string{"blue-line-to"}
	for _, m := range new(rink.Markings).All() {
		out = append(out, m.Field)
	}
	return out
}
