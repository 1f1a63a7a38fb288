package choosing

import (
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/decide/choose"
)

// shown is what of an answer is looked at: the best set, one of the next best or a
// step. Its name stands in addresses and forms: "0", "2", "step-3", "money-1".
type shown struct {
	name string
	what string       // for people
	n    int          // of the sets of the answer below
	step *choose.Step // nil for the best and the next best
	of   choose.Answer
}

// The names of steps: of the ladder, of what money buys.
const (
	stepName  = "step-"
	moneyName = "money-"
)

// usualLook is the name of what is looked at first: the best step that keeps all
// that is cut, which costs no pane; the best set where there is none.
func usualLook(a choose.Answer) string {
	for k, step := range slices.Backward(a.Ladder) {
		if step.Kind == choose.KeepStep {
			return stepName + strconv.Itoa(k)
		}
	}
	return "0"
}

// pick returns what a name means in an answer; ok is false where it has none such.
// A step stands as the only next best set of the answer returned with it.
func pick(a choose.Answer, name string) (s shown, ok bool) {
	for prefix, steps := range map[string][]choose.Step{stepName: a.Ladder, moneyName: a.Frontier} {
		text, is := strings.CutPrefix(name, prefix)
		if !is {
			continue
		}
		k, err := strconv.Atoi(text)
		if err != nil || k < 0 || k >= len(steps) {
			return shown{}, false
		}
		step := steps[k]
		a.Alternatives = []choose.Option{{Value: step.Value, Bound: step.Bound, Holes: step.Holes}}
		return shown{name, stepWords(step), 1, &step, a}, true
	}
	n, err := strconv.Atoi(name)
	switch {
	case err != nil || n < 0 || n > len(a.Alternatives):
		return shown{}, false
	case n > 0:
		return shown{name, "next best set " + name, n, nil, a}, true
	}
	return shown{name, "the best set", 0, nil, a}, true
}

func (s shown) set() []choose.Candidate { return s.of.Set(s.n) }

// crews returns who of the set works when, where not all of it is worked at once.
func (s shown) crews() []choose.Crew {
	switch {
	case s.step != nil:
		return s.step.Crews
	case s.n == 0:
		return s.of.Crews
	}
	return nil
}

// left returns the arena's holes that the set leaves out.
func (s shown) left() (out []leftOut) {
	stays := map[string]bool{}
	for _, c := range s.set() {
		stays[c.Hole.ID] = true
	}
	for _, h := range s.of.Arena.Working() {
		if !stays[h.ID] {
			out = append(out, leftOut{h})
		}
	}
	return out
}
