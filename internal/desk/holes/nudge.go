package holes

import (
	"errors"
	"fmt"
	"strings"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/glass"
)

// nudgeEdits moves a hole a little: left and right as one stands behind the
// glass, that is along falling and rising stations.
func nudgeEdits(act string, a arena.Arena, h glass.Hole) ([]edit.Edit, error) {
	step := nudgeStep(a.Units).Metres()
	station, height := h.Station.Metres(), h.Height.Metres()
	to := edit.Spot{}
	switch act {
	case "left", "right":
		if act == "left" {
			step = -step
		}
		station = a.Rink.Wrap(unit.Length(station + step)).Metres()
		to.Station = &station
	case "up", "down":
		if act == "down" {
			step = -step
		}
		height += step
		to.Height = &height
	case "pane-left", "pane-right":
		way := 1
		if act == "pane-left" {
			way = -1
		}
		middle, err := paneBeside(a, h, way)
		if err != nil {
			return nil, err
		}
		to.Station = &middle
	default:
		return nil, fmt.Errorf("nobody can do %.20q to a hole", act)
	}
	return []edit.Edit{{Do: edit.Move, Hole: h.ID, To: &to}}, nil
}

// paneBeside returns the station, in metres, of the middle of the next pane to the
// right (way 1) or left (-1) that is wide enough for the hole and no door.
func paneBeside(a arena.Arena, h glass.Hole, way int) (float64, error) {
	n, at := len(a.Panes), -1
	for i, p := range a.Panes {
		if p.ID == h.Pane {
			at = i
		}
	}
	if at < 0 {
		return 0, errors.New("the hole stands in no pane")
	}
	for k := 1; k < n; k++ {
		p := a.Panes[((at+way*k)%n+n)%n]
		if p.Gate == "" && p.Width > h.Size.W {
			return a.Rink.Wrap(p.From + p.Width/2).Metres(), nil
		}
	}
	return 0, errors.New("no other pane is wide enough for this hole")
}

// freeName returns a name for a new hole: like the given one with the next free
// number at its end.
func freeName(a arena.Arena, like string) string {
	stem := strings.TrimRight(like, "0123456789")
	if stem == "" {
		stem = "H"
	}
	for n := 1; ; n++ {
		name := fmt.Sprintf("%s%d", stem, n)
		if _, taken := a.Hole(name); !taken {
			return name
		}
	}
}

// placeOption is a place that a new hole may be given.
type placeOption struct {
	Station string // metres
	Words   string
	May     bool // a rule's standard hole may stand there, and none does
}

// placesFor lists places for a new hole: permitted stretches without a hole
// first, then the landmarks.
func placesFor(a arena.Arena, now plan.Now) []placeOption {
	var out []placeOption
	for _, s := range now.Permitted {
		middle := (s.From + s.To) / 2
		free := true
		for _, m := range now.Holes {
			off := a.Rink.Wrap(m.Station - s.From)
			free = free && (off > s.To-s.From || m.State == glass.Off)
		}
		if free {
			out = append(out, spotFor(a, middle, true))
		}
	}
	for _, p := range a.Panes {
		if p.Gate == "" {
			out = append(out, placeOption{shell.Metres(a.Rink.Wrap(p.From + p.Width/2).Metres()), "pane " + p.ID + ", " + a.PlaceOf(p.From+p.Width/2).Say(a.Units), false})
		}
	}
	return out
}

func spotFor(a arena.Arena, s unit.Length, may bool) placeOption {
	s = a.Rink.Wrap(s)
	return placeOption{shell.Metres(s.Metres()), a.PlaceOf(s).Say(a.Units), may}
}
