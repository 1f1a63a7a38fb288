package game

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/play"
)

// games reads the schedule that the document names and the games that stand in it; one of
// both adds to the schedule's what it says.
func (rd *reader) games(m form.Map, open Files) error {
	rd.place, rd.named = map[string]int{}, map[string]bool{}
	if err := rd.schedule(m.At("schedule"), open); err != nil || !m.OK() {
		return err
	}
	for k, g := range rd.Games {
		rd.place[g.ID] = k
	}
	if n := m.At("games"); n.Present() {
		for _, item := range n.List(MaxGames) {
			rd.game(item)
		}
	} else if !m.Has("schedule") {
		m.At("games").Failf("is missing; list the games, or name a schedule")
	}
	if !m.OK() {
		return nil
	}
	if len(rd.Games) == 0 {
		m.At("games").Failf("holds no game")
	}
	for k := range rd.Games {
		rd.settle(m.At("games"), &rd.Games[k])
	}
	slices.SortFunc(rd.Games, func(a, b Game) int { return cmp.Or(a.Start.Compare(b.Start), cmp.Compare(a.ID, b.ID)) })
	return nil
}

// game reads a game of the document over one of the schedule that has its id.
func (rd *reader) game(item form.Node) {
	m := item.Map(gameFields...)
	id := form.Parse(m.At("id"), form.Line)
	k, scheduled := rd.place[id]
	if !scheduled {
		k, rd.Games = len(rd.Games), append(rd.Games, Game{ID: id, Periods: Periods})
		rd.place[id] = k
	} else if rd.named[id] && m.OK() {
		m.At("id").Failf("%s is there already; give each game an id of its own", form.Quote(id))
	}
	rd.names(id)
	g := &rd.Games[k]
	for _, f := range []struct {
		name string
		to   *string
	}{{"series", &g.Series}, {"home", &g.Home}, {"away", &g.Away}} {
		if n := m.At(f.name); n.Present() || f.name != "series" && *f.to == "" {
			*f.to = form.Parse(n, form.Line)
		}
	}
	if n := m.At("marks"); n.Present() {
		g.Marks = nil
		for _, item := range n.List(MaxMarks) {
			g.Marks = append(g.Marks, form.Parse(item, form.Line))
		}
	}
	date, start := m.At("date"), m.At("start")
	if g.Start.IsZero() || date.Present() || start.Present() {
		g.Start = form.Parse(date, parseDay).Add(form.Parse(start, parseTime))
	}
	if n := m.At("periods"); n.Present() {
		g.Periods = n.Int(1, play.MostPeriods)
	}
	if n := m.At("home-attacks"); n.Present() {
		g.Ends = ends(n)
	}
	if n := m.At("off"); n.Present() {
		g.Off = form.Parse(n, form.YesNo)
	}
	if n := m.At("times"); n.Present() {
		rd.times(n, g)
	}
}

// names counts a game among the ids.
func (rd *reader) names(id string) { rd.ids.games, rd.named[id] = append(rd.ids.games, id), true }

// times reads when the stages of a game's day begin.
func (rd *reader) times(n form.Node, g *Game) {
	m := n.Map(stageNames()...)
	g.Day = nil
	for _, name := range stageNames() {
		if at := m.At(name); at.Present() {
			g.stage(name, form.Parse(at, parseTime))
		}
	}
	if err := g.inOrder(); err != nil && m.OK() {
		n.Failf("%v", err)
	}
}

// stage sets when a stage of the day begins. What begins long before the warm-up of an
// evening's game is the day's; a lock-up before the game's start is after midnight.
func (g *Game) stage(name string, at time.Duration) {
	day := time.Date(g.Start.Year(), g.Start.Month(), g.Start.Day(), 0, 0, 0, 0, time.UTC)
	when := day.Add(at)
	if name != Practice && name != WarmUp && when.Before(g.Start) {
		when = when.AddDate(0, 0, 1)
	}
	g.Day = append(g.Day, Stage{name, when})
}

// inOrder reports stages that do not follow one another.
func (g *Game) inOrder() error {
	for k := 1; k < len(g.Day); k++ {
		if a, b := g.Day[k-1], g.Day[k]; !b.At.After(a.At) {
			return fmt.Errorf("%s at %s is not after %s at %s; write the times of the day in their order", b.Name, b.At.Format("15:04"), a.Name, a.At.Format("15:04"))
		}
	}
	return nil
}

// ends reads toward which end the home team plays: "B", or a list of an end for each
// period.
func ends(n form.Node) play.Ends {
	if n.Value() != "" {
		return form.Parse(n, parseEnds)
	}
	var words []string
	for _, item := range n.List(play.MostPeriods) {
		words = append(words, item.Choice("A", "B"))
	}
	if !n.OK() {
		return play.Ends{}
	}
	e, err := parseEnds(strings.Join(words, " "))
	if err != nil {
		n.Failf("%v", err)
	}
	return e
}

// settle takes the ends that the arena knows for a game that says none, and counts the
// game among the ids.
func (rd *reader) settle(n form.Node, g *Game) {
	if !g.Ends.Said() {
		g.Ends, g.EndsAssumed = rd.Arena.Game.Ends, true
	}
	if !g.Ends.Said() {
		n.Failf("game %s, %s, says no ends: write home-attacks: B, the end that the home team plays toward in the first period, or game: {home-defends: A} in the arena", form.Quote(g.ID), g.Teams())
	}
	if !rd.named[g.ID] {
		rd.names(g.ID)
	}
	if g.Series != "" && !slices.Contains(rd.ids.series, g.Series) {
		rd.ids.series = append(rd.ids.series, g.Series)
	}
}
