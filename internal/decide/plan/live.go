package plan

import (
	"errors"
	"fmt"
	"sync"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// Live answers at once what a change to a plan does: for a hole under
// somebody's hand. It works out what follows from the change alone, and keeps
// the rest from question to question, as much as a few arenas need.
//
//	changed                 kept
//	findings, verdict       boards where a hole may stand  } as long as only
//	the picked hole's       traced lens limits             } holes change
//	wedge, light            limits of each lens in each shape of hole met
//
// The answers are the same as those of [Maker.Make]. It may be used by many at once.
type Live struct {
	maker  Maker
	mu     sync.Mutex
	ground []*ground // newest use first
	limits map[fit.Case]fit.Limits
	losses map[fit.Case][]LossRow
}

// NewLive returns a Live with nothing kept yet.
func NewLive(m Maker) *Live {
	return &Live{maker: m, limits: map[fit.Case]fit.Limits{}, losses: map[fit.Case][]LossRow{}}
}

// Question is what a page wants to know besides the findings.
type Question struct {
	Hole  string  // the hole picked; "" for none
	Lens  string  // id of the lens in it; "" for the first in use that fits
	Focal float64 // in millimetres: an end of its range; 0 for the short end
	All   bool    // the limits of every lens in use, not only of the one picked
	// Units are those that findings speak in; unknown, the document's own.
	Units unit.Maybe[unit.System]
}

// Now is the answer: how the arena stands with the change.
type Now struct {
	Proof
	Permitted []Stretch `json:"permitted"` // boards where a standard hole may stand
	Undecided []Stretch `json:"undecided"` // boards where the survey lacks a number to say
	Holes     []Mark    `json:"holes"`     // every hole, those turned off included
	Picked    *Picked   `json:"picked"`    // null when none is picked, or it is turned off
}

// Stretch is a piece of the boards; To may pass the perimeter.
type Stretch struct {
	From float64 `json:"from_m"`
	To   float64 `json:"to_m"`
}

// Mark is a hole on the map.
type Mark struct {
	ID       string       `json:"id"`
	State    string       `json:"state"` // "planned", "cut" or "off"
	Pane     string       `json:"pane"`
	Corner   string       `json:"corner"` // "" between the blue lines and on a rink without markings
	Landmark string       `json:"landmark"`
	Offset   float64      `json:"offset_m"` // from the landmark, positive toward centre ice
	Where    string       `json:"where"`    // the place in words, in the arena's units
	Station  float64      `json:"station_m"`
	Height   float64      `json:"height_m"` // of its centre above the ice
	X        float64      `json:"x_m"`      // on the boards' rink face
	Y        float64      `json:"y_m"`
	Width    float64      `json:"hole_width_mm"`
	Tall     float64      `json:"hole_height_mm"`
	Status   rules.Status `json:"status"` // the worst of the findings that name it; "pass" for one turned off
}

// Picked is the picked hole with the lens in it.
type Picked struct {
	Hole   string      `json:"hole"`
	Lens   string      `json:"lens"`
	Focal  float64     `json:"focal_mm"`
	Fits   []LensFit   `json:"fits"`   // the lens picked; every lens in use when asked for all
	Wedges []LiveWedge `json:"wedges"` // of the lens picked, and of all in use (lens "")
	Light  []light.Row `json:"light"`  // a row a zone; empty without light readings
	Loss   []LossRow   `json:"loss"`   // of the lens picked, by pan
}

// LossRow is the light that a lens loses when it is panned so far, in stops;
// null where no light comes through.
type LossRow struct {
	Pan    float64  `json:"pan_deg"`
	Centre *float64 `json:"stops_centre"` // at the frame's centre, stops
	Corner *float64 `json:"stops_corner"` // at the worst corner, stops
}

// LiveWedge is the outline of the ice that is seen at a height.
type LiveWedge struct {
	Lens   string       `json:"lens"` // "" for any lens in use
	Focal  float64      `json:"focal_mm"`
	Height float64      `json:"height_m"` // above the ice
	Points [][2]float64 `json:"points_m"` // x and y in the rink's frame, whole millimetres, closed from the last to the first
}

// ErrAsked marks an answer to a question about a hole or lens that is not there.
var ErrAsked = errors.New("the question cannot be answered")

// Try answers a question about an arena document. Errors are those of
// [arena.Document.Check], and ErrAsked.
func (l *Live) Try(doc *arena.Document, q Question) (Now, error) {
	a, err := doc.Check()
	if err != nil {
		return Now{}, err
	}
	g, err := l.groundOf(a)
	if err != nil {
		return Now{}, err
	}
	a.Units = q.Units.Or(a.Units)
	p := l.maker.prove(doc, a)
	now := Now{Proof: p, Permitted: g.permitted, Undecided: g.undecided, Holes: []Mark{}}
	for _, h := range a.Holes {
		now.Holes = append(now.Holes, markOf(a, h, Plan{Proof: p}))
	}
	if q.Hole == "" {
		return now, nil
	}
	h, ok := a.Hole(q.Hole)
	if !ok {
		return Now{}, fmt.Errorf("%w: the arena has no hole %.40q", ErrAsked, q.Hole)
	}
	if h.State == glass.Off {
		return now, nil
	}
	now.Picked, err = l.pick(a, g, h, q)
	return now, err
}

func markOf(a arena.Arena, h glass.Hole, p Plan) Mark {
	landmark, offset := nearestLandmark(a.Rink, h.Station)
	at := a.Rink.Point(h.Station)
	m := Mark{
		ID: h.ID, State: string(stateOf(h)), Pane: h.Pane, Corner: a.Rink.Corner(h.Station).String(),
		Landmark: string(landmark), Offset: offset.Metres(), Where: a.PlaceOf(h.Station).Say(a.Units),
		Station: h.Station.Metres(), Height: h.Height.Metres(), X: at.X, Y: at.Y,
		Width: h.Size.W.Millimetres(), Tall: h.Size.H.Millimetres(), Status: rules.Pass,
	}
	if h.State != glass.Off {
		m.Status = rules.Verdict(p.FindingsOf(h.ID))
	}
	return m
}

// pick works out the picked hole's part.
func (l *Live) pick(a arena.Arena, g *ground, h glass.Hole, q Question) (*Picked, error) {
	out := &Picked{Hole: h.ID, Fits: []LensFit{}, Wedges: []LiveWedge{}, Light: []light.Row{}, Loss: []LossRow{}}
	rows, at, err := l.rows(a, g, h, q)
	if err != nil {
		return nil, err
	}
	mine := rows[at]
	out.Lens, out.Focal = mine.row.Lens, mine.row.Focal
	if !q.All {
		rows = rows[at : at+1]
	}
	for _, r := range rows {
		if r.row.Fits {
			r.row.set(l.limitsOf(r.opened))
		}
		out.Fits = append(out.Fits, *r.row)
	}
	if mine.row.Fits {
		out.Loss = l.lossOf(mine.opened)
	}
	if out.Wedges, err = g.wedges(h, mine.row); err != nil {
		return nil, err
	}
	lens, _ := l.maker.Kit.Lens(mine.row.Lens)
	report, err := light.Compute(a, light.Request{
		Wanted: optics.Wanted{Shutter: unit.Known(light.UsualShutter), Stop: unit.Known(unit.Stop(mine.row.Stop))},
		Body:   l.maker.Kit.Bodies[0], Lens: unit.Known(lens), Holes: []string{h.ID},
	})
	if err != nil {
		return nil, err
	}
	for _, of := range report.Holes {
		out.Light = append(out.Light, of.Zones...)
	}
	return out, nil
}

// rows returns the lens ends in use with their opening in the hole, and which
// of them is picked.
func (l *Live) rows(a arena.Arena, g *ground, h glass.Hole, q Question) ([]fitJob, int, error) {
	o, err := a.OpeningOf(h)
	if err != nil {
		return nil, 0, err
	}
	var rows []fitJob
	picked := -1
	for _, lens := range g.lenses {
		for _, use := range fit.Ends(lens) {
			c, err := fit.FromKit(o, lens, l.maker.Kit.Bodies[0], use)
			if err != nil {
				return nil, 0, err
			}
			row := &LensFit{Lens: lens.ID, Name: lens.Name, Focal: use.Focal.Millimetres(), Stop: float64(use.Stop), Fits: c.Fits()}
			asked := q.Lens == lens.ID && (q.Focal == 0 || q.Focal == row.Focal)
			if picked < 0 && (asked || q.Lens == "" && row.Fits) {
				picked = len(rows)
			}
			rows = append(rows, fitJob{row, c})
		}
	}
	switch {
	case picked >= 0:
		return rows, picked, nil
	case q.Lens == "":
		return rows, 0, nil // none fits: the first says so
	}
	return nil, 0, fmt.Errorf("%w: no lens %.40q at %g mm is in use at this arena", ErrAsked, q.Lens, q.Focal)
}

// lensesIn returns the lenses in use, at least one.
func lensesIn(m Maker, a arena.Arena) ([]kit.Lens, error) {
	lenses, err := m.lenses(a)
	if err == nil && len(lenses) == 0 {
		err = fmt.Errorf("lenses: the kit has none; add one to it")
	}
	return lenses, err
}
