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
	Name, Place string // "": to be filled in
	Rink        rink.Rink
	Standard    string      // the standard's name; "" for own dimensions
	Markings    string      // how own markings were filled in, a line for the file; ""
	Pane        unit.Length // nominal width, [UsualPane] when nobody told
	Wish        Wish        // what a sentence says of the panes
	List        []Listed    // the panes themselves, from a list; none: laid by width
	Benches     Benches
	Units       unit.System
}

// Benches says where the players' benches stand.
type Benches string

// Where benches stand; "" is one side.
const (
	OneSide  Benches = "one side" // both on the bench side, as the rule books have them
	Opposite Benches = "opposite" // the home team's on the bench side, the guests' on the box side
)

// Begin returns the text of a commented arena file with a whole schedule of
// panes, doors, zones and a few planned holes, and the arena that it
// reads as. Errors: a nominal width out of range, a rink too small for panes.
func Begin(p Layout) ([]byte, arena.Arena, error) {
	if p.Wish.Width > 0 {
		p.Pane = p.Wish.Width
	}
	if p.Benches != "" && p.Benches != OneSide && p.Benches != Opposite {
		return nil, arena.Arena{}, fmt.Errorf("benches %q: write %q or %s", string(p.Benches), string(OneSide), Opposite)
	}
	if !(p.Pane >= LeastNominal && p.Pane <= MostNominal) {
		return nil, arena.Arena{}, fmt.Errorf("a pane %s wide; write a width from %s to %s", p.Pane.Format(p.Units), LeastNominal.Format(p.Units), MostNominal.Format(p.Units))
	}
	h, g := habitsOf(p.Units), grid{p.Units}
	zones, err := p.zones(h)
	if err != nil {
		return nil, arena.Arena{}, err
	}
	w := &writer{plan: p, habits: h, grid: g, zones: zones}
	if len(p.List) > 0 {
		w.panes, err = listed(p.List, g, p.Rink.Perimeter(), p.Units)
	} else {
		w.panes = schedule(p.Rink, g, h, stretches(p.Rink, h, zones), p.width)
	}
	if err != nil {
		return nil, arena.Arena{}, err
	}
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

// width is the nominal width of a stretch's panes.
func (p Layout) width(s stretch) unit.Length { return p.Wish.nominal(s, p.Pane) }

// UsualPane is the nominal width of most panes, 4 ft or 1.2 m.
func UsualPane(sys unit.System) unit.Length {
	if sys == unit.Imperial {
		return 4 * unit.Foot
	}
	return 1200 * unit.Millimetre
}
