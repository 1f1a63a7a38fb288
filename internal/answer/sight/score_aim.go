package sight

import (
	"fmt"
	"sync"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/survey/glass"
)

// aims is what one shape of hole leaves of each lens setting.
type aims struct {
	outline []*fit.Outline // by setting
}

// aim returns the aims of a hole, traced once for each shape.
func (s *Scorer) aim(h glass.Hole) (*aims, error) {
	pane, ok := s.arena.Pane(h.Pane)
	if !ok {
		if pane, ok = s.arena.PaneAt(h.Station); !ok {
			return nil, fmt.Errorf("hole %s lies in no pane of the arena", h.ID)
		}
	}
	shape := openingShape{h.Size, h.Corner.Or(0), pane.Thickness.Or(usualThick)}
	s.mu.Lock()
	defer s.mu.Unlock()
	if a, ok := s.shapes[shape]; ok {
		return a, nil
	}
	a := &aims{outline: make([]*fit.Outline, len(s.settings))}
	failed := make([]error, len(s.settings))
	var wg sync.WaitGroup
	for i, l := range s.settings {
		wg.Go(func() {
			var c fit.Case
			if c, failed[i] = fit.FromKit(h, shape.thick, l.lens, s.body, fit.Setting{Focal: l.focal, Stop: l.stop}); failed[i] == nil {
				a.outline[i] = c.Trace()
			}
		})
	}
	wg.Wait()
	for _, err := range failed {
		if err != nil {
			return nil, err
		}
	}
	s.shapes[shape] = a
	return a, nil
}
