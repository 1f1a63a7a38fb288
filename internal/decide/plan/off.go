package plan

import "example.org/rinkpane/internal/survey/glass"

// IsOff reports whether the arena has a hole of this id that is turned off.
func (p Plan) IsOff(id string) bool {
	h, ok := p.arena.Hole(id)
	return ok && h.State == glass.Off
}
