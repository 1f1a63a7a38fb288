package unit

import (
	"fmt"
	"strconv"
)

// Error says which quantity could not be read, what was seen and what would do.
type Error struct {
	What string // the quantity: "length", "size", "stop" ...
	Seen string // the text as written
	Why  string // what is wrong with it
	Cure string // what would do
	// Line and Column are the place in a YAML text, from 1; zero when unknown.
	Line, Column int
}

// seenRunes is how much of a wrong text a message repeats.
const seenRunes = 48

// Error returns one sentence: place (if known), quantity, text seen, fault, cure.
func (e *Error) Error() string {
	place := ""
	if e.Line > 0 {
		place = fmt.Sprintf("line %d, column %d: ", e.Line, e.Column)
	}
	msg := fmt.Sprintf("%s%s %s: %s", place, e.What, quote(e.Seen), e.Why)
	if e.Cure != "" {
		msg += "; " + e.Cure
	}
	return msg
}

// quote shows a text in double quotes, control characters escaped and long text cut.
func quote(s string) string {
	r := []rune(s)
	if len(r) > seenRunes {
		s = string(r[:seenRunes]) + "..."
	}
	return strconv.Quote(s)
}
