package people

import "time"

// Kind says what an entry of the log is about. Each kind has room of its own, so
// that a flood of wrong passwords does not wash out who let whom in.
type Kind string

// The kinds.
const (
	SignedIn Kind = "sign-in" // and out
	Failed   Kind = "failure" // a sign-in that did not succeed
	Altered  Kind = "people"  // somebody was let in, changed or removed
)

// LogLength is how many entries of a kind are kept; the oldest go first.
const LogLength = 5000

// Entry is one line of the log of who came in and who let them.
type Entry struct {
	At   time.Time
	Kind Kind
	Who  string // a person's name; "desk" while nobody is set up; "terminal"
	What string // what they did, as in "let Bo in as viewer"
	From string // network address, or the terminal's user
}

// Unnamed stands for a name that nobody has: what was typed may be a password.
const Unnamed = "(a name that nobody has)"
