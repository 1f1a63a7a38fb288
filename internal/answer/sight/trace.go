package sight

import (
	"sync"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// lensUse is a lens set to a focal length and a stop.
type lensUse struct {
	lens kit.Lens
	body kit.Body // that stands behind it: its own, or the kit's first
	fit.Setting
}

// tracer traces the limits of lenses in openings, once for each shape of opening.
// It may be used by many goroutines.
type tracer struct {
	uses   []lensUse
	wholes int // for how many shapes the whole frame's limit is traced too

	mu     sync.Mutex
	shapes map[openingShape]*traces
}

// openingShape is all of an opening that the fit of a lens depends on.
type openingShape struct {
	size          unit.Size
	corner, thick unit.Length
}

// traces is the traced limit of each use of a lens in one shape of opening.
type traces struct {
	outlines []*fit.Outline // half of the light at the frame's centre
	wholes   []*fit.Outline // at its centre and corners; none unless the tracer was asked
	fits     []bool
}

// trace returns the traced limits in an opening, from the store when its shape
// was met before.
func (t *tracer) trace(o arena.Opening) (*traces, error) {
	shape := openingShape{o.Hole.Size, o.Corner.Value, o.Thick.Value}
	t.mu.Lock()
	found, ok := t.shapes[shape]
	whole := len(t.shapes) < t.wholes
	t.mu.Unlock()
	if ok {
		return found, nil
	}
	made := &traces{outlines: make([]*fit.Outline, len(t.uses)), fits: make([]bool, len(t.uses))}
	if whole {
		made.wholes = make([]*fit.Outline, len(t.uses))
	}
	err := cores.Try(len(t.uses), func(k int) error {
		c, err := fit.FromKit(o, t.uses[k].lens, t.uses[k].body, t.uses[k].Setting)
		if err == nil {
			made.outlines[k], made.fits[k] = c.Trace(), c.Fits()
			if whole {
				made.wholes[k] = c.TraceWhole()
			}
		}
		return err
	})
	if err != nil {
		return nil, err
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.shapes == nil {
		t.shapes = map[openingShape]*traces{}
	}
	t.shapes[shape] = made
	return made, nil
}
