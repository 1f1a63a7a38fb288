package plan

import (
	"reflect"
	"slices"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// How much a Live keeps: arenas under somebody's hand, and lens limits, of which
// one shape of hole needs some ten. Own choice: about a megabyte in all.
const (
	mostGround = 12
	mostLimits = 2000
)

// lossStep is how far apart the rows of a loss table stand.
const lossStep = 5 * unit.Degree

// ground is what follows from an arena without its holes.
type ground struct {
	arena                arena.Arena // holes left out
	permitted, undecided []rules.Interval
	lenses               []kit.Lens
	mapper               *sight.Mapper
	lit                  light.Lit
}

// holeless returns an arena without what a ground does not depend on.
func holeless(a arena.Arena) arena.Arena {
	a.Name, a.Place, a.Note = "", "", ""
	a.Holes, a.Windows = nil, nil
	return a
}

// groundOf returns the ground of an arena, from those kept when it was met.
func (l *Live) groundOf(a arena.Arena) (*ground, error) {
	key := holeless(a)
	l.mu.Lock()
	for i, g := range l.ground {
		if reflect.DeepEqual(g.arena, key) {
			l.ground = slices.Insert(slices.Delete(l.ground, i, i+1), 0, g)
			l.mu.Unlock()
			return g, nil
		}
	}
	l.mu.Unlock()
	g, err := l.lay(key)
	if err != nil {
		return nil, err
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	l.ground = slices.Insert(l.ground, 0, g)
	l.ground = l.ground[:min(len(l.ground), mostGround)]
	return g, nil
}

func (l *Live) lay(a arena.Arena) (*ground, error) {
	lenses, err := l.maker.Kit.InUse(a.Lenses)
	if err != nil {
		return nil, err
	}
	mapper, err := sight.NewMapper(a, l.maker.Kit)
	if err != nil {
		return nil, err
	}
	lit, err := light.Over(a, unit.Maybe[unit.Illuminance]{})
	if err != nil {
		return nil, err
	}
	g := &ground{arena: a, lenses: lenses, mapper: mapper, lit: lit}
	g.permitted, g.undecided = l.maker.Rules.On(a).Permitted()
	return g, nil
}

// limitsOf returns a lens's limits in an opening.
func (l *Live) limitsOf(c fit.Case) fit.Limits {
	return kept(l, l.limits, c, fit.Case.Limits)
}

// lossOf returns a lens's table of loss by pan in an opening.
func (l *Live) lossOf(c fit.Case) []fit.LossRow {
	return kept(l, l.losses, c, func(c fit.Case) []fit.LossRow { return c.Loss(lossStep).Pan })
}

// kept returns what was worked out for an opening before, or works it out.
func kept[T any](l *Live, in map[fit.Case]T, c fit.Case, work func(fit.Case) T) T {
	l.mu.Lock()
	known, ok := in[c]
	l.mu.Unlock()
	if ok {
		return known
	}
	found := work(c)
	l.mu.Lock()
	defer l.mu.Unlock()
	if len(in) >= mostLimits {
		clear(in) // rare: what is still in use comes back at once
	}
	in[c] = found
	return found
}

// wedges returns the outline of the ice that the picked lens sees at puck
// height, and that of all lenses together.
func (g *ground) wedges(h glass.Hole, picked LensFit) ([]Wedge, error) {
	asked := []Wedge{{}}
	if picked.Fits {
		asked = []Wedge{{Lens: picked.Lens.ID, Focal: picked.Focal}, {}}
	}
	for i := range asked {
		var err error
		if asked[i].Wedge, err = g.mapper.WedgeOf(h, sight.PuckHeight, asked[i].Lens, picked.Focal); err != nil {
			return nil, err
		}
	}
	return asked, nil
}
