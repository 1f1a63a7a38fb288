package rules

import (
	"fmt"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// stretches permits holes only on stretches of boards beside the landmarks of
// each corner, and caps each stretch.
type stretches struct{ pieces []piece }

// piece is one stretch as the document tells it. Offsets are positive toward
// centre ice, negative toward the middle of the end boards.
type piece struct {
	name     string
	landmark rink.Landmark
	from, to unit.Length
	most     int
}

// Stretch is a permitted stretch of boards of one corner of one arena.
type Stretch struct {
	Set, Rule string
	Name      string // "circle-top"
	Corner    rink.Corner
	Landmark  rink.Landmark
	From, To  unit.Length // stations; From lies in [0, perimeter), To >= From may pass it
	Most      int         // most holes on it
}

// contains reports whether a station lies on the stretch, its ends included.
func (s Stretch) contains(r rink.Rink, at unit.Length) bool {
	into := r.Wrap(at - s.From + slack)
	return into <= s.To-s.From+2*slack
}

// lay puts the pieces on an arena's boards, corner by corner. It is empty on a
// rink without markings.
func (l stretches) lay(c *court) []Stretch {
	var out []Stretch
	r := c.arena.Rink
	for _, corner := range rink.Corners() {
		for _, p := range l.pieces {
			at, ok := r.Landmark(corner, p.landmark)
			if !ok {
				continue
			}
			from := at + p.from
			if corner.TowardCentre() < 0 {
				from = at - p.to
			}
			from = r.Wrap(from)
			out = append(out, Stretch{
				Set: c.set.ID, Rule: c.rule.ID, Name: p.name, Corner: corner, Landmark: p.landmark,
				From: from, To: from + p.to - p.from, Most: p.most,
			})
		}
	}
	return out
}

func (l stretches) groups(c *court) []Group {
	var out []Group
	r := c.arena.Rink
	for _, s := range l.lay(c) {
		has := func(h glass.Hole) bool { return s.contains(r, h.Station) }
		out = append(out, c.group(fmt.Sprintf("stretch %s of corner %s", s.Name, s.Corner), s.Most, has))
	}
	return out
}

// alone measures how deep the hole's centre lies in the nearest stretch:
// measured is its offset from that stretch's landmark, positive toward centre
// ice, limit the end of the stretch that is nearer.
func (l stretches) alone(c *court, h glass.Hole) Finding {
	f := c.start(AlongBoards, h)
	laid := l.lay(c)
	if len(laid) == 0 {
		return f.unknown().say("Record where the goal line, the circles and the blue lines are: without markings the permitted stretches are not known, and so whether hole %s stands on one.", h.ID)
	}
	best, depth := nearest(c.arena.Rink, laid, h.Station)
	towards := best.Corner.TowardCentre()
	mark, _ := c.arena.Rink.Landmark(best.Corner, best.Landmark)
	offset := towards * c.arena.Rink.Apart(mark, h.Station)
	low, high := towards*c.arena.Rink.Apart(mark, best.From), towards*c.arena.Rink.Apart(mark, best.To)
	low, high = min(low, high), max(low, high)
	limit := high
	if offset-low < high-offset {
		limit = low
	}
	f = f.weigh(offset.Metres(), limit.Metres(), depth.Metres())
	if f.Status == Pass {
		return f.say("Nothing to do: hole %s stands on the stretch %s of corner %s, %s from its nearer end.", h.ID, best.Name, best.Corner, max(depth, 0))
	}
	rising := c.arena.Rink.Apart(h.Station, (best.From+best.To)/2) > 0
	return f.say("Move hole %s %s or more %s, onto the stretch %s of corner %s, or close it: it stands outside every permitted stretch.",
		h.ID, say.AtLeast(-depth), c.heading(h.Station, rising), best.Name, best.Corner)
}

// nearest returns the stretch in which a station lies deepest, or else the one
// it is nearest to; depth is the way to that stretch's nearer end, negative outside.
func nearest(r rink.Rink, laid []Stretch, at unit.Length) (best Stretch, depth unit.Length) {
	for i, s := range laid {
		half := (s.To - s.From) / 2
		d := half - abs(r.Apart(s.From+half, at))
		if i == 0 || d > depth {
			best, depth = s, d
		}
	}
	return best, depth
}

func abs(l unit.Length) unit.Length { return max(l, -l) }
