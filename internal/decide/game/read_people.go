package game

import (
	"cmp"
	"slices"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

func (rd *reader) people(n form.Node) {
	for _, item := range n.List(MaxPeople) {
		m := item.Map(personFields...)
		p := Person{
			ID: form.Parse(m.At("id"), form.ID), Outlet: form.Optional(m.At("outlet"), form.Line),
			Camera:  cmp.Or(form.Optional(m.At("camera"), form.Words(Stills, Broadcast, Remote)), Stills),
			Follows: cmp.Or(form.Optional(m.At("follows"), form.Words(Follows()...)), Both),
			Lenses:  rd.lenses(m.At("lenses")),
		}
		if p.Name = form.Optional(m.At("name"), form.Line); p.Name == "" {
			p.Name = p.ID
		}
		if works := m.At("works"); works.Present() {
			p.Works = form.Parse(works, choose.ParseEye)
		}
		p.Works.LeftEye = form.Optional(m.At("eye"), form.Words("left", "right")) == "left"
		p.Works.Elbow = form.Optional(m.At("elbow"), form.Within(leastElbow, mostElbow))
		if cannot := m.At("cannot"); cannot.Present() {
			for _, hole := range cannot.List(arena.MaxHoles) {
				p.Cannot = append(p.Cannot, known(hole, "hole", rd.ids.holes))
			}
		}
		if m.OK() && slices.Contains(rd.ids.people, p.ID) {
			m.At("id").Failf("%s is there already; give each person an id of their own", form.Quote(p.ID))
		}
		rd.People, rd.ids.people = append(rd.People, p), append(rd.ids.people, p.ID)
	}
}

// What room along the boards a person may ask for.
const leastElbow, mostElbow = 200 * unit.Millimetre, 3 * unit.Metre

// lenses reads the lenses that somebody brings, in the kit's order: all that are used at
// the arena where nobody says.
func (rd *reader) lenses(n form.Node) []string {
	asked := rd.Arena.Lenses
	if n.Present() {
		asked = nil
		for _, item := range n.List(kit.MaxLenses) {
			asked = append(asked, known(item, "lens", rd.ids.lenses))
		}
		if len(asked) == 0 && n.OK() {
			n.Failf("names no lens; leave it out for those that are used at the rink")
		}
	}
	if !n.OK() {
		return nil
	}
	lenses, err := rd.Kit.InUse(asked)
	if err != nil {
		n.Failf("the arena's lenses: %v", err)
	}
	var out []string
	for _, l := range lenses {
		out = append(out, l.ID)
	}
	return out
}

func (rd *reader) reservations(n form.Node) {
	for m := range entries(n, MaxReservations, reservationFields) {
		r := Reservation{For: form.Parse(m.At("for"), form.Words(Broadcast, Stills, Remote)),
			Rule: form.Parse(m.At("rule"), form.Line), Games: rd.picked(m.At("games")), Periods: periods(m.At("periods"), play.MostPeriods)}
		for _, hole := range m.At("holes").List(arena.MaxHoles) {
			r.Holes = append(r.Holes, rd.given(hole))
		}
		rd.Reservations = append(rd.Reservations, r)
	}
}

func (rd *reader) closed(n form.Node) {
	for m := range entries(n, MaxClosed, closedFields) {
		rd.Closed = append(rd.Closed, Closed{Hole: known(m.At("hole"), "hole", rd.ids.holes),
			Why: form.Parse(m.At("why"), form.Line), Games: rd.picked(m.At("games"))})
	}
}

func (rd *reader) requests(n form.Node) {
	for m := range entries(n, MaxRequests, requestFields) {
		r := Request{
			Who: known(m.At("who"), "person", rd.ids.people), Games: rd.picked(m.At("games")), Periods: periods(m.At("periods"), play.MostPeriods),
			Follows:   form.Optional(m.At("follows"), form.Words(Follows()...)),
			Must:      form.Optional(m.At("firm"), form.Words("must", "wish")) == "must",
			Asked:     form.Optional(m.At("asked"), parseWhen),
			Withdrawn: form.Optional(m.At("withdrawn"), form.YesNo),
			NoShow:    m.Has("came") && !form.Parse(m.At("came"), form.YesNo),
		}
		rd.Requests = append(rd.Requests, r)
	}
}

// picked reads which games are meant: all where nobody says, else ids and series.
func (rd *reader) picked(n form.Node) Games {
	if !n.Present() || n.Value() == "all" {
		return Games{All: true}
	}
	ids := slices.Concat(rd.ids.games, rd.ids.series)
	if n.Value() != "" {
		return Games{Names: []string{known(n, "game or series", ids)}}
	}
	var out Games
	for _, item := range n.List(MaxGames) {
		out.Names = append(out.Names, known(item, "game or series", ids))
	}
	if len(out.Names) == 0 && n.OK() {
		n.Failf("names no game; leave it out for all")
	}
	return out
}

// periods reads the periods that are meant, from 1 to most; none for all.
func periods(n form.Node, most int) []int {
	if !n.Present() {
		return nil
	}
	var out []int
	for _, item := range n.List(most) {
		out = append(out, item.Int(1, most))
	}
	slices.Sort(out)
	return slices.Compact(out)
}
