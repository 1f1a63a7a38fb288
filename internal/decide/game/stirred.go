package game

import (
	"reflect"
	"slices"
)

// Stirred returns whether a game's seating problem may be another one than in an earlier
// season of the same arena, kit and rules: what was asked, closed, reserved or given for it
// changed, or something that concerns every game.
func (s Season) Stirred(was Season) func(Game) bool {
	if !slices.Equal(s.Holes, was.Holes) || s.MoveCost != was.MoveCost || s.WholeGame != was.WholeGame || s.Closing != was.Closing ||
		!reflect.DeepEqual(s.People, was.People) {
		return func(Game) bool { return true }
	}
	var picks []Games
	for _, r := range between(was.Requests, s.Requests) {
		picks = append(picks, r.Games)
	}
	for _, r := range between(was.Reservations, s.Reservations) {
		picks = append(picks, r.Games)
	}
	for _, c := range between(was.Closed, s.Closed) {
		picks = append(picks, c.Games)
	}
	for _, f := range between(was.Fixed, s.Fixed) {
		picks = append(picks, Games{Names: []string{f.Game}})
	}
	return func(g Game) bool {
		return slices.ContainsFunc(picks, func(p Games) bool { return p.Has(g) })
	}
}

// between returns what two lists have between their common beginning and their common end.
func between[T any](was, is []T) []T {
	for len(was) > 0 && len(is) > 0 && reflect.DeepEqual(was[0], is[0]) {
		was, is = was[1:], is[1:]
	}
	for len(was) > 0 && len(is) > 0 && reflect.DeepEqual(was[len(was)-1], is[len(is)-1]) {
		was, is = was[:len(was)-1], is[:len(is)-1]
	}
	return slices.Concat(was, is)
}
