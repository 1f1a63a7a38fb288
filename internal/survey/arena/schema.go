package arena

import (
	"bytes"
	_ "embed" // the schema is part of the program
	"strings"

	"example.org/rinkpane/internal/survey/glass"
)

//go:embed schema.json
var schema []byte

// Schema returns the JSON Schema (draft 2020-12) of the arena file, as text.
// The materials in it are those of the table in package glass.
func Schema() []byte {
	names := strings.Join(glass.Names(nil), `", "`)
	out := bytes.Replace(schema, []byte("MATERIALS"), []byte(names), 1)
	return bytes.Replace(out, []byte("NEVER-CUT"), []byte("Note: "+glass.OrderedMade()+"."), 1)
}
