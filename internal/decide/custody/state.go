package custody

// State is where a cover is.
type State string

// The states of a cover. A hole is closed while a cover of its own is [In], and open otherwise.
const (
	In       State = "in"       // in its hole
	Out      State = "out"      // taken out; at the hole
	Stored   State = "stored"   // in store, and counted
	Missing  State = "missing"  // nobody knows where
	Damaged  State = "damaged"  // not to be used
	Returned State = "returned" // found or mended, and not yet in its hole or in store
)

// States lists the states.
func States() []State { return []State{In, Out, Stored, Missing, Damaged, Returned} }

// accounted reports whether somebody who counts covers finds this one where it may be overnight.
func (s State) accounted() bool { return s == In || s == Stored }

// Mishap is what an incident is.
type Mishap string

// The mishaps.
const (
	BrokenPane   Mishap = "broken-pane"
	PuckThrough  Mishap = "puck-through"
	StickThrough Mishap = "stick-through"
	ElbowThrough Mishap = "elbow-through"
	Injury       Mishap = "injury"
	NearMiss     Mishap = "near-miss"
)

// Mishaps lists the mishaps.
func Mishaps() []Mishap {
	return []Mishap{BrokenPane, PuckThrough, StickThrough, ElbowThrough, Injury, NearMiss}
}
