package wire

import (
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Now is how an arena stands with a change that is not saved.
type Now struct {
	Proof
	Permitted []Stretch      `json:"permitted"` // boards where a standard hole may stand
	Undecided []Stretch      `json:"undecided"` // boards where the survey lacks a number to say
	Holes     []SurveyedHole `json:"holes"`     // every hole, those turned off included
	Picked    *Picked        `json:"picked"`    // null when none is picked, or it is turned off
}

// Stretch is a piece of the boards; To may pass the perimeter.
type Stretch struct {
	From float64 `json:"from_m"`
	To   float64 `json:"to_m"`
}

// SurveyedHole is a hole on the map.
type SurveyedHole struct {
	ID       string       `json:"id"`
	State    string       `json:"state"` // "planned", "cut" or "off"
	Pane     string       `json:"pane"`
	Corner   string       `json:"corner"` // "" between the blue lines and on a rink without markings
	Landmark string       `json:"landmark"`
	Offset   float64      `json:"offset_m"` // from the landmark, positive toward centre ice
	Where    string       `json:"where"`    // the place in words
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
	Light  []LightRow  `json:"light"`  // a row a zone; empty without light readings
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

// NowOf encodes an answer, with sentences in the system's units.
func NowOf(n plan.Now, sys unit.System) Now {
	out := Now{Proof: ProofOf(n.Proof, sys), Permitted: stretches(n.Permitted), Undecided: stretches(n.Undecided), Holes: []SurveyedHole{}}
	for _, m := range n.Holes {
		out.Holes = append(out.Holes, SurveyedHole{
			ID: m.ID, State: string(m.State), Pane: m.Pane,
			Corner: m.Place.Corner.String(), Landmark: string(m.Place.Landmark), Offset: m.Place.Offset.Metres(), Where: m.Place.Say(sys),
			Station: m.Station.Metres(), Height: m.Height.Metres(), X: m.At.X, Y: m.At.Y,
			Width: m.Size.W.Millimetres(), Tall: m.Size.H.Millimetres(), Status: m.Status,
		})
	}
	if p := n.Picked; p != nil {
		at := p.Fit()
		out.Picked = &Picked{
			Hole: p.ID, Lens: at.Lens.ID, Focal: at.Focal.Millimetres(), Fits: fitsOf(p.Fits), Wedges: []LiveWedge{},
			Light: rowsOf(p.Light), Loss: []LossRow{},
		}
		for _, w := range p.Wedges {
			out.Picked.Wedges = append(out.Picked.Wedges, wedgeOf(w))
		}
		for _, r := range p.Loss {
			out.Picked.Loss = append(out.Picked.Loss, LossRow{r.Angle.Degrees(), Stops(r.Centre), Stops(r.Corner)})
		}
	}
	return out
}

func stretches(of []rules.Interval) []Stretch {
	out := make([]Stretch, len(of))
	for i, s := range of {
		out[i] = Stretch{s.From.Metres(), s.To.Metres()}
	}
	return out
}

func wedgeOf(w plan.Wedge) LiveWedge {
	out := LiveWedge{Lens: w.Lens, Focal: w.Focal.Millimetres(), Height: sight.PuckHeight.Metres(), Points: [][2]float64{}}
	for _, p := range w.Polygon() {
		out.Points = append(out.Points, [2]float64{toMillimetre(p.X), toMillimetre(p.Y)})
	}
	return out
}

// toMillimetre rounds metres to a whole millimetre: an outline on a map is
// drawn, not reckoned with, and goes over the wire at every step of a drag.
func toMillimetre(metres float64) float64 { return math.Round(metres*1000) / 1000 }

// Stops returns a transmission as stops lost, nil when nothing comes through.
func Stops(t float64) *float64 {
	s, ok := fit.Stops(t)
	if !ok {
		return nil
	}
	return &s
}

// ReachMap is the map of what a hole sees, cell by cell.
type ReachMap struct {
	Hole    string  `json:"hole"`
	Step    float64 `json:"step_m"`
	Columns int     `json:"columns"` // along the rink
	Rows    int     `json:"rows"`    // across
	X       float64 `json:"x_m"`     // middle of the first cell, rink frame
	Y       float64 `json:"y_m"`
	Height  float64 `json:"height_m"` // above the ice
	Lenses  int     `json:"lenses"`   // ends of lenses in use
	// Cells is a byte for each cell, row by row from the bench side: how many of
	// the lenses can be aimed at it, OffIce for a cell that is no ice. JSON has it
	// in base64.
	Cells   []byte   `json:"cells"`
	Share   float64  `json:"reach_share"`   // of the ice that some lens can be aimed at, 0 to 1
	Blind   float64  `json:"blind_strip_m"` // mean width of the strip along the near boards that is not seen
	Assumed []string `json:"assumed"`       // what stood in for numbers that the survey lacks
}

// OffIce marks a cell of a reach map that is no ice.
const OffIce = 255

// ReachMapOf encodes the first layer of what a hole sees.
func ReachMapOf(r sight.Reach, sys unit.System) ReachMap {
	g, layer := r.Grid, r.Layers[0]
	first := g.At(0, 0)
	out := ReachMap{
		Hole: r.Hole, Step: g.Step, Columns: g.Columns, Rows: g.Rows, X: first.X, Y: first.Y,
		Height: layer.Height.Metres(), Lenses: len(r.Lenses), Share: layer.Share, Blind: r.Blind.Mean,
		Cells: make([]byte, g.Columns*g.Rows), Assumed: arena.Reasons(r.Assumed, sys),
	}
	for row := range g.Rows {
		from, to := g.Run(row)
		for column := range g.Columns {
			i := g.Index(column, row)
			out.Cells[i] = OffIce
			if column >= from && column < to {
				out.Cells[i] = byte(layer.Count(i))
			}
		}
	}
	return out
}
