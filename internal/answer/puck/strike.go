package puck

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
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

// Relative frequencies of clearances and dump-ins beside a hundred shots at
// the goal, from memory.
const (
	clearWeight = 30.0
	dumpWeight  = 25.0
)

// playedMoments is how many moments of a game are sampled for the default
// shots; about a fifth of them are shots.
const playedMoments = 4000

// DefaultShots returns struck pucks at both ends: the shots of a sampled game
// (package play, seed 1), each with its mirror images so that no end and no
// side is favoured by the sample, gathered in cells of the ice, a part of them tipped,
// and, from stated places, clearances out of the zone and dump-ins into the
// corner; of small games across the ice the shots alone. It is nil on a rink without a
// goal line.
func DefaultShots(ctx context.Context, r rink.Rink, game play.Game) ([]Shot, error) {
	goal, ok := goalLine(r)
	if !ok {
		return nil, nil
	}
	as := play.DefaultAssumptions()
	as.Game.CrossIce = game.CrossIce
	set, err := play.Sample(ctx, r, as, 1, playedMoments)
	if err != nil {
		return nil, fmt.Errorf("sampling shots: %w", err)
	}
	shots := Played(mirrored(set.Shots(1)), set.Layout)
	if game.CrossIce {
		return shots, nil
	}
	total := weight(shots)
	d := r.Dimensions()
	for _, end := range []float64{-1, 1} {
		for _, side := range []float64{-1, 1} {
			z := zone{goal: goal, long: d.Length.Metres() / 2, wide: d.Width.Metres() / 2, end: end, side: side}
			for _, s := range z.shots() {
				if r.Contains(s.From) {
					s.Spread = cell / 2
					s.Weight *= total / (4 * 100) // beside a hundred shots in each end and on each side
					shots = append(shots, s)
				}
			}
		}
	}
	return shots, nil
}

// cell is the side of the cells in which played shots are gathered, metres:
// small against the way to the boards.
const cell = 3.0

// mirrored returns each shot with its images across the rink's two axes.
func mirrored(shots []play.Shot) []play.Shot {
	out := make([]play.Shot, 0, 4*len(shots))
	for _, s := range shots {
		for _, end := range [2]int{1, -1} {
			for _, side := range [2]float64{1, -1} {
				m := s
				m.X, m.End, m.Y, m.Side = s.X*float64(end), s.End*end, s.Y*side, s.Side*int(side)
				out = append(out, m)
			}
		}
	}
	return out
}

// Played gathers shots of a game in cells of the ice, both ends and both sides apart. Each
// cell becomes a slap, a wrist and a stray shot at the middle of the goal, from the mean
// of its places; the layout says where the goals stand.
func Played(shots []play.Shot, lay play.Layout) []Shot {
	type key struct {
		end, x, y int
		net       int  // the goal's side, in games across the ice
		right     bool // of the rink's long axis, seen toward end B
	}
	type sum struct {
		at geom.Vec2
		n  float64
	}
	cells := make(map[key]sum)
	for _, s := range shots {
		k := key{s.End, int(math.Floor(s.X * float64(s.End) / cell)), int(math.Abs(s.Y) / cell), 0, math.Signbit(s.Y)}
		if lay.Across > 0 {
			k.net = s.Side
		}
		c := cells[k]
		cells[k] = sum{c.at.Add(geom.Vec2{X: s.X, Y: s.Y}), c.n + 1}
	}
	keys := slices.SortedFunc(maps.Keys(cells), func(a, b key) int {
		return cmp.Or(cmp.Compare(a.end, b.end), cmp.Compare(a.x, b.x), cmp.Compare(a.y, b.y),
			cmp.Compare(cells[a].at.Y, cells[b].at.Y), cmp.Compare(a.net, b.net))
	})
	var out []Shot
	for _, k := range keys {
		c := cells[k]
		from, net := c.at.Scale(1/c.n), lay.Net(k.end, k.net).Line
		if from == net {
			continue // struck in the goal's mouth: no direction
		}
		at := (1 - strayShare) * c.n
		for _, s := range []Shot{
			Slap().At(from, net, at*slapShare), Wrist().At(from, net, at*(1-slapShare)), Stray().At(from, net, c.n*strayShare),
		} {
			s.Spread = cell / 2
			out = append(out, s)
		}
	}
	return out
}

// slapShare is the share of slap shots, as in package play (own assumption there).
const slapShare = 0.25

// zone is one end and side of the rink, in metres.
type zone struct{ goal, long, wide, end, side float64 }

// at returns a place from distances toward the end and to the side.
func (z zone) at(x, y float64) geom.Vec2 { return geom.Vec2{X: z.end * x, Y: z.side * y} }

// shots are the clearances from the goal line, the circle and the slot to the
// side boards near the blue line, and the dump-ins from before the blue line
// to the corner. Places are own judgement.
func (z zone) shots() []Shot {
	k := Clearance()
	return []Shot{
		k.At(z.at(z.goal, z.wide-5), z.at(z.goal-18, z.wide), clearWeight/3),
		k.At(z.at(z.goal-7, z.wide-6), z.at(z.goal-18, z.wide), clearWeight/3),
		k.At(z.at(z.goal-5, 1), z.at(z.goal-15, z.wide), clearWeight/3),
		k.At(z.at(z.goal-21, z.wide-5), z.at(z.long-2, z.wide-5), dumpWeight/2),
		k.At(z.at(z.goal-23, 2), z.at(z.long-1, z.wide-8), dumpWeight/2),
	}
}
