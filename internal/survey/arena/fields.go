package arena

import "example.org/rinkpane/internal/survey/rink"

// Kind is the format marker of an arena file: its first line reads
// "rinkpane: arena 1".
const Kind = "arena 1"

// The fields of each group of an arena file, in the order a starter writes
// them. The reader accepts no others; a test holds the JSON Schema to them.
var (
	arenaFields = []string{"rinkpane", "name", "place", "note", "units", "rink", "boards", "glass",
		"panes", "holes", "low-windows", "zones", "light", "dispensations", "lenses", "kit", "rules"}
	rinkFields         = []string{"standard", "length", "width", "corner-radius", "markings"}
	markingsFields     = fieldsOfMarkings()
	boardsFields       = []string{"height", "ledge", "setback"}
	glassFields        = []string{"height", "thickness", "material"}
	paneFields         = []string{"id", "from", "width", "count", "height", "thickness", "material", "curved", "gate"}
	holeFields         = []string{"id", "place", "station", "height", "size", "corner-radius", "rounding", "cover", "state", "note"}
	placeFields        = []string{"corner", "landmark", "offset"}
	coverFields        = []string{"material", "tether"}
	windowFields       = []string{"id", "place", "station", "height", "size", "kind", "material", "thickness", "nearest", "printed", "corner-radius", "rounding", "cover", "note"}
	zoneFields         = []string{"id", "kind", "from", "to", "note"}
	lightFields        = []string{"mains", "readings", "upright-share"}
	readingFields      = []string{"x", "y", "height", "light", "facing"}
	dispensationFields = []string{"rule", "holes", "by", "reference", "date"}
)

func fieldsOfMarkings() []string {
	out := []string{"blue-line-to"}
	for _, m := range new(rink.Markings).All() {
		out = append(out, m.Field)
	}
	return out
}
