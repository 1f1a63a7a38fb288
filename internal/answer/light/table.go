package light

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// What a picture of play is framed about: a player's middle, and the height of
// the frame, a player with stick and room. Choices of this program.
const (
	subjectHeight unit.Length = 1
	frameHeight   unit.Length = 3
)

// tableOf fills in one hole's table.
func tableOf(a arena.Arena, o arena.Opening, l Lit, q Request) (HoleLight, error) {
	out := HoleLight{Hole: o.Hole.ID, Zones: []Row{}}
	for _, z := range l.zones {
		zl, ok := l.lit[z.ID]
		if !ok {
			continue
		}
		row, err := rowOf(zl, l.faces[z.ID], distance(a, o, z), q)
		if err != nil {
			return out, fmt.Errorf("hole %s, zone %s: %w", o.Hole.ID, z.ID, err)
		}
		row.OffFlicker = offFlicker(a, q, row.Shutter)
		out.Zones = append(out.Zones, row)
	}
	return out, nil
}

// distance runs from the opening's centre, on its rink face, to a player's
// middle in the zone's centre, in metres.
func distance(a arena.Arena, o arena.Opening, z Zone) unit.Length {
	h := o.Hole
	p := a.Rink.Point(h.Station).Sub(a.Rink.Normal(h.Station).Scale(o.Setback.Value.Metres()))
	c := z.Centre()
	return unit.Length(geom.Vec3{X: c.X - p.X, Y: c.Y - p.Y, Z: (subjectHeight - h.Height).Metres()}.Len())
}

func rowOf(zl ZoneLight, faces unit.Illuminance, away unit.Length, q Request) (Row, error) {
	row := Row{ZoneLight: zl, FaceLux: faces, Distance: away}
	for _, part := range []struct {
		lux unit.Illuminance
		to  *optics.Exposure
	}{{zl.Median, &row.Exposure}, {zl.Low, &row.Dark}, {zl.High, &row.Bright}, {faces, &row.Faces}} {
		var err error
		if *part.to, err = q.calibration().Solve(part.lux, q.Wanted); err != nil {
			return row, err
		}
	}
	row.OverISO, row.OverISOFaces = overISO(row.ISO, q.Body.ISOMax), overISO(row.Faces.ISO, q.Body.ISOMax)
	lens, ok := q.Lens.Get()
	if !ok {
		return row, nil
	}
	f := Framing(q.sensor(), lens.FocalMin, lens.FocalMax, away)
	row.PastStop = row.Stop < lens.WidestAt(f)*(1-stopSlack)
	d, err := optics.DepthOfField(f, row.Stop, optics.CircleOfConfusion(q.sensor()), away)
	if err != nil {
		return row, err
	}
	row.Depth = &Depth{f, d}
	return row, nil
}

// isoSlack is a sixth of a stop, half a camera's step, as a factor: a solved
// ISO that rounds to the body's limit is within it.
var isoSlack = math.Exp2(1.0 / 6)

// overISO reports whether an ISO passes a body's limit, 0 for none.
func overISO(iso unit.ISO, limit int) bool {
	return limit > 0 && float64(iso) > float64(limit)*isoSlack
}

// stopSlack is how far a stop may lie below the lens's widest and still be it:
// engraved stops are rounded to two figures.
const stopSlack = 0.01

// Framing returns the focal length in metres, within a lens's range, at which
// a frame held level is 3 m high at a distance: f = s m/(1+m) with m = sensor
// height over 3 m.
func Framing(sensor unit.Size, shortest, longest, away unit.Length) unit.Length {
	m := sensor.H / frameHeight
	return min(longest, max(shortest, away*m/(1+m)))
}

// offFlicker reports whether a time is none of the flicker-safe
// ones of known mains.
func offFlicker(a arena.Arena, q Request, time unit.Shutter) bool {
	hz, ok := q.mains(a).Get()
	if !ok {
		return false
	}
	cycles := time.Seconds() * 2 * hz
	return math.Abs(cycles-math.Round(cycles)) > 1e-3 || math.Round(cycles) < 1
}
