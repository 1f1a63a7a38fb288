package rules

import (
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// slack is how far a limit may be missed and still be met, in metres: files
// hold rounded numbers, and sums of them are not exact.
const slack = 1e-6

// The units of findings.
const (
	inMetres = "m"
	inMillis = "mm"
	inHoles  = "holes"
	noUnit   = ""
)

// start returns a finding on holes that has no status yet.
func (c *court) start(unit string, holes ...glass.Hole) Finding {
	ids := make([]string, len(holes))
	for i, h := range holes {
		ids[i] = h.ID
	}
	return Finding{Set: c.set.ID, Rule: c.rule.ID, Kind: c.rule.Kind, Holes: ids, Unit: unit}
}

// weigh fills in measured, limit and margin, given in metres (or as plain
// numbers for findings without a length), and decides by the margin.
func (f Finding) weigh(measured, limit, margin float64) Finding {
	scale := 1.0
	if f.Unit == inMillis {
		scale = 1e3
	}
	if math.Abs(margin) <= slack {
		margin = 0
	}
	f.Status = Pass
	if margin < 0 {
		f.Status = Fail
	}
	measured, limit, margin = measured*scale, limit*scale, margin*scale
	f.Measured, f.Limit, f.Margin = &measured, &limit, &margin
	return f
}

// decide gives a finding without numbers its status.
func (f Finding) decide(kept bool) Finding {
	f.Status = Fail
	if kept {
		f.Status = Pass
	}
	return f
}

// unknown gives a finding whose numbers the survey lacks.
func (f Finding) unknown() Finding {
	f.Status = Unknown
	return f
}

// say adds the sentence.
func (c *court) say(f Finding, format string, args ...any) Finding {
	if !c.terse {
		f.Message = fmt.Sprintf(format, args...)
	}
	return f
}

// l prints a length in the arena's units.
func (c *court) l(x unit.Length) string {
	if c.terse {
		return ""
	}
	return x.Format(c.arena.Units)
}

// up prints a length that must be reached, rounded up to what [unit.Length.Format]
// shows, so that the figure is never too little.
func (c *court) up(x unit.Length) string {
	step := c.shown(x)
	return c.l(unit.Length(math.Ceil(float64(x/step)-stepSlack)) * step)
}

// down prints a length that must not be passed, rounded down likewise.
func (c *court) down(x unit.Length) string {
	step := c.shown(x)
	return c.l(unit.Length(math.Floor(float64(x/step)+stepSlack)) * step)
}

// stepSlack is the part of a step by which a sum of rounded lengths may be off.
const stepSlack = 1e-3

// shown returns the step to which lengths near x are printed.
func (c *court) shown(x unit.Length) unit.Length {
	a := abs(x)
	if c.arena.Units == unit.Imperial {
		switch {
		case a < unit.Inch/4:
			return unit.Inch / 64
		case a < 4*unit.Inch:
			return unit.Inch / 16
		case a < 4*unit.Foot:
			return unit.Inch / 8
		}
		return unit.Inch / 4
	}
	switch {
	case a < 10*unit.Millimetre:
		return unit.Millimetre / 100
	case a < 100*unit.Millimetre:
		return unit.Millimetre / 10
	case a < unit.Metre:
		return unit.Millimetre
	}
	return unit.Centimetre
}

// size prints a width by a height in the arena's units.
func (c *court) size(s unit.Size) string {
	if c.terse {
		return ""
	}
	return s.Format(c.arena.Units)
}

// list joins names: "h1, h2 and h3".
func list(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}
