package puck

import (
	"example.org/rinkpane/geom"
	"example.org/rinkpane/rink"
	"example.org/rinkpane/unit"
)

// Strike is how hard and how wild a kind of struck puck is.
type Strike struct {
	Speed, SpeedSD         unit.Speed
	Elevation, ElevationSD unit.Angle
	SideSD                 unit.Angle
}

// At returns the shot struck so from a place to an aim, with a relative
// weight (a pure number); half of such pucks tumble (own assumption).
func (k Strike) At(from, aim geom.Vec2, weight float64) Shot {
	return Shot{
		From: from, Aim: aim, Weight: weight, TumblingShare: 0.5,
		Speed: k.Speed, SpeedSD: k.SpeedSD,
		Elevation: k.Elevation, ElevationSD: k.ElevationSD, SideSD: k.SideSD,
	}
}

// Slap returns a slap shot at the goal: 29.14 m/s is published (Woo et al.); its
// deviation is widened to take in the 33.3 m/s of another study (J Appl
// Biomech 22(3)); the angles are from memory.
func Slap() Strike {
	return Strike{Speed: 29.14, SpeedSD: 4, Elevation: 3 * unit.Degree, ElevationSD: 4 * unit.Degree, SideSD: 5 * unit.Degree}
}

// Wrist returns a wrist shot at the goal, all from memory.
func Wrist() Strike {
	return Strike{Speed: 22, SpeedSD: 4, Elevation: 5 * unit.Degree, ElevationSD: 6 * unit.Degree, SideSD: 7 * unit.Degree}
}

// Stray returns a puck that a stick or a body has tipped, from memory: slower
// and all over the place. These are what flies into the corners.
func Stray() Strike {
	return Strike{Speed: 18, SpeedSD: 4, Elevation: 10 * unit.Degree, ElevationSD: 12 * unit.Degree, SideSD: 35 * unit.Degree}
}

// Clearance returns a puck lifted along or off the glass, out of the own zone or into
// the other's corner, from memory.
func Clearance() Strike {
	return Strike{Speed: 20, SpeedSD: 4, Elevation: 7 * unit.Degree, ElevationSD: 6 * unit.Degree, SideSD: 12 * unit.Degree}
}

// strayShare is the share of shots at the goal that end as strays, from memory.
const strayShare = 0.15

// spot is a place in the attacking zone: metres before the goal line and to
// the side of the long axis, with a relative frequency.
type spot struct {
	before, aside, weight float64
	strike                Strike
}

// spots is the default spread of shots over one side of the zone, own
// judgement: most from the slot and the circles, a fifth from the points. The
// weights add up to 100.
func spots() []spot {
	slap, wrist := Slap(), Wrist()
	return []spot{
		{2.5, 1.2, 8, wrist}, {5, 1.5, 12, wrist}, {8, 2, 14, wrist}, {11, 3, 10, wrist},
		{4, 5, 8, wrist}, {7, 6.5, 14, wrist}, {11, 7, 10, wrist}, {3, 8, 4, wrist},
		{14, 4, 6, slap}, {16.5, 1.5, 6, slap}, {16.5, 7, 6, slap}, {16, 10, 2, slap},
	}
}

// Relative frequencies of clearances and dump-ins beside a hundred shots at
// the goal, from memory.
const (
	clearWeight = 30.0
	dumpWeight  = 25.0
)

// DefaultShots returns struck pucks at both ends by the stated spread,
// mirrored to both sides: shots at the goal, strays among them, clearances
// out of the zone and dump-ins into the corner. It is nil on a rink without a goal
// line. Places that would lie off the ice are left out.
func DefaultShots(r rink.Rink) []Shot {
	goal, ok := goalLine(r)
	if !ok {
		return nil
	}
	d := r.Dimensions()
	var shots []Shot
	for _, end := range []float64{-1, 1} {
		for _, side := range []float64{-1, 1} {
			z := zone{goal: goal, long: d.Length.Metres() / 2, wide: d.Width.Metres() / 2, end: end, side: side}
			for _, s := range z.shots() {
				if r.Contains(s.From) {
					shots = append(shots, s)
				}
			}
		}
	}
	return shots
}

// zone is one end and side of the rink, in metres.
type zone struct{ goal, long, wide, end, side float64 }

// at returns a place from distances toward the end and to the side.
func (z zone) at(x, y float64) geom.Vec2 { return geom.Vec2{X: z.end * x, Y: z.side * y} }

func (z zone) shots() []Shot {
	net := z.at(z.goal, 0)
	var out []Shot
	for _, s := range spots() {
		from := z.at(z.goal-s.before, s.aside)
		out = append(out, s.strike.At(from, net, s.weight*(1-strayShare)), Stray().At(from, net, s.weight*strayShare))
	}
	// Out of the zone: from the goal line, the circle and the slot to the side
	// boards near the blue line. Into the zone: from before the blue line to the corner.
	out = append(out,
		Clearance().At(z.at(z.goal, z.wide-5), z.at(z.goal-18, z.wide), clearWeight/3),
		Clearance().At(z.at(z.goal-7, z.wide-6), z.at(z.goal-18, z.wide), clearWeight/3),
		Clearance().At(z.at(z.goal-5, 1), z.at(z.goal-15, z.wide), clearWeight/3),
		Clearance().At(z.at(z.goal-21, z.wide-5), z.at(z.long-2, z.wide-5), dumpWeight/2),
		Clearance().At(z.at(z.goal-23, 2), z.at(z.long-1, z.wide-8), dumpWeight/2),
	)
	return out
}
