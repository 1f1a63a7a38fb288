package starter

import (
	"bytes"
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
)

// The nominal widths of panes that a starter takes.
const (
	LeastNominal = 300 * unit.Millimetre
	MostNominal  = 6 * unit.Metre
)

// Layout is what a starter is made from.
type Layout struct {
	Rink     rink.Rink
	Standard string      // the standard's name; "" for own dimensions
	Pane     unit.Length // nominal width, [UsualPane] when nobody told
	Units    unit.System
}

// Begin returns the text of a commented arena file with a whole schedule of
// panes, doors, zones and a few planned holes, and the arena that it
// reads as. Errors: a nominal width out of range, a rink too small for panes.
func Begin(p Layout) ([]byte, arena.Arena, error) {
	if !(p.Pane >= LeastNominal && p.Pane <= MostNominal) {
		return nil, arena.Arena{}, fmt.Errorf("a pane %s wide; write a width from %s to %s", p.Pane.Format(p.Units), LeastNominal.Format(p.Units), MostNominal.Format(p.Units))
	}
	h, g := habitsOf(p.Units), grid{p.Units}
	zones := spans(p.Rink, h)
	w := &writer{plan: p, habits: h, grid: g, zones: zones}
	w.panes = schedule(p.Rink, g, h, stretches(p.Rink, h, zones), p.Pane)
	w.holes = proposals(p.Rink, g, w.panes, zones)
	w.all()
	text := w.b.Bytes()
	d, err := arena.Read("the starter", bytes.NewReader(text))
	if err != nil {
		return nil, arena.Arena{}, fmt.Errorf("no starter for this rink: %w", err)
	}
	a, err := d.Check()
	if err != nil {
		return nil, arena.Arena{}, fmt.Errorf("no starter for this rink: %w", err)
	}
	return text, a, nil
}

// UsualPane is the nominal width of most panes, 4 ft or 1.2 m.
func UsualPane(sys unit.System) unit.Length {
	if sys == unit.Imperial {
		return 4 * unit.Foot
	}
	return 1200 * unit.Millimetre
}
