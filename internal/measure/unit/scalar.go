package unit

import (
	"errors"
	"fmt"
	"strings"
)

// scalar describes a quantity of one number and one unit.
type scalar struct {
	what   string
	units  map[string]ratio
	signed bool
	min    float64 // smallest value that is read, in SI
	max    float64 // largest
	limits string  // the two in words
	cure   string
}

// ratio converts by v*num/den, rounding once where it can.
type ratio struct{ num, den float64 }

// parse reads s: a number and a unit of the table; a bare number takes the unit "".
func (q scalar) parse(s string) (float64, error) {
	text, err := normal(s)
	if err != nil {
		return 0, fault(q.what, s, err, q.cure)
	}
	c := scanner{s: text}
	sign := c.sign()
	v, _, err := c.number()
	if err != nil {
		return 0, fault(q.what, s, err, q.cure)
	}
	return q.finish(s, sign*v, c.rest())
}

// finish converts v by the unit named and checks the limits.
func (q scalar) finish(s string, v float64, name string) (float64, error) {
	name = strings.ToLower(strings.Join(strings.Fields(name), " "))
	r, ok := q.units[name]
	if !ok {
		r, ok = q.units[strings.TrimSuffix(name, ".")]
	}
	if !ok {
		return 0, fault(q.what, s, fmt.Errorf("unknown unit %s", quote(name)), q.cure)
	}
	v = v * r.num / r.den
	if v < 0 && !q.signed {
		return 0, fault(q.what, s, errors.New("negative"), q.cure)
	}
	if !(v >= q.min && v <= q.max) { // also refuses NaN
		return 0, fault(q.what, s, errors.New("outside "+q.limits), q.cure)
	}
	if v == 0 {
		v = 0 // no negative zero
	}
	return v, nil
}
