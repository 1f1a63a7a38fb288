package puck

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
)

// place is a point of the glass's rink face: where it stands and faces.
type place struct {
	at      geom.Vec2 // plan, metres
	normal  geom.Vec2 // unit, into the rink
	tangent geom.Vec2 // unit, toward rising station
	height  unit.Length
}

// arrival is one way in which a shot comes to a place: how likely per square
// metre of glass, and with what motion.
type arrival struct {
	perM2  float64 // probability density on the glass, 1/m2, for one shot
	flight Flight
	motion Motion
	flat   bool
}

// speedNodes are the points and weights of Gauss and Hermite's rule of three
// for a normal speed: mean, and mean plus and minus sqrt(3) deviations.
var speedNodes = [3]struct{ deviations, weight float64 }{
	{-1.7320508075688772, 1.0 / 6}, {0, 2.0 / 3}, {1.7320508075688772, 1.0 / 6},
}

// arrivals calls yield with every way in which the shot comes to the place.
//
// The density on the glass is that of direction and elevation carried over to
// the pane's plane: a step ds along the pane turns the direction by
// cos q ds / R (R the level distance), a step dz in height the elevation by
// dz / (dz/de), so that
//
//	p(s, z) = p(direction) p(elevation) cos q / (R dz/de)
//
// for the lower of the two elevations that reach the height; the lob is left
// out (its elevation is far outside the spread). Source: own derivation.
func (s Shot) arrivals(p place, goals goalFrames, yield func(arrival)) {
	way := p.at.Sub(s.From)
	r := way.Len()
	if r == 0 {
		return
	}
	dir := way.Scale(1 / r)
	out, along := -dir.Dot(p.normal), dir.Dot(p.tangent)
	if out <= 0 {
		return
	}
	aim := s.Aim.Sub(s.From).Unit()
	turn := math.Atan2(aim.Cross(dir), aim.Dot(dir))
	side := normal(turn, 0, s.SideSD.Radians()) * out / r
	if side < negligible {
		return
	}
	angle := unit.Angle(math.Atan2(along, out))
	for _, node := range speedNodes {
		v := s.Speed + s.SpeedSD*unit.Speed(node.deviations)
		for _, flat := range [2]bool{true, false} {
			body, share := s.kind(flat)
			if share == 0 {
				continue
			}
			if s.tooSteep(v, r, p.height.Metres()) {
				continue
			}
			up, at, perRadian, ok := body.launch(v, unit.Length(r), p.height)
			if !ok {
				continue
			}
			past := 1 - goals.caught(body, v, up, s, dir, r)
			if past == 0 {
				continue
			}
			high := normal(up.Radians(), s.Elevation.Radians(), s.ElevationSD.Radians()) / perRadian
			yield(arrival{
				perM2:  side * high * node.weight * share * past,
				flight: Flight{Along: angle, Up: at.Up()},
				motion: at, flat: flat,
			})
		}
	}
}

// farOff is how many deviations above its mean an elevation counts as never
// seen: a share of 3e-7.
const farOff = 5

// tooSteep reports whether even without drag the puck would have to be struck
// so far above the mean elevation as is never seen.
func (s Shot) tooSteep(v unit.Speed, x, z float64) bool {
	e, ok := dragFree(float64(v)*float64(v), x, z)
	return !ok || e > (s.Elevation+farOff*s.ElevationSD).Radians()
}

// negligible is a density (1/m2) so low that a hole of a hundredth of a
// square metre would see one such shot in ten billion.
const negligible = 1e-8

// kind returns how a flat or a tumbling puck meets the air and the share of
// the shots that fly so.
func (s Shot) kind(flat bool) (Body, float64) {
	if flat {
		return FlatBody(), 1 - s.TumblingShare
	}
	return TumblingBody(), s.TumblingShare
}

// normal is the density of the normal distribution, per unit of x.
func normal(x, mean, sd float64) float64 {
	d := (x - mean) / sd
	return math.Exp(-d*d/2) / (sd * math.Sqrt(2*math.Pi))
}

// goalFrames are the goal mouths, half a
// width to each side, up to a height; metres. Zero means no goals.
type goalFrames struct {
	nets       []play.Goal
	half, high float64
}

// caught returns the share of the shots that a goal catches on their way along
// dir to a place at distance r: those that cross a mouth from the front below
// the bar. A shot that stands for others round its place crosses the goal line
// over a width of 2 Spread (1 - way/r), all ways ending in the one place; the
// part of it within the posts is caught.
func (g goalFrames) caught(b Body, v unit.Speed, up unit.Angle, s Shot, dir geom.Vec2, r float64) float64 {
	most := 0.0
	for _, net := range g.nets {
		most = max(most, g.caughtBy(net, b, v, up, s, dir, r))
	}
	return most
}

func (g goalFrames) caughtBy(net play.Goal, b Body, v unit.Speed, up unit.Angle, s Shot, dir geom.Vec2, r float64) float64 {
	in := dir.Dot(net.In)
	if in <= 0 {
		return 0
	}
	past, _ := net.Local(s.From)
	way := -past / in
	if way <= 0 || way >= r {
		return 0
	}
	_, y := net.Local(s.From.Add(dir.Scale(way)))
	wide := s.Spread.Metres() * (1 - way/r)
	within := min(y+wide, g.half) - max(y-wide, -g.half)
	if within < 0 {
		return 0
	}
	at, ok := b.Fly(Struck(0, v, up), unit.Length(way))
	if !ok {
		return 0
	}
	low := g.below(at.Height.Metres(), s.Spread.Metres()*(1/way-1/r))
	if wide == 0 {
		return low
	}
	return low * min(1, within/(2*wide))
}

// below returns the share that passes under the bar of shots that cross the goal line at
// a height. Struck ds metres farther back and ending in the same place, a shot crosses it
// higher by the part ds (1/way - 1/r), way and r being its level distances to the goal line
// and to the end (own derivation, straight flight); the shots' places lie evenly to both sides.
func (g goalFrames) below(height, part float64) float64 {
	if spread := height * part; spread > 0 {
		return max(0, min(1, (g.high-height+spread)/(2*spread)))
	}
	if height < g.high {
		return 1
	}
	return 0
}
