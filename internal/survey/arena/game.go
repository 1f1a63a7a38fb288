package arena

import (
	"strings"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
)

// Playing returns what the sampler assumes, with the games that this rink has.
func (a Arena) Playing() play.Assumptions {
	out := play.DefaultAssumptions()
	out.Game = a.Game
	return out
}

// Goals returns the goal frames as games are played here: those of the rink's ends, or of
// small games across the ice.
func (a Arena) Goals() []rink.Goal {
	out := a.Rink.Goals()
	if !a.Game.CrossIce || len(out) == 0 {
		return out
	}
	lay, end := play.Field(a.Rink, a.Game), map[bool]string{true: "B", false: "A"}
	out = nil
	for _, g := range lay.Goals() {
		post, back := geom.Vec2{X: lay.GoalHalf * g.In.Y, Y: lay.GoalHalf * g.In.X}, g.Line.Add(g.In.Scale(lay.GoalDepth))
		out = append(out, rink.Goal{
			End: end[g.Line.X > 0], Posts: [2]geom.Vec2{g.Line.Sub(post), g.Line.Add(post)},
			Back: [2]geom.Vec2{back.Sub(post), back.Add(post)}, Height: lay.GoalHeight,
		})
	}
	return out
}

// game reads what the rink says of its games; the zones are read already.
func (rd *reader) game(n form.Node) {
	if !n.Present() {
		return
	}
	m := n.Map(gameFields...)
	if o := m.At("officials"); o.Present() {
		rd.a.Game.Officials = o.Int(2, 4)
	}
	count := func(name string) unit.Maybe[int] {
		if o := m.At(name); o.Present() {
			return unit.Known(o.Int(0, 4))
		}
		return unit.Maybe[int]{}
	}
	rd.a.Game.Referees, rd.a.Game.Linesmen = count("referees"), count("linesmen")
	if err := rd.a.Game.Check(); err != nil && m.OK() {
		m.At("referees").Failf("%v", err)
	}
	rd.a.Game.CrossIce = form.Optional(m.At("cross-ice"), form.YesNo)
	rd.a.Game.Opposite = form.Optional(m.At("benches"), form.Words("one side", "opposite")) == "opposite"
	switch form.Optional(m.At("home-defends"), form.Words("A", "B")) {
	case "A":
		rd.a.Game.Ends = play.EndsFrom(+1)
	case "B":
		rd.a.Game.Ends = play.EndsFrom(-1)
	}
	if m.At("benches").Present() {
		rd.a.Game.Home, rd.a.Game.Guests = rd.bank(false), rd.bank(true)
	}
}

// bank finds a team's bench among the zones: by its name, which begins with home, or
// with guest, away or visitor; unknown where no zone is called so.
func (rd *reader) bank(guests bool) unit.Maybe[play.Bank] {
	for _, z := range rd.a.Zones {
		name := strings.ToLower(z.ID)
		theirs := strings.HasPrefix(name, "guest") || strings.HasPrefix(name, "away") || strings.HasPrefix(name, "visitor")
		if z.Kind != "bench" || guests != theirs || !guests && !strings.HasPrefix(name, "home") {
			continue
		}
		long := rd.a.Rink.Wrap(z.To - z.From)
		middle := rd.a.Rink.Point(rd.a.Rink.Wrap(z.From + long/2))
		return unit.Known(play.Bank{Middle: middle.X, Half: long.Metres() / 2})
	}
	return unit.Maybe[play.Bank]{}
}
