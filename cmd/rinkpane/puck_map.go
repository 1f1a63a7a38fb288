package main

import (
	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/survey/arena"
)

// drawSectors draws the sectors to be kept clear, where a map is asked for;
// with one hole its surroundings only.
func drawSectors(ar arena.Arena, guards []puck.Guard, f puckFlags) error {
	if f.out == "" {
		return nil
	}
	sectors, picked := sectorsOf(guards)
	return drawMap(chart.GuardMap(ar, sectors, picked, mapWidthMM), f.out, f.force)
}

// sectorsOf returns the guards' sectors as a map draws them, and the hole to look
// at when there is only one.
func sectorsOf(guards []puck.Guard) (sectors []chart.Sector, picked string) {
	for _, g := range guards {
		if s := g.Sector; s.Passing {
			sectors = append(sectors, chart.Sector{
				Hole: g.Hole, From: s.From, To: s.To, Limit: s.HalfAngle.Or(0),
				Typical: s.Typical, Far: s.Far, Farthest: s.Farthest,
			})
		}
	}
	if len(guards) == 1 && len(sectors) == 1 {
		picked = guards[0].Hole
	}
	return sectors, picked
}
