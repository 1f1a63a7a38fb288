package sight

import (
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// WedgeOf returns the outline of the ice that one lens sees through a hole at a
// height above the ice, at one end of its range of focal lengths; with lens ""
// what any of the mapper's lenses sees. It is the wedge of [Mapper.Map] without
// the map, for a hole that is being dragged. A lens or focal length that the
// mapper does not know is an error.
func (m *Mapper) WedgeOf(h glass.Hole, height unit.Length, lens string, focal unit.Length) (Wedge, error) {
	mask := ^uint64(0)
	if lens != "" {
		mask = 0
		for k, e := range m.tracer.uses {
			if e.lens.ID == lens && e.Focal == focal {
				mask = 1 << k
			}
		}
		if mask == 0 {
			return Wedge{}, fmt.Errorf("no lens %q at %g mm is in use at this arena", lens, focal.Millimetres())
		}
	}
	o, err := m.arena.OpeningOf(h)
	if err != nil {
		return Wedge{}, err
	}
	s, err := m.sightOf(o)
	if err != nil {
		return Wedge{}, err
	}
	return s.wedge(height.Metres(), mask), nil
}
