package sight

import (
	"sync"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/survey/arena"
)

// aims is what one shape of hole leaves of each lens setting.
type aims struct {
	outline []*fit.Outline // by setting
}

// aim returns the aims in an opening, traced once for each shape.
func (s *Scorer) aim(o arena.Opening) (*aims, error) {
	shape := shapeOf(o)
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
			if c, failed[i] = fit.FromKit(o, l.lens, s.body, fit.Setting{Focal: l.focal, Stop: l.stop}); failed[i] == nil {
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
