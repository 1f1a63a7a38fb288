package night

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/tell/words"
)

// gamePage is one game: who sits where in each period, why, and what else could be.
type gamePage struct {
	nightPage
	Game    game.Game
	Toward  [2]string // toward which ends the home team and its guests play, by period
	Periods []int
	Trouble string // why nobody can be seated; ""
	Holes   []holeRow
	People  []personRow
	Kept    []string // which holes are kept for whom, by what rule
	Proof   string
	Next    string // the next best seating; "" for none
	Pick    *picked
	Redo    []redo // seats that the plan changed under
	Since   int    // the version of the arena that they were given by
	night   shelf.Night
	asks    []game.Ask
	links   map[string]string // of cards, by person
}

// holeRow is who works a hole, by period.
type holeRow struct {
	Hole, Closed string
	Seats        []seatCell
}

// seatCell is one hole in one period.
type seatCell struct {
	Who, Name, URL string // "" where it is empty
	ByHand         bool
	Kept           string // for whose cameras the hole is kept; ""
}

// personRow is what the game brings one person.
type personRow struct {
	game.Ask
	Holes  string // by period
	ByHand bool
	Why    string // what speaks for their first hole, or why they have none
	Share  string // of the best that they could have had alone
	URL    string
	Card   string // the link of their card; "" once the day is over
}

func (d area) gamePage(w http.ResponseWriter, r *http.Request) error {
	page, err := d.openGame(r)
	if err != nil {
		return err
	}
	if page.Redo, page.Since, err = d.toRedo(r.Context(), page.nightPage, page.Game); err != nil {
		return err
	}
	if page.Trouble == "" && !page.Game.Off {
		page.tell()
		if next, is, err := seat.Next(r.Context(), &page.night.Night, page.night.Before, page.night.Seating); err != nil {
			return err
		} else if is {
			page.Next = page.nextWords(next)
		}
		if who := r.FormValue("who"); who != "" {
			if page.Pick, err = page.pick(r, who); err != nil {
				return err
			}
		}
	}
	return d.Page(w, r, http.StatusOK, "game.tmpl", page)
}

// openGame opens the game of a request with its seats.
func (d area) openGame(r *http.Request) (gamePage, error) {
	base, err := d.openSeason(r, "games")
	if err != nil {
		return gamePage{}, err
	}
	page := gamePage{nightPage: base}
	if page.Game, err = base.gameOf(r); err != nil {
		return page, err
	}
	page.Title = page.Game.Home + " – " + page.Game.Away
	page.Toward = [2]string{Toward(page.Game, 0), Toward(page.Game, 1)}
	for p := 1; p <= page.Game.Periods; p++ {
		page.Periods = append(page.Periods, p)
	}
	page.asks = page.Season.Asks(page.Game)
	if page.links, err = d.links(r.Context(), page); err != nil {
		return page, err
	}
	if page.night, err = d.Shelf.Night(r.Context(), base.games, page.Game.ID); err != nil {
		if r.Context().Err() != nil {
			return page, err
		}
		page.Trouble = shell.WhyNot(err)
	}
	return page, nil
}

// tell fills in who sits where.
func (p *gamePage) tell() {
	s, closed := p.night.Seating, p.Season.Closures(p.Game)
	for _, hole := range p.Season.Holes {
		row := holeRow{Hole: hole, Closed: closed[hole]}
		for _, period := range p.Periods {
			row.Seats = append(row.Seats, p.cell(hole, period))
		}
		p.Holes = append(p.Holes, row)
	}
	for i, a := range p.asks {
		o := s.People[i]
		row := personRow{Ask: a, Card: p.links[a.ID], Share: percent(o.Share()), URL: p.To("/game", "game", p.Game.ID, "who", a.ID) + "#pick"}
		holes := s.Holes(a.ID, p.Game.Periods)
		row.Holes = holesWords(holes)
		row.ByHand = slices.ContainsFunc(byHand(p.Season, p.Game, a.ID), func(h string) bool { return h != "" })
		if k := slices.IndexFunc(holes, func(h string) bool { return h != "" }); k >= 0 {
			row.Why = shell.Sentence(p.Season.Worth(p.night.Table, p.Game, a, k+1, holes[k]).Why().In(p.Units()))
		} else {
			o.Who = a.Name
			row.Why = strings.Join(words.NoSeats(seat.Seating{People: []seat.Outcome{o}}), "")
		}
		p.People = append(p.People, row)
	}
	p.Kept = words.KeptHoles(p.keptByName(s))
	p.Proof = words.SeatProof(s.Proof)
}

// keptByName is what a seating says of holes that are kept, with people's names for ids.
func (p *gamePage) keptByName(s seat.Seating) (out seat.Seating) {
	for _, k := range s.Kept {
		k.For = p.names(k.For)
		out.Kept = append(out.Kept, k)
	}
	for _, u := range s.Unkept {
		u.For = p.names(u.For)
		out.Unkept = append(out.Unkept, u)
	}
	return out
}

func (p *gamePage) names(ids []string) []string {
	out := make([]string, len(ids))
	for i, id := range ids {
		out[i] = p.Who(id)
	}
	return out
}

// cell tells one hole in one period.
func (p *gamePage) cell(hole string, period int) (c seatCell) {
	at := seat.Seat{Period: period, Hole: hole}
	for _, s := range p.night.Seating.Seats {
		if s.Period == period && s.Hole == hole {
			at.Who = s.Who
			c = seatCell{Who: s.Who, Name: p.Who(s.Who), URL: p.To("/game", "game", p.Game.ID, "who", s.Who) + "#pick"}
		}
	}
	c.ByHand = at.Who != "" && slices.Contains(p.night.Night.Fixed, at)
	for _, k := range p.night.Night.Kept {
		if k.Hole == hole && (k.Period == period || k.Period == 0) {
			c.Kept = strings.Join(p.names(k.For), ", ")
		}
	}
	return c
}

// nextWords tells the second best seating.
func (p *gamePage) nextWords(next seat.Seating) string {
	var parts []string
	for _, c := range seat.Changes(p.night.Seating, next) {
		parts = append(parts, p.Who(c.Who)+": "+holesWords(c.From)+" becomes "+holesWords(c.To))
	}
	return strings.Join(parts, "; ")
}

// holesWords tells the holes of periods: "B1" throughout, else "B1 A1 -".
func holesWords(holes []string) string {
	out := slices.Clone(holes)
	for k := range out {
		if out[k] == "" {
			out[k] = "–"
		}
	}
	if len(slices.Compact(slices.Clone(out))) == 1 {
		return out[0]
	}
	return strings.Join(out, " ")
}

func percent(share float64) string { return strconv.Itoa(int(100*share+0.5)) + " %" }
