package custody

import "time"

// Phase is what goes on in the hall.
type Phase string

// The phases of a day, in their usual order.
const (
	Closed       Phase = "closed"    // nobody is on the ice
	Preparing    Phase = "preparing" // before practice: covers are put in
	Practice     Phase = "practice"
	WarmUp       Phase = "warm-up"
	Play         Phase = "play"
	Intermission Phase = "intermission"
	LockUp       Phase = "lock-up" // after the game: covers are put in, or stored and counted
)

// Phases lists the phases.
func Phases() []Phase {
	return []Phase{Closed, Preparing, Practice, WarmUp, Play, Intermission, LockUp}
}

// Rule is what holds in a phase.
type Rule struct {
	Phase  Phase
	Seated bool // a hole may be open where somebody is seated
	Stored bool // a hole may be open whose covers are all stored and counted; no cover may be anywhere else
	// Within is how long what the phase does not allow may last before it is late.
	Within time.Duration
}

// Rules are the rules of all phases: common practice with no published source; the
// rink operator's own rule governs. The times are own choices: a photographer who
// gets up has a minute, preparing and lock-up end with every cover where it belongs.
func Rules() []Rule {
	return []Rule{
		{Phase: Closed, Stored: true},
		{Phase: Preparing, Within: 15 * time.Minute},
		{Phase: Practice, Seated: true, Within: time.Minute},
		{Phase: WarmUp, Seated: true, Within: time.Minute},
		{Phase: Play, Seated: true, Within: time.Minute},
		{Phase: Intermission, Seated: true, Within: time.Minute},
		{Phase: LockUp, Stored: true, Within: 30 * time.Minute},
	}
}

// RuleOf returns the rule of a phase; an unknown one has that of [Closed].
func RuleOf(p Phase) Rule {
	for _, r := range Rules() {
		if r.Phase == p {
			return r
		}
	}
	return Rules()[0]
}

// same reports whether two rules allow the same, so that what broke one breaks the other.
func (r Rule) same(q Rule) bool { return r.Seated == q.Seated && r.Stored == q.Stored }

// against returns why a cover in a state is not as the phase asks, "" when it is.
func (r Rule) against(s State) Reason {
	switch {
	case s == Missing:
		return IsMissing
	case s == Damaged:
		return IsDamaged
	case r.Stored && !s.accounted():
		return NotCounted
	}
	return ""
}

// Reason is why something is not as the phase asks.
type Reason string

// The reasons.
const (
	OpenHole   Reason = "open"        // open where it must be closed, and nobody is seated
	NotCounted Reason = "not-counted" // neither in its hole nor stored
	IsMissing  Reason = "missing"
	IsDamaged  Reason = "damaged"
)

// Alarm is something that is not as the phase asks.
type Alarm struct {
	Hole  string
	Cover string // "" when it is about the hole
	Why   Reason
	Phase Phase
	Since time.Time
	Due   time.Time // by when it must be mended
	Late  bool      // Due has passed
}
