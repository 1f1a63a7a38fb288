package arena

import (
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// Assumption is a length that the survey lacks, and what stands in for it.
type Assumption struct {
	Of     string // what it is of: "pane P4", "hole B1", "boards"
	Field  string // as the arena file has it: "thickness"
	Value  unit.Length
	Reason say.Sentence // what is missing, what is taken, and why
}

// Fact is a length of an opening: surveyed, or assumed.
type Fact struct {
	Value   unit.Length
	assumed *Assumption // nil: surveyed
}

// Surveyed reports that somebody measured the length.
func (f Fact) Surveyed() bool { return f.assumed == nil }

// Lacking says what the survey lacks, for those who refuse to assume: "the
// thickness of pane P4 is not recorded". It says nothing of a surveyed length.
func (f Fact) Lacking() say.Sentence {
	if f.assumed == nil {
		return say.Sentence{}
	}
	return say.Make("the %s of %s is not recorded", f.assumed.Field, f.assumed.Of)
}

// Assumed returns the assumptions among the facts that an answer rests on.
func Assumed(facts ...Fact) []Assumption {
	var out []Assumption
	for _, f := range facts {
		if f.assumed != nil {
			out = append(out, *f.assumed)
		}
	}
	return out
}

// Reasons sets the assumptions' sentences.
func Reasons(list []Assumption, sys unit.System) []string {
	out := make([]string, len(list))
	for i, a := range list {
		out[i] = a.Reason.In(sys)
	}
	return out
}

func surveyed(v unit.Length) Fact { return Fact{Value: v} }

// fact is a length that was surveyed, or else value because of why.
func fact(m unit.Maybe[unit.Length], of, field string, value unit.Length, why string) Fact {
	if v, ok := m.Get(); ok {
		return surveyed(v)
	}
	f := Fact{value, &Assumption{Of: of, Field: field, Value: value}}
	f.assumed.Reason = say.Make("%s: %s is taken, %s", f.Lacking(), say.Fine(value), why)
	return f
}
