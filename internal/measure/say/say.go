// Package say is a sentence with typed amounts in it. The room that makes an
// answer makes its sentence too, but knows neither the reader's units nor how
// finely people read a length; whoever prints the answer sets the sentence:
//
//	rules:   say.Make("Move hole %s %s or more.", "B1", say.AtLeast(d))
//	                                |
//	         Sentence: words, and d as a length
//	                                |
//	page:    s.In(unit.Imperial) -> "Move hole B1 3 1/8 in or more."
//
// So one answer serves a reader in inches and one in millimetres, and no text
// below the edge has a unit in it.
package say

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
)

// Amount is anything in a sentence whose words hang on the unit system.
type Amount interface {
	Say(sys unit.System) string
}

// Sentence is words with amounts in them. Its zero value says nothing.
type Sentence struct {
	form string
	args []any
}

// Make returns the sentence of a [fmt.Sprintf] form. Arguments that are
// lengths, sizes, amounts or sentences are set when the sentence is; their verb
// is %s. All others are printed as fmt does.
func Make(form string, args ...any) Sentence { return Sentence{form, args} }

// IsZero reports that the sentence says nothing.
func (s Sentence) IsZero() bool { return s.form == "" }

// In sets the sentence in a system's units.
func (s Sentence) In(sys unit.System) string {
	args := make([]any, len(s.args))
	for i, a := range s.args {
		args[i] = set(a, sys)
	}
	return fmt.Sprintf(s.form, args...)
}

// Say sets the sentence as a part of another.
func (s Sentence) Say(sys unit.System) string { return s.In(sys) }

func set(arg any, sys unit.System) any {
	switch a := arg.(type) {
	case Amount:
		return a.Say(sys)
	case unit.Length:
		return a.Format(sys)
	case unit.Size:
		return a.Format(sys)
	}
	return arg
}

// All sets sentences one by one.
func All(list []Sentence, sys unit.System) []string {
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = s.In(sys)
	}
	return out
}

// Names joins names: "h1, h2 and h3".
func Names(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}

// Count prints a number of things: "1 hole", "8 holes".
func Count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
