package plan

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
)

// Words about a plan for people: the command's summary, the folder's tables and
// the desk say the same.

// VerdictWords says how a list of findings ends: "every rule is kept", "2 rules
// broken, 1 not known".
func VerdictWords(findings []rules.Finding) string {
	broken, unknown := map[string]bool{}, map[string]bool{}
	for _, f := range findings {
		switch f.Status {
		case rules.Fail:
			broken[f.Rule] = true
		case rules.Unknown:
			unknown[f.Rule] = true
		}
	}
	var parts []string
	if n := len(broken); n > 0 {
		parts = append(parts, Count(n, "rule")+" broken")
	}
	if n := len(unknown); n > 0 {
		parts = append(parts, Count(n, "rule")+" with a number missing")
	}
	switch {
	case len(parts) > 0:
		return strings.Join(parts, ", ")
	case len(findings) == 0:
		return "no rule applies"
	}
	return "every rule is kept"
}

// Count prints a number of things: "1 hole", "8 holes".
func Count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// System returns the units that the arena's own tables print in.
func (s Survey) System() unit.System {
	sys, err := unit.ParseSystem(s.Units)
	if err != nil {
		return unit.Metric
	}
	return sys
}

// Size prints the ice's length and width.
func (s Survey) Size(sys unit.System) string {
	return unit.Length(s.Length).Format(sys) + " by " + unit.Length(s.Width).Format(sys)
}

// Where says where a hole is: "corner B-box, 1.2 m past circle-top", or its
// station where the rink has no landmarks there.
func (h Hole) Where(sys unit.System) string {
	if h.Landmark == "" {
		return "station " + unit.Length(h.Station).Format(sys)
	}
	offset := unit.Length(h.Offset)
	switch {
	case offset > atLandmark:
		return fmt.Sprintf("corner %s, %s past %s", h.Corner, offset.Format(sys), h.Landmark)
	case offset < -atLandmark:
		return fmt.Sprintf("corner %s, %s back of %s", h.Corner, (-offset).Format(sys), h.Landmark)
	}
	return fmt.Sprintf("corner %s, at %s", h.Corner, h.Landmark)
}

// atLandmark is how near a hole's centre counts as at the landmark: less than
// people measure along boards.
const atLandmark = 5 * unit.Millimetre

// Size returns the hole's width by height.
func (h Hole) Size() unit.Size {
	return unit.Size{W: unit.Length(h.Width) * unit.Millimetre, H: unit.Length(h.Tall) * unit.Millimetre}
}

// BestFit returns the fit of the recommended lens; ok is false when no lens fits.
func (h Hole) BestFit() (LensFit, bool) {
	for _, f := range h.Fits {
		if h.Best != "" && f.Lens == h.Best && f.Focal == h.BestFocal {
			return f, true
		}
	}
	return LensFit{}, false
}

// SlotLight returns the row of the slot before the hole's own net.
func (h Hole) SlotLight() (light.Row, bool) {
	for _, row := range h.Light {
		if row.Zone == h.Slot {
			return row, true
		}
	}
	return light.Row{}, false
}

// Hole returns the hole with this id.
func (p Plan) Hole(id string) (Hole, bool) {
	for _, h := range p.Holes {
		if h.ID == id {
			return h, true
		}
	}
	return Hole{}, false
}

// FindingsOf returns the findings that name the hole, broken ones first.
func (p Proof) FindingsOf(hole string) []rules.Finding {
	var out []rules.Finding
	for _, status := range []rules.Status{rules.Fail, rules.Unknown, rules.Pass} {
		for _, f := range p.Findings {
			if f.Status != status {
				continue
			}
			for _, h := range f.Holes {
				if h == hole {
					out = append(out, f)
					break
				}
			}
		}
	}
	return out
}

// Far prints a distance over the ice, in metres, as one judges it by eye:
// "48.1 m", "158 ft".
func Far(metres float64, sys unit.System) string {
	if sys == unit.Imperial {
		return strconv.FormatFloat(unit.Length(metres).Feet(), 'f', 0, 64) + " ft"
	}
	return strconv.FormatFloat(metres, 'f', 1, 64) + " m"
}
