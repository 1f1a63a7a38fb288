package holes

import (
	"errors"
	"net/url"
	"strings"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// exactPlace is a hole's place as it is typed: so far from a landmark, so high.
type exactPlace struct {
	From           []shell.Choice // "" is the beginning of the stations, else "B-bench goal-line"
	Ways           []shell.Choice // "past" is toward centre ice
	Offset, Height string         // lengths with their units
}

// exactOf returns a hole's place in the arena's units.
func exactOf(a arena.Arena, h glass.Hole) exactPlace {
	at := a.PlaceOf(h.Station)
	station, plain := at.Station.Get()
	p := exactPlace{Height: h.Height.FormatFine(a.Units), Offset: max(at.Offset, -at.Offset).FormatFine(a.Units)}
	if plain {
		p.Offset = station.FormatFine(a.Units)
	}
	p.From = append(p.From, shell.Choice{Value: "", Name: "station 0", Chosen: plain})
	for _, c := range rink.Corners() {
		for _, l := range rink.Landmarks() {
			if _, ok := a.Rink.Landmark(c, l); ok {
				p.From = append(p.From, shell.Choice{Value: c.String() + " " + string(l), Name: c.String() + " " + l.Words(), Chosen: !plain && at.Corner == c && at.Landmark == l})
			}
		}
	}
	back := at.Offset < 0
	p.Ways = []shell.Choice{{Value: "past", Name: "centre ice", Chosen: !back}, {Value: "back", Name: "the end boards", Chosen: back}}
	return p
}

// exactEdits puts a hole where somebody typed that it shall be. What was left as it
// was shown is left as it is: the page rounds.
func exactEdits(f url.Values, a arena.Arena, h glass.Hole) ([]edit.Edit, error) {
	shown, to, changed := exactOf(a, h), edit.Spot{}, false
	if f.Get("offset") != shown.Offset || !chosen(shown.From, f.Get("from")) || !chosen(shown.Ways, f.Get("way")) {
		if err := alongTo(&to, f); err != nil {
			return nil, err
		}
		changed = true
	}
	if text := f.Get("height"); text != shown.Height {
		high, err := unit.ParseLength(text)
		if err != nil {
			return nil, err
		}
		metres := high.Metres()
		to.Height, changed = &metres, true
	}
	if !changed {
		return nil, errors.New("type another place or height first")
	}
	return []edit.Edit{{Do: edit.Move, Hole: h.ID, To: &to}}, nil
}

// alongTo reads where along the boards a hole shall be.
func alongTo(to *edit.Spot, f url.Values) error {
	off, err := unit.ParseLength(f.Get("offset"))
	if err != nil {
		return err
	}
	metres := off.Metres()
	corner, landmark, ok := strings.Cut(f.Get("from"), " ")
	if !ok {
		to.Station = &metres
		return nil
	}
	if f.Get("way") == "back" {
		metres = -metres
	}
	to.Corner, to.Landmark, to.Offset = corner, landmark, metres
	return nil
}

// chosen reports whether a value is the one that a list shows as chosen.
func chosen(list []shell.Choice, value string) bool {
	for _, c := range list {
		if c.Chosen {
			return c.Value == value
		}
	}
	return false
}
