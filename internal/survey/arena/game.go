package arena

import (
	"strings"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
)

// Playing returns what the sampler assumes, with the games that this rink has.
func (a Arena) Playing() play.Assumptions {
	out := play.DefaultAssumptions()
	out.Game = a.Game
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
