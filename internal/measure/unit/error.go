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
}

// seenRunes is how much of a wrong text a message repeats.
const seenRunes = 48

// Error returns one sentence: quantity, text seen, fault, cure.
func (e *Error) Error() string {
	msg := fmt.Sprintf("%s %s: %s", e.What, quote(e.Seen), e.Why)
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
