package choose

import (
	"slices"

	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/glass"
)

// Accept returns the edits that make a set of the answer part of the arena's
// document: the very holes that were proved, each at its place, planned. n names
// the set as [Answer.Set] does, take the new holes by their ids; rest turns off
// the arena's holes that the set leaves out. With all of a set taken and the rest
// turned off the document keeps a.Sets, and so it does with fewer of the set.
func (a Answer) Accept(n int, take []string, rest bool) []edit.Edit {
	var out []edit.Edit
	set := a.Set(n)
	for _, h := range a.Arena.Working() { // first, so that a new hole never meets one that goes
		if rest && !slices.ContainsFunc(set, func(c Candidate) bool { return !c.New && c.Hole.ID == h.ID }) {
			out = append(out, edit.Edit{Do: edit.Turn, Hole: h.ID, State: glass.Off})
		}
	}
	for _, c := range set {
		if !c.New || !slices.Contains(take, c.Hole.ID) {
			continue
		}
		to := edit.Spot{Corner: c.Corner(), Landmark: string(c.Place.Landmark), Offset: c.Place.Offset.Metres()}
		if s, plain := c.Place.Station.Get(); plain {
			station := s.Metres()
			to = edit.Spot{Station: &station}
		}
		out = append(out, edit.Edit{Do: edit.Add, Like: &c.Hole, To: &to})
	}
	return out
}
