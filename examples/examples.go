// Package examples holds the invented arenas that the program carries. They
// show the file format; each teaches another part of it.
package examples

import "embed"

// Files holds the example arenas.
//
//go:embed *.yaml
var Files embed.FS

// Demo is the name of the arena that stands in where the user names none.
const Demo = "quillhaven.yaml"

// Games holds the example games documents, in the folder games; the arenas that they name
// stand beside it.
//
//go:embed games/*.yaml
var Games embed.FS
