package form

import (
	"fmt"
	"strings"
)

// Problem is what is wrong with a document, and where.
type Problem struct {
	File         string
	Line, Column int    // from 1; 0 when the place is not known
	Field        string // "holes[2].size"; "" for the document as a whole
	Text         string // the value seen and the cure
}

// Error returns "file:line:column: field: text", without the parts not known.
func (p *Problem) Error() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		fmt.Fprintf(&b, ":%d", p.Line)
		if p.Column > 0 {
			fmt.Fprintf(&b, ":%d", p.Column)
		}
	}
	b.WriteString(": ")
	if p.Field != "" {
		b.WriteString(p.Field + ": ")
	}
	b.WriteString(p.Text)
	return b.String()
}

// quoteMost is the greatest part of a value that a message repeats, in runes.
const quoteMost = 60

// Quote returns a value for a message: quoted, control characters escaped, cut
// when it is long.
func Quote(s string) string {
	r := []rune(s)
	if len(r) > quoteMost {
		return fmt.Sprintf("%q...", string(r[:quoteMost]))
	}
	return fmt.Sprintf("%q", s)
}
