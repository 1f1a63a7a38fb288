package rules

import (
	"fmt"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

// mostInAll caps the holes of the whole rink.
type mostInAll struct{ most int }

func (l mostInAll) groups(c *court) []Group {
	return []Group{c.group("the whole rink", l.most, func(glass.Hole) bool { return true })}
}

// mostPerCorner caps the holes of each corner. A rink without markings has no
// corners: where they end is not known.
type mostPerCorner struct{ most int }

func (l mostPerCorner) groups(c *court) []Group {
	var out []Group
	r := c.arena.Rink
	for _, corner := range rink.Corners() {
		has := func(h glass.Hole) bool { return r.Corner(h.Station) == corner }
		out = append(out, c.group(fmt.Sprintf("corner %s", corner), l.most, has))
	}
	return out
}

// lacking answers for a rink without corners: more holes than one corner may
// hold cannot be told apart.
func (l mostPerCorner) lacking(c *court, holes []glass.Hole) (Finding, bool) {
	if c.arena.Rink.Marked() || len(holes) <= l.most {
		return Finding{}, false
	}
	f := c.start(HoleCount, holes...).unknown()
	return f.say("Record where the blue lines are: without them the corners, which may hold %d each, cannot be told apart.", l.most), true
}

// group returns a group of the rule at work, without the holes that its set
// does not concern or that a dispensation frees from the rule.
func (c *court) group(name string, most int, has func(glass.Hole) bool) Group {
	rule := *c
	return Group{
		Set: c.set.ID, Rule: c.rule.ID, Name: name, Most: most,
		Has: func(h glass.Hole) bool {
			if !has(h) || rule.concerns(h) == notConcerned {
				return false
			}
			_, freed := rule.dispensed(h)
			return !freed
		},
	}
}

// count judges one group by the holes in it; ok is false for an empty one.
func (c *court) count(g Group, holes []glass.Hole) (f Finding, ok bool) {
	var in []glass.Hole
	sure := 0
	for _, h := range holes {
		if !g.Has(h) {
			continue
		}
		in = append(in, h)
		if c.concerns(h) == concerned {
			sure++
		}
	}
	if len(in) == 0 {
		return Finding{}, false
	}
	f = c.start(HoleCount, in...).weigh(float64(len(in)), float64(g.Most), float64(g.Most-len(in)))
	over := len(in) - g.Most
	switch {
	case f.Status == Pass:
		return f.say("Nothing to do: %s holds %d of at most %d (%s).", g.Name, len(in), g.Most, say.Names(f.Holes)), true
	case sure <= g.Most:
		return f.unknown().say("Record the material of the panes of %s: if the rule concerns them all, %s holds %d too many.", say.Names(f.Holes), g.Name, over), true
	}
	return f.say("Close or move %d of %s: %s holds %d, at most %d may be there.", over, say.Names(f.Holes), g.Name, len(in), g.Most), true
}
