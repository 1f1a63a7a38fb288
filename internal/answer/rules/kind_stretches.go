package rules

import (
	"fmt"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

var stretchesKind = kind{
	name: "stretches", fields: []string{"stretches"},
	asks: "every hole stands on one of the stretches of its corner, and none holds too many",
	read: readStretches,
}

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

func readStretches(m form.Map) demand {
	var d stretches
	for _, n := range m.At("stretches").List(maxEntries) {
		d.pieces = append(d.pieces, readPiece(n))
	}
	if len(d.pieces) == 0 {
		m.At("stretches").Failf("must hold at least one stretch")
	}
	return d
}

// farthest is the longest offset from a landmark that is read.
const farthest = 100 * unit.Metre

func readPiece(n form.Node) piece {
	m := n.Map("name", "landmark", "from", "to", "most")
	var marks []string
	for _, l := range rink.Landmarks() {
		marks = append(marks, string(l))
	}
	p := piece{landmark: rink.Landmark(m.At("landmark").Choice(marks...)), from: m.At("from").Offset(), to: m.At("to").Offset(), most: 1}
	p.name = m.At("name").TextOr(string(p.landmark))
	if m.Has("most") {
		p.most = readMost(m)
	}
	switch {
	case p.from > p.to:
		m.At("to").Failf("lies farther back than from; from is the end nearer the end boards")
	case p.from < -farthest || p.to > farthest:
		n.Failf("reaches farther than %s from its landmark; check the units", farthest.Format(unit.Metric))
	}
	return p
}

// contains reports whether a station lies on the stretch, its ends included.
func (s Stretch) contains(r rink.Rink, at unit.Length) bool {
	into := r.Wrap(at - s.From + slack)
	return into <= s.To-s.From+2*slack
}

// laid is stretches on an arena's boards, corner by corner. It is empty on a
// rink without markings.
type laid []Stretch

func (d stretches) prepare(c *check) demand {
	corners := rink.Corners()
	out := make(laid, 0, len(corners)*len(d.pieces))
	r := c.arena.Rink
	for _, corner := range corners {
		for _, p := range d.pieces {
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

func (d laid) groups(c *check) []Group {
	var out []Group
	for _, s := range d {
		has := func(h glass.Hole) bool { return s.contains(c.arena.Rink, h.Station) }
		out = append(out, c.group(fmt.Sprintf("stretch %s of corner %s", s.Name, s.Corner), s.Most, has))
	}
	return out
}

func (d laid) breaks(_ unit.Length) []unit.Length {
	var out []unit.Length
	for _, s := range d {
		out = append(out, s.From, s.To)
	}
	return out
}

// one measures how deep the hole's centre lies in the nearest stretch:
// measured is its offset from that stretch's landmark, positive toward centre
// ice, limit the end of the stretch that is nearer.
func (d laid) one(c *check, h opening) Finding {
	f := c.finding(AlongBoards, h)
	if len(d) == 0 {
		return f.unknown("Record where the goal line, the circles and the blue lines are: without markings the permitted stretches are not known, and so whether %s stands on one.", h.name())
	}
	r := c.arena.Rink
	best, depth := d.nearest(r, h.Station)
	towards := best.Corner.TowardCentre()
	mark, _ := r.Landmark(best.Corner, best.Landmark)
	offset := towards * r.Apart(mark, h.Station)
	low, high := towards*r.Apart(mark, best.From), towards*r.Apart(mark, best.To)
	low, high = min(low, high), max(low, high)
	limit := high
	if offset-low < high-offset {
		limit = low
	}
	rising := r.Apart(h.Station, (best.From+best.To)/2) > 0
	return f.margin(offset.Metres(), limit.Metres(), depth.Metres()).
		kept("Nothing to do: hole %s stands on the stretch %s of corner %s, %s from its nearer end.", h.ID, best.Name, best.Corner, max(depth, 0)).
		broken("Move hole %s %s or more %s, onto the stretch %s of corner %s, or close it: it stands outside every permitted stretch.",
			h.ID, say.AtLeast(-depth), c.way(h.Station, rising), best.Name, best.Corner)
}

// nearest returns the stretch in which a station lies deepest, or else the one
// it is nearest to; depth is the way to that stretch's nearer end, negative outside.
func (d laid) nearest(r rink.Rink, at unit.Length) (best Stretch, depth unit.Length) {
	for i, s := range d {
		half := (s.To - s.From) / 2
		if in := half - abs(r.Apart(s.From+half, at)); i == 0 || in > depth {
			best, depth = s, in
		}
	}
	return best, depth
}
