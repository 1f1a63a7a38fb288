package plan

import "example.org/rinkpane/internal/survey/glass"

// Cautions returns what stands on every drawing and page about a hole.
func Cautions() []string { return glass.Cautions() }
