package arena

import (
	"fmt"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Opening is what a lens, a hand or a puck meets: a hole in a pane, or a low
// window in the boards. Every room asks here what an opening is, so that all
// take the same lengths where the survey has gaps.
type Opening struct {
	Hole   glass.Hole               // of a low window: its id, place and size
	Pane   unit.Maybe[glass.Pane]   // unknown: a low window
	Window unit.Maybe[glass.Window] // unknown: a hole
	// Thick is the depth of the way through: of the pane, of a window's panel, or
	// of the boards around an open window.
	Thick    Fact
	Corner   Fact // corner radius of the outline
	Rounding Fact // of the edges, on both faces
	Setback  Fact // of the opening's rink face behind the boards' rink face
}

// What stands in for a length that nobody measured.
const (
	// usualPane: side panes of one building with acrylic all round, 5/8 in (a
	// rink's own page); the international book's panes are 12 to 15 mm.
	usualPane = 5 * unit.Inch / 8
	// usualFacing is the plastic sheet that faces boards, 1/2 in (common
	// practice, no published source).
	usualFacing   = unit.Inch / 2
	usualPanel    = unit.Inch / 2 // a low window's clear panel, likewise
	usualCorner   = unit.Inch / 2 // a router's or drill's round corner (common practice, no published source)
	usualRounding = unit.Inch / 8 // likewise
)

// TakingThickness returns the arena with a thickness of the user's word for
// panes that were not surveyed.
func (a Arena) TakingThickness(t unit.Length) Arena {
	a.thick = unit.Known(t)
	return a
}

// Opening returns the working hole or the low window with this id. An id that
// is neither is an error that names those there are.
func (a Arena) Opening(id string) (Opening, error) {
	if h, ok := a.Hole(id); ok && h.State != glass.Off {
		return a.OpeningOf(h)
	}
	for _, w := range a.Windows {
		if w.ID == id {
			return a.windowOpening(w), nil
		}
	}
	if _, off := a.Hole(id); off {
		return Opening{}, fmt.Errorf("%s: the hole is turned off in the arena file", form.Quote(id))
	}
	if len(a.Openings()) == 0 {
		return Opening{}, fmt.Errorf("%s: %s has no working hole and no low window", form.Quote(id), a.Name)
	}
	return Opening{}, fmt.Errorf("%s: no working hole or low window has this id; write %s", form.Quote(id), form.Choices(a.Openings()))
}

// Passable says why no lens, hand or puck passes, where a clear panel closes the
// opening.
func (o Opening) Passable() error {
	if w, ok := o.Window.Get(); ok && !w.Open {
		return fmt.Errorf("%s: this low window is a clear panel, through which no lens, hand or puck passes; frame draws the picture through it", form.Quote(w.ID))
	}
	return nil
}

// OpeningOf returns the opening of a hole, which need not be one of the
// arena's. A hole at a station without a pane is an error.
func (a Arena) OpeningOf(h glass.Hole) (Opening, error) {
	p, ok := a.Pane(h.Pane)
	if !ok {
		if p, ok = a.PaneAt(h.Station); !ok {
			return Opening{}, fmt.Errorf("hole %s lies in no pane of the arena", h.ID)
		}
	}
	o := Opening{Hole: h, Pane: unit.Known(p)}
	o.Thick = fact(p.Thickness, "pane "+p.ID, "thickness", usualPane, "a common thickness of side panes")
	if t, ok := a.thick.Get(); ok {
		o.Thick = fact(p.Thickness, "pane "+p.ID, "thickness", t, "as asked")
	}
	o.Corner = cornerOf(h)
	o.Rounding = fact(h.Rounding, "hole "+h.ID, "edge rounding", min(usualRounding, o.Thick.Value/4), "common practice")
	o.Setback = a.Setback()
	return o, nil
}

// MostSetback is the farthest behind the boards that glass is taken to stand.
const MostSetback = mostLedge

// Setback returns how far the glass's rink face stands behind the boards'.
func (a Arena) Setback() Fact {
	return fact(a.Boards.Setback, "the glass", "setback", 0, "as if it stood flush with the boards, which then hide nothing")
}

func cornerOf(h glass.Hole) Fact {
	return fact(h.Corner, "hole "+h.ID, "corner radius", min(usualCorner, h.Size.W/2, h.Size.H/2), "common practice")
}

// windowOpening: a panel has the thickness of its sheet; an open window goes
// through the boards, as deep as their top or, where nobody measured it, as
// their facing alone.
func (a Arena) windowOpening(w glass.Window) Opening {
	h := glass.Hole{ID: w.ID, Station: w.Station, Height: w.Height, Size: w.Size}
	o := Opening{Hole: h, Window: unit.Known(w), Corner: surveyed(0), Rounding: surveyed(0), Setback: surveyed(0)}
	of, ledge := "low window "+w.ID, a.Boards.Ledge
	depth, measured := ledge.Get()
	switch {
	case !w.Open:
		o.Thick = fact(w.Thick, of, "thickness", usualPanel, "common practice")
	case measured:
		o.Thick = fact(w.Thick, of, "thickness", depth, "the depth of the boards' top")
	default:
		o.Thick = fact(w.Thick, of, "thickness", usualFacing, "as if only the boards' facing stood around it; deeper boards take more light and let fewer pucks through")
	}
	return o
}
