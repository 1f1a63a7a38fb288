package arena

import (
	"bytes"
	_ "embed" // the schema is part of the program
)

//go:embed schema.json
var schema []byte

// Schema returns the JSON Schema (draft 2020-12) of the arena file, as text.
func Schema() []byte { return bytes.Clone(schema) }
