package rules

import (
	"fmt"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

var mostInAllKind = kind{
	name: "most-in-all", fields: []string{"most"},
	asks: "no more holes stand in the whole rink",
	read: func(m form.Map) demand { return mostInAll{readMost(m)} },
}

type mostInAll struct{ most int }

func (d mostInAll) groups(c *check) []Group {
	return []Group{c.group("the whole rink", d.most, func(glass.Hole) bool { return true })}
}

var mostPerCornerKind = kind{
	name: "most-per-corner", fields: []string{"most"},
	asks: "no more stand in any corner (from the middle of the end boards to the blue line)",
	read: func(m form.Map) demand { return mostPerCorner{readMost(m)} },
}

// mostPerCorner caps the holes of each corner. A rink without markings has no
// corners: where they end is not known.
type mostPerCorner struct{ most int }

func (d mostPerCorner) groups(c *check) []Group {
	var out []Group
	r := c.arena.Rink
	for _, corner := range rink.Corners() {
		has := func(h glass.Hole) bool { return r.Corner(h.Station) == corner }
		out = append(out, c.group(fmt.Sprintf("corner %s", corner), d.most, has))
	}
	return out
}

// lacking answers for a rink without corners: more holes than one corner may
// hold cannot be told apart.
func (d mostPerCorner) lacking(c *check, holes []opening) (Finding, bool) {
	if c.arena.Rink.Marked() || len(holes) <= d.most {
		return Finding{}, false
	}
	return c.finding(HoleCount, holes...).
		unknown("Record where the blue lines are: without them the corners, which may hold %d each, cannot be told apart.", d.most), true
}

// mostHoles is the greatest cap that is read.
const mostHoles = 10000

func readMost(m form.Map) int { return m.At("most").Int(0, mostHoles) }

// group returns a group of the rule at work, without the holes that it does
// not concern or that a dispensation frees from it.
func (c *check) group(name string, most int, has func(glass.Hole) bool) Group {
	return Group{
		Set: c.set.ID, Rule: c.rule.ID, Name: name, Most: most,
		Has: func(h glass.Hole) bool {
			if !has(h) {
				return false
			}
			o := open(c.arena, h)
			_, freed := c.dispensed(o)
			return !freed && c.applies(o) != no
		},
	}
}

// groups judges the demand's groups by the holes in them.
func (c *check) groups(d ofGroup, openings []opening) []Finding {
	var holes []opening
	for _, h := range openings {
		if !h.low {
			holes = append(holes, h)
		}
	}
	if l, ok := d.(interface {
		lacking(c *check, holes []opening) (Finding, bool)
	}); ok {
		if f, lacks := l.lacking(c, holes); lacks {
			return []Finding{f}
		}
	}
	var out []Finding
	for _, g := range d.groups(c) {
		if f, ok := c.count(g, holes); ok {
			out = append(out, f)
		}
	}
	return out
}

// count judges one group; ok is false for an empty one.
func (c *check) count(g Group, holes []opening) (f Finding, ok bool) {
	var in []opening
	sure := 0
	for _, h := range holes {
		if !g.Has(h.Hole) {
			continue
		}
		in = append(in, h)
		if c.applies(h) == yes {
			sure++
		}
	}
	if len(in) == 0 {
		return Finding{}, false
	}
	over := len(in) - g.Most
	f = c.finding(HoleCount, in...).margin(float64(len(in)), float64(g.Most), float64(-over))
	if f.Status == Fail && sure <= g.Most {
		return f.unknown("Record the material of the panes of %s: if the rule concerns them all, %s holds %d too many.", names(in), g.Name, over), true
	}
	return f.
		kept("Nothing to do: %s holds %d of at most %d (%s).", g.Name, len(in), g.Most, names(in)).
		broken("Close or move %d of %s: %s holds %d, at most %d may be there.", over, names(in), g.Name, len(in), g.Most), true
}
