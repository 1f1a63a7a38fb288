package unit

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// maxText is the longest text of one quantity that is read, in bytes.
const maxText = 200

var (
	errNoNumber  = errors.New("no number")
	errTooLong   = errors.New("far too long for a quantity")
	errNotUTF8   = errors.New("not text")
	errComma     = errors.New("a comma in the number")
	errNotFinite = errors.New("not a finite number")
	errFraction  = errors.New("not a fraction")
	errZeroBelow = errors.New("a fraction over zero")
)

// plain replaces typographic characters by the ones on a keyboard: quotes and
// primes, the minus sign, the multiplication sign, special spaces, fractions.
var plain = strings.NewReplacer(
	"‘", "'", "’", "'", "′", "'", "“", `"`, "”", `"`, "″", `"`, "''", `"`,
	"’’", `"`, "′′", `"`,
	"−", "-", "–", "-", "‑", "-", "×", "x", "✕", "x",
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ",
	"⁄", "/",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⅓", " 1/3", "⅔", " 2/3",
)

// normal prepares a text for the scanner.
func normal(s string) (string, error) {
	if len(s) > maxText {
		return "", errTooLong
	}
	if !utf8.ValidString(s) {
		return "", errNotUTF8
	}
	return strings.TrimSpace(plain.Replace(s)), nil
}

// scanner walks over one prepared text.
type scanner struct {
	s string
	i int
}

func (c *scanner) done() bool { return c.i >= len(c.s) }

func (c *scanner) rest() string { return c.s[c.i:] }

func (c *scanner) peek() byte {
	if c.done() {
		return 0
	}
	return c.s[c.i]
}

func (c *scanner) spaces() {
	for c.peek() == ' ' {
		c.i++
	}
}

// take consumes b if it comes next.
func (c *scanner) take(b byte) bool {
	if c.peek() != b || c.done() {
		return false
	}
	c.i++
	return true
}

// sign consumes a leading sign and returns -1 or 1.
func (c *scanner) sign() float64 {
	c.spaces()
	switch {
	case c.take('-'):
		c.spaces()
		return -1
	case c.take('+'):
		c.spaces()
	}
	return 1
}

func (c *scanner) digits() string {
	from := c.i
	for b := c.peek(); b >= '0' && b <= '9'; b = c.peek() {
		c.i++
	}
	return c.s[from:c.i]
}

// decimal reads "12", "1.5", ".5" or "1e-3" and returns its text.
func (c *scanner) decimal() (text string, whole bool, err error) {
	from := c.i
	lead := c.digits()
	whole = true
	if c.take('.') {
		whole = false
		if c.digits() == "" && lead == "" {
			c.i = from
			return "", false, errNoNumber
		}
	} else if lead == "" {
		return "", false, errNoNumber
	}
	c.exponent(&whole)
	if c.peek() == ',' {
		return "", false, errComma
	}
	return c.s[from:c.i], whole, nil
}

// exponent consumes "e-3" if it follows.
func (c *scanner) exponent(whole *bool) {
	mark := c.i
	if !c.take('e') && !c.take('E') {
		return
	}
	if !c.take('-') {
		c.take('+')
	}
	if c.digits() == "" {
		c.i = mark
		return
	}
	*whole = false
}

// number reads an unsigned decimal, a fraction, or a whole number and a
// fraction: "4.5", "1/2", "4 1/2", "4-1/2". whole says that no part is broken.
func (c *scanner) number() (v float64, whole bool, err error) {
	c.spaces()
	text, whole, err := c.decimal()
	if err != nil {
		return 0, false, err
	}
	first, err := finite(text)
	if err != nil {
		return 0, false, err
	}
	if v, ok, err := c.over(first); ok || err != nil {
		return v, false, err
	}
	if !whole {
		return first, false, nil
	}
	mark := c.i
	if !c.take('-') {
		c.spaces()
	}
	num := c.digits()
	if num == "" || c.peek() != '/' {
		c.i = mark
		return first, true, nil
	}
	n, err := finite(num)
	if err != nil {
		return 0, false, err
	}
	part, _, err := c.over(n)
	if err == nil && part >= 1 {
		err = errFraction
	}
	return first + part, false, err
}

// over reads the "/8" after a numerator.
func (c *scanner) over(num float64) (float64, bool, error) {
	if c.peek() != '/' {
		return 0, false, nil
	}
	c.i++
	text, _, err := c.decimal()
	if err != nil {
		return 0, false, errFraction
	}
	den, err := finite(text)
	if err != nil {
		return 0, false, err
	}
	if den == 0 {
		return 0, false, errZeroBelow
	}
	v := num / den
	if math.IsInf(v, 0) {
		return 0, false, errNotFinite
	}
	return v, true, nil
}

func finite(text string) (float64, error) {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
		return 0, errNotFinite
	}
	return v, nil
}

// word reads a unit's name up to the next space, digit or sign.
func (c *scanner) word() string {
	c.spaces()
	from := c.i
	if b := c.peek(); b == '\'' || b == '"' {
		c.i++
		return c.s[from:c.i]
	}
	for !c.done() && !strings.ContainsRune(" 0123456789+-'\",", rune(c.peek())) {
		c.i++
	}
	return strings.TrimSuffix(strings.ToLower(c.s[from:c.i]), ".")
}
