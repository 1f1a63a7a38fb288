package rules

import (
	"fmt"
	"slices"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
)

// Keep is what a rule keeps for one kind of camera at games: so many holes of each group.
type Keep struct {
	Rule     string   // "set/rule"
	For      string   // the kind of camera: broadcast, stills or remote
	Holes    int      // of each group, 1 or more
	Attacked string   // only at the end that this team attacks: home or away; "": at both
	Games    []string // marks or series of games; none: every game
	Periods  []int    // from 1; none: every period
	Groups   []KeepGroup
}

// KeepGroup is the holes among which a rule keeps some.
type KeepGroup struct {
	Name  string   // "corner B-box", "end B", "the rink"
	Holes []string // ids in the arena's order; one or more
}

var keptKind = kind{
	name: "kept-for-camera", fields: []string{"for", "holes", "in", "attacked-by", "games", "periods"},
	asks: "so many holes of each `corner`, each `end` or of the `rink` are kept for `broadcast`, `remote` or `stills` cameras, where one of these asks for the game",
	read: func(m form.Map) demand {
		d := keptFor{Keep: Keep{For: m.At("for").Choice("broadcast", "remote", "stills"), Holes: 1}, in: "corner"}
		if m.Has("holes") {
			d.Holes = m.At("holes").Int(1, mostHoles)
		}
		if m.Has("in") {
			d.in = m.At("in").Choice("corner", "end", "rink")
		}
		if m.Has("attacked-by") {
			d.Attacked = m.At("attacked-by").Choice("home", "away")
		}
		d.Games = readGames(m)
		if m.Has("periods") {
			for _, n := range m.At("periods").List(play.MostPeriods) {
				d.Periods = append(d.Periods, n.Int(1, play.MostPeriods))
			}
		}
		return d
	},
}

// readGames reads the marks or series of the games that a rule is about.
func readGames(m form.Map) (out []string) {
	if !m.Has("games") {
		return nil
	}
	for _, n := range m.At("games").List(maxEntries) {
		out = append(out, form.Parse(n, form.Line))
	}
	if len(out) == 0 {
		m.At("games").Failf("names no mark or series; leave it out for every game")
	}
	return out
}

// keptFor judges nothing in a document: who asks for which game is not written there.
type keptFor struct {
	Keep
	in string // what the groups are: corner, end or rink
}

func (keptFor) unjudged() {}

// Keeps returns what the rules keep for cameras among the arena's working holes. A hole
// that is dispensed from a rule is not among those that it keeps; one whose pane may be of
// the rule's materials is.
func (on *Applied) Keeps() (out []Keep) {
	for i := range on.checks {
		c := &on.checks[i]
		d, ok := c.demand.(keptFor)
		if !ok {
			continue
		}
		k := d.Keep
		k.Rule = c.set.ID + "/" + c.rule.ID
		for _, h := range on.arena.Working() {
			o := open(on.arena, h)
			name := c.groupOf(d.in, h)
			if _, freed := c.dispensed(o); freed || c.applies(o) == no || name == "" {
				continue
			}
			at := slices.IndexFunc(k.Groups, func(g KeepGroup) bool { return g.Name == name })
			if at < 0 {
				at, k.Groups = len(k.Groups), append(k.Groups, KeepGroup{Name: name})
			}
			k.Groups[at].Holes = append(k.Groups[at].Holes, h.ID)
		}
		out = append(out, k)
	}
	return out
}

// groupOf names the group that a hole is in, "" for none: by the blue lines there is no
// corner.
func (c *check) groupOf(in string, h glass.Hole) string {
	r := c.arena.Rink
	switch in {
	case "rink":
		return "the rink"
	case "end":
		if r.Point(h.Station).X > 0 {
			return "end B"
		}
		return "end A"
	}
	if corner := r.Corner(h.Station); corner != rink.NoCorner {
		return fmt.Sprintf("corner %s", corner)
	}
	return ""
}
