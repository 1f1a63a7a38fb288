package unit

import (
	"errors"
	"fmt"
	"strings"
)

// MaxLength is the longest length that is read: 10 km. More is a slip of the pen.
const MaxLength Length = 10_000

// lengthUnit converts by v*num/den, which rounds once: "114 mm" is the float
// nearest to 0.114 m.
type lengthUnit struct {
	num, den float64
	inLeast  float64 // how many inches or millimetres it holds
	imperial bool    // compounds do not mix systems
}

// The inch is 25.4 mm = 127/5000 m exactly (international yard and pound agreement, 1959).
var (
	metre      = lengthUnit{1, 1, 1000, false}
	centimetre = lengthUnit{1, 100, 10, false}
	millimetre = lengthUnit{1, 1000, 1, false}
	foot       = lengthUnit{381, 1250, 12, true}
	inch       = lengthUnit{127, 5000, 1, true}
)

// lengthUnits holds every spelling that is understood.
var lengthUnits = map[string]lengthUnit{
	"m": metre, "metre": metre, "metres": metre, "meter": metre, "meters": metre,
	"cm": centimetre, "centimetre": centimetre, "centimetres": centimetre, "centimeter": centimetre, "centimeters": centimetre,
	"mm": millimetre, "millimetre": millimetre, "millimetres": millimetre, "millimeter": millimetre, "millimeters": millimetre,
	"ft": foot, "foot": foot, "feet": foot, "'": foot,
	"in": inch, "inch": inch, "inches": inch, `"`: inch,
}

const lengthCure = `write m, cm, mm, in or ft, as in "4 1/2 in", "5 ft 6 in" or "114 mm"`

// ParseLength reads a length as written at a rink: "4 1/2 in", "4½ in",
// "5' 6\"", "5 ft 6 in", "114 mm", "8.5 m". The result is in metres, between 0
// and [MaxLength]. A bare number, a negative length, a unit it does not know
// and anything not finite give an [*Error] with the cure.
func ParseLength(s string) (Length, error) {
	l, err := parseLength(s)
	if err != nil {
		return 0, err
	}
	if l < 0 {
		return 0, &Error{What: "length", Seen: s, Why: "negative", Cure: "write a length of 0 or more"}
	}
	return l, nil
}

// ParseFocal reads a focal length: a bare number is millimetres, in any unit
// system, as engraved on a lens; otherwise it is [ParseLength].
func ParseFocal(s string) (Length, error) {
	l, err := ParseLength(s)
	if err == nil {
		return l, nil
	}
	if bare, again := ParseLength(s + " mm"); again == nil && strings.Trim(s, " 0123456789.") == "" {
		return bare, nil
	}
	return 0, err
}

// ParseOffset reads a length that may be negative: "-5 ft" lies 5 ft back.
// Otherwise it is [ParseLength].
func ParseOffset(s string) (Length, error) { return parseLength(s) }

func parseLength(s string) (Length, error) {
	text, err := normal(s)
	if err != nil {
		return 0, fault("length", s, err, lengthCure)
	}
	c := scanner{s: text}
	sign := c.sign()
	v, err := c.length()
	if err != nil {
		return 0, lengthFault(s, err)
	}
	if v > MaxLength {
		return 0, &Error{What: "length", Seen: s, Why: "longer than 10 km", Cure: "check the unit"}
	}
	if v == 0 {
		return 0, nil // no negative zero
	}
	return Length(sign) * v, nil
}

var (
	errBare    = errors.New("a bare number")
	errOrder   = errors.New("units out of order")
	errMixed   = errors.New("feet, inches and metric units mixed")
	errBroken  = errors.New("a broken number before a smaller unit")
	errInches  = errors.New("12 inches or more beside feet")
	errSmaller = errors.New("more of the smaller unit than the larger one holds")
)

// length reads one or more terms: "8.5 m", "5' 6\"", "1 m 20 cm". A compound
// is summed in its smallest unit, so that 5' 6" is exactly 66 in.
func (c *scanner) length() (Length, error) {
	v, last, whole, err := c.term()
	if err != nil {
		return 0, err
	}
	total := last.of(v)
	sum := v * last.inLeast
	for c.spaces(); !c.done(); c.spaces() {
		if !whole {
			return 0, errBroken
		}
		if c.take('-') { // as in 5'-6"
			c.spaces()
		}
		var u lengthUnit
		if v, u, whole, err = c.term(); err != nil {
			return 0, err
		}
		if err := follows(last, u, v); err != nil {
			return 0, err
		}
		sum += v * u.inLeast
		total, last = least(u).of(sum), u
	}
	return total, nil
}

// least is the smallest unit of u's system.
func least(u lengthUnit) lengthUnit {
	if u.imperial {
		return inch
	}
	return millimetre
}

func (u lengthUnit) of(v float64) Length { return Length(v * u.num / u.den) }

// term reads one number with its unit.
func (c *scanner) term() (v float64, u lengthUnit, whole bool, err error) {
	v, whole, err = c.number()
	if err != nil {
		return 0, u, false, err
	}
	name := c.word()
	if name == "" && c.done() {
		return 0, u, false, errBare
	}
	u, ok := lengthUnits[name]
	if !ok {
		return 0, u, false, unknownUnit(name, c)
	}
	return v, u, whole, nil
}

// follows checks that v of unit u may stand after a term of unit last.
func follows(last, u lengthUnit, v float64) error {
	switch {
	case last.imperial != u.imperial:
		return errMixed
	case u.inLeast >= last.inLeast:
		return errOrder
	case u == inch && v >= foot.inLeast:
		return errInches
	case u.of(v) >= last.of(1):
		return errSmaller
	}
	return nil
}

func unknownUnit(name string, c *scanner) error {
	if name == "" {
		name = strings.TrimSpace(c.rest())
	}
	return fmt.Errorf("unknown unit %s", quote(name))
}

func lengthFault(s string, err error) *Error {
	cure := lengthCure
	if errors.Is(err, errBare) {
		if t := strings.TrimSpace(s); len(t) <= seenRunes && !strings.ContainsAny(t, `"'`) {
			cure = fmt.Sprintf("a length needs its unit, as in %q, %q or %q", t+" in", t+" mm", t+" m")
		}
	}
	return fault("length", s, err, cure)
}

// fault builds the error of one quantity; cure says what would do.
func fault(what, seen string, err error, cure string) *Error {
	why := err.Error()
	switch {
	case strings.TrimSpace(seen) == "":
		why = "empty"
	case errors.Is(err, errComma):
		cure = commaCure(seen)
	}
	return &Error{What: what, Seen: seen, Why: why, Cure: cure}
}
