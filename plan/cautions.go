package plan

import "example.org/rinkpane/glass"

// Cautions returns what stands on every drawing and page about a hole.
func Cautions() []string { return glass.Cautions() }
