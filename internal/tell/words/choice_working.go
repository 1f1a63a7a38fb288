package words

import (
	"fmt"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// ChoiceWorking says for whom the heights are, and which holes of the best set that
// person cannot work; nothing where one height was tried.
func ChoiceWorking(a choose.Answer, sys unit.System) (lines []string) {
	w, ok := a.Working.Get()
	if !ok {
		return nil
	}
	floor := fmt.Sprintf("the floor %s above the ice", w.Floor.Format(sys))
	switch {
	case w.FloorAssumed:
		floor = "the floor taken as level with the ice, since nobody surveyed it (boards: floor)"
	case w.Floor < 0:
		floor = fmt.Sprintf("the floor %s below the ice", (-w.Floor).Format(sys))
	}
	lines = append(lines, fmt.Sprintf("Heights are for a person %s, eye %s above the floor, %s: at ease at %s, able from %s to %s. A height farther from that is taken only where it brings more than the moments leave open.",
		posture(w.Posture), w.Eye.Format(sys), floor, w.Best.Format(sys), w.Low.Format(sys), w.High.Format(sys)))
	if lost := a.Bound - a.Value; a.Status == solve.Optimal && lost > 10*solve.Tolerance {
		lines[0] += fmt.Sprintf(" That gives up %.4f of the value.", lost)
	}
	var out []string
	for _, h := range a.Holes {
		if !w.Works(h.Hole.Height) {
			out = append(out, fmt.Sprintf("%s (%s)", h.Words(sys), h.Hole.Height.Format(sys)))
		}
	}
	if len(out) > 0 {
		lines = append(lines, "That person cannot work "+say.Names(out)+".")
	}
	return lines
}

func posture(p choose.Posture) string {
	if p == choose.InChair {
		return "in a wheelchair"
	}
	return string(p)
}
