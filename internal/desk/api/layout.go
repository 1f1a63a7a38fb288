package api

import (
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
)

// Layout is what stands still while a hole is moved: enough to draw the boards
// and to know what to snap to.
type Layout struct {
	Length       float64 `json:"length_m"`
	Width        float64 `json:"width_m"`
	CornerRadius float64 `json:"corner_radius_m"`
	Perimeter    float64 `json:"perimeter_m"`
	Boards       float64 `json:"boards_height_m"`
	Panes        []Pane  `json:"panes"`
	Zones        []Zone  `json:"zones"`
	Snaps        []Snap  `json:"snaps" doc:"Landmarks and middles of panes, by station."`
}

// Pane is one pane of glass.
type Pane struct {
	ID        string   `json:"id"`
	From      float64  `json:"from_m" doc:"Station of its first edge."`
	To        float64  `json:"to_m" doc:"May pass the perimeter."`
	Height    float64  `json:"height_m" doc:"Above the boards."`
	Thickness *float64 `json:"thickness_mm"`
	Material  string   `json:"material"`
	Gate      string   `json:"gate,omitempty"`
}

// Zone is a stretch of boards with a use.
type Zone struct {
	ID   string  `json:"id"`
	Kind string  `json:"kind"`
	From float64 `json:"from_m"`
	To   float64 `json:"to_m"`
	Note string  `json:"note,omitempty"`
}

// Snap is a station that a hole likes to stand at.
type Snap struct {
	Kind    string  `json:"kind" enum:"landmark,pane"`
	Name    string  `json:"name" doc:"B-bench goal-line, or the pane's id."`
	Station float64 `json:"station_m"`
}

func layoutOf(a arena.Arena) Layout {
	d := a.Rink.Dimensions()
	out := Layout{
		Length: d.Length.Metres(), Width: d.Width.Metres(), CornerRadius: d.CornerRadius.Metres(),
		Perimeter: a.Rink.Perimeter().Metres(), Boards: a.Boards.Height.Metres(),
		Panes: []Pane{}, Zones: []Zone{}, Snaps: []Snap{},
	}
	for _, c := range rink.Corners() {
		for _, l := range rink.Landmarks() {
			if at, ok := a.Rink.Landmark(c, l); ok {
				out.Snaps = append(out.Snaps, Snap{"landmark", c.String() + " " + string(l), at.Metres()})
			}
		}
	}
	for _, p := range a.Panes {
		pane := Pane{
			ID: p.ID, From: p.From.Metres(), To: p.To().Metres(), Height: p.Height.Metres(),
			Material: string(p.Material.Or("")), Gate: p.Gate,
		}
		if t, ok := p.Thickness.Get(); ok {
			mm := t.Millimetres()
			pane.Thickness = &mm
		}
		out.Panes = append(out.Panes, pane)
		out.Snaps = append(out.Snaps, Snap{"pane", p.ID, a.Rink.Wrap((p.From + p.To()) / 2).Metres()})
	}
	for _, z := range a.Zones {
		out.Zones = append(out.Zones, Zone{z.ID, z.Kind, z.From.Metres(), z.To.Metres(), z.Note})
	}
	return out
}
