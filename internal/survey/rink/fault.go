package rink

import "fmt"

// Fault is what is wrong with one of a rink's [Dimensions].
type Fault struct {
	Field string // as arena files write it: "corner-radius", "goal-line"
	text  string
}

// Error tells the dimension, its value and what would do.
func (f *Fault) Error() string { return f.text }

func faultf(field, format string, args ...any) error {
	return &Fault{field, fmt.Sprintf(format, args...)}
}
