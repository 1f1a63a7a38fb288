package cut

import (
	"errors"
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// CoverOptions are the choices for a cover.
type CoverOptions struct {
	Clearance unit.Length // between plug and hole on each side, at Made degrees
	// Made, Cold and Warm are temperatures in degrees Celsius: where parts are
	// measured, and the range in which plug and pane may each be.
	Made, Cold, Warm float64
	HoleTolerance    unit.Length // plus or minus, of the hole's width and height
	PlugTolerance    unit.Length // plus or minus, of the plug's
}

// DefaultCoverOptions returns 1 mm a side, measured at 20 degrees Celsius, pane and plug each between
// -5 and 35 degrees (a pane beside the ice, a cover from a warm room), hole
// +-0.5 mm, plug +-0.25 mm: own choices.
func DefaultCoverOptions() CoverOptions {
	const mm = unit.Millimetre
	return CoverOptions{Clearance: 1 * mm, Made: 20, Cold: -5, Warm: 35, HoleTolerance: 0.5 * mm, PlugTolerance: 0.25 * mm}
}

func (o CoverOptions) check() error {
	switch {
	case !(o.Clearance >= 0 && o.Clearance <= 20*unit.Millimetre):
		return fmt.Errorf("clearance %s: give one from 0 to 20 mm", both(o.Clearance).Say(unit.Metric))
	case !(o.Cold < o.Warm) || o.Cold < -60 || o.Warm > 90 || !(o.Made >= -60 && o.Made <= 90):
		return fmt.Errorf("temperatures %g to %g deg C, made at %g: give cold below warm, within -60 to 90", o.Cold, o.Warm, o.Made)
	case !(o.HoleTolerance >= 0 && o.PlugTolerance >= 0) || o.HoleTolerance > 5*unit.Millimetre || o.PlugTolerance > 5*unit.Millimetre:
		return errors.New("tolerances: give 0 to 5 mm")
	}
	return nil
}

// Sizes of a cover: own choices, on the drawing for all to change.
const (
	flangeOverlap = 20 * unit.Millimetre // past the hole's edge on every side
	flangeThick   = 6 * unit.Millimetre
	coverRounding = 2 * unit.Millimetre // of every edge that a hand meets
	plugShy       = 1 * unit.Millimetre // the plug ends at least so far behind the rink face
	tabWide       = 40 * unit.Millimetre
	tabLong       = 30 * unit.Millimetre
	tabHole       = 8 * unit.Millimetre  // for a cord
	tabHoleUp     = 12 * unit.Millimetre // of its centre above the tab's foot
	tabFillet     = 5 * unit.Millimetre  // where the tab meets the flange
	tabRound      = 10 * unit.Millimetre // at the tab's foot
	leastHold     = 5 * unit.Millimetre  // overlap that must be left on a side, or the cover falls through
	mostPlay      = 6 * unit.Millimetre  // play in all above which the plug counts as loose
)

// Cover is a cover for one hole: a plug that fills the hole and a flange on
// the shooting side. It never stands past the rink face.
type Cover struct {
	Material   glass.Material
	Plug       unit.Size
	PlugCorner unit.Length
	PlugDepth  unit.Length // at most: in the thinnest sheet that the pane may be, it still ends behind the rink face
	Flange     unit.Size
	FlangeThk  unit.Length
	Rounding   unit.Length
	Clearance  unit.Length // each side, as made
	Tether     bool
	TabWide    unit.Length
	TabLong    unit.Length
	TabHole    unit.Length
	Mass       float64 // kg
	Fits       []Fit   // by state of temperature
	Hold       unit.Length
	Options    CoverOptions
}

// Fit is the play of a plug in its hole (both sides together) along one side,
// in one state of temperature.
type Fit struct {
	State     string  // "pane cold, cover warm" ...
	PaneC     float64 // temperature of the pane, degrees Celsius; as CoverC without a unit type
	CoverC    float64 // temperature of the cover, degrees Celsius
	Along     string  // "width" or "height"
	Nominal   unit.Length
	Low, High unit.Length // worst case: every tolerance at its end
	LowRSS    unit.Length // root-sum-square of the tolerances
	HighRSS   unit.Length
}

// cover designs the job's cover, or says why there can be none.
func (j *Job) cover(o CoverOptions) []say.Sentence {
	c, _ := j.Hole.Cover.Get()
	m := c.Material
	if m == "" {
		m = glass.Polycarbonate
		if j.Material.Family == glass.Plastic {
			m = j.Material.Name // grows and shrinks as the pane does
		}
		j.Assumed = append(j.Assumed, say.Make("cover's material %s: not in the plan", m))
	}
	design, err := designCover(j, m, o)
	if err != nil {
		return []say.Sentence{say.Make("%s", err.Error())}
	}
	design.Tether = c.Tether.Or(true)
	j.Cover = design
	return nil
}

func designCover(j *Job, m glass.Material, o CoverOptions) (Cover, error) {
	props, err := m.Properties()
	if err != nil {
		return Cover{}, fmt.Errorf("its cover: %w", err)
	}
	if !props.Cuttable() {
		return Cover{}, fmt.Errorf("a cover of %s is not possible: make it of %s", m, form.Choices(glass.Names(glass.Properties.Cuttable)))
	}
	pane := j.Material
	depth := j.Thick - pane.ThicknessTolerance(j.Thick) - plugShy
	if depth < 2*coverRounding-slack {
		return Cover{}, fmt.Errorf("the pane is %s thick, too thin for a plug with rounded edges", both(j.Thick).Say(unit.Metric))
	}
	c := Cover{
		Material: m, Clearance: o.Clearance, Options: o,
		Plug:      unit.Size{W: j.Hole.Size.W - 2*o.Clearance, H: j.Hole.Size.H - 2*o.Clearance},
		PlugDepth: depth,
		Flange:    unit.Size{W: j.Hole.Size.W + 2*flangeOverlap, H: j.Hole.Size.H + 2*flangeOverlap},
		FlangeThk: flangeThick, Rounding: coverRounding,
		TabLong: tabLong, TabHole: tabHole,
	}
	c.TabWide = min(tabWide, c.Flange.W/2)
	if c.Plug.W <= 0 || c.Plug.H <= 0 {
		return Cover{}, fmt.Errorf("a clearance of %s leaves no plug", both(o.Clearance).Say(unit.Metric))
	}
	c.PlugCorner = plugCorner(j.Corner, o.Clearance, c.Plug)
	c.Fits = append(stack("width", j.Hole.Size.W, c.Plug.W, pane, props, o), stack("height", j.Hole.Size.H, c.Plug.H, pane, props, o)...)
	c.Mass = props.Mass(c.areas())
	return c, c.judge(j.Rounding)
}

// plugCorner is the radius of a plug's corners: rounder than the hole's less
// the clearance by the tolerance of the hole's radius, so that the plug is as
// free at a corner cut too round as along its sides.
func plugCorner(hole, clearance unit.Length, plug unit.Size) unit.Length {
	return min(max(hole-clearance+radiusTolerance, coverRounding), plug.W/2, plug.H/2)
}

// PlugSheet is the thickest of the usual sheets that is a plug even where it is as
// thick as its tolerance lets it be, and the plug's depth itself where none is.
// Thicknesses are those in which sheets of plastic are sold (from memory).
func (c Cover) PlugSheet() unit.Length {
	best := c.PlugDepth
	m, err := c.Material.Properties()
	for _, mm := range []unit.Length{3, 4, 5, 6, 8, 10, 12, 15, 18, 20, 25} {
		if t := mm * unit.Millimetre; err == nil && t+m.ThicknessTolerance(t) <= c.PlugDepth+slack {
			best = t
		}
	}
	return best
}

// areas returns plug and flange as one sheet: its area in square metres at the plug's depth.
func (c Cover) areas() (m2 float64, thick unit.Length) {
	plug := c.Plug.W.Metres()*c.Plug.H.Metres() - (4-math.Pi)*c.PlugCorner.Metres()*c.PlugCorner.Metres()
	flange := c.Flange.W.Metres()*c.Flange.H.Metres() + c.TabWide.Metres()*c.TabLong.Metres()
	return plug + flange*float64(c.FlangeThk/c.PlugDepth), c.PlugDepth
}

// stack returns the play along one side in the four states of temperature:
//
//	play = H (1 + a_h (T_h - T_0)) - P (1 + a_p (T_p - T_0))
//	worst case +- (tol_H + tol_P),  root-sum-square +- sqrt(tol_H^2 + tol_P^2)
//
// H, P the hole's and the plug's size as made at T_0; a the materials'
// expansions. A hole in a sheet grows as the sheet does.
func stack(along string, hole, plug unit.Length, pane, cover glass.Properties, o CoverOptions) []Fit {
	var out []Fit
	for _, s := range []struct {
		name        string
		pane, cover float64
	}{
		{"both cold", o.Cold, o.Cold},
		{"both warm", o.Warm, o.Warm},
		{"pane cold, cover warm", o.Cold, o.Warm},
		{"pane warm, cover cold", o.Warm, o.Cold},
	} {
		play := pane.Grown(hole, s.pane-o.Made) - cover.Grown(plug, s.cover-o.Made)
		worst, rss := o.HoleTolerance+o.PlugTolerance, hypot(o.HoleTolerance, o.PlugTolerance)
		out = append(out, Fit{
			State: s.name, PaneC: s.pane, CoverC: s.cover, Along: along, Nominal: play,
			Low: play - worst, High: play + worst, LowRSS: play - rss, HighRSS: play + rss,
		})
	}
	return out
}

// judge refuses a cover that jams, that is loose, or that falls through. The flange
// must still hold on one side when the plug lies against the other: its overlap
// less the hole's rounded edge less half the play (flange and plug share a centre).
func (c *Cover) judge(rounding unit.Length) error {
	c.Hold = flangeOverlap
	for _, f := range c.Fits {
		if f.Low <= 0 {
			return fmt.Errorf("the cover jams: %s, the plug's %s has %s of play in the worst case; give it more clearance than %s a side",
				f.State, f.Along, f.Low.FormatFine(unit.Metric), c.Clearance.FormatFine(unit.Metric))
		}
		c.Hold = min(c.Hold, flangeOverlap-rounding-f.High/2)
		if c.Hold < leastHold {
			return fmt.Errorf("the cover falls through: %s, the flange holds by %s only; take less clearance than %s a side",
				f.State, max(c.Hold, 0).FormatFine(unit.Metric), c.Clearance.FormatFine(unit.Metric))
		}
		if f.High > mostPlay {
			return fmt.Errorf("the cover is loose: %s, the plug's %s has up to %s of play; take less clearance than %s a side",
				f.State, f.Along, f.High.FormatFine(unit.Metric), c.Clearance.FormatFine(unit.Metric))
		}
	}
	return nil
}
