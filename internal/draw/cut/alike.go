package cut

import (
	"cmp"
	"iter"
	"slices"
	"strings"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// Alike is drilled panes, or covers, of which any can stand in for any other.
type Alike struct {
	Cover       bool // covers; else drilled panes
	What        say.Sentence
	Holes       []string
	Exist, Make int     // pieces in use: there already, still to be made
	Spares      int     // pieces to keep beside them
	Piece       float64 // mass of one, kg
}

// InUse is how many pieces are in use once all is made.
func (k Alike) InUse() int { return k.Exist + k.Make }

// part is one pane or cover with what decides whether it can stand in for another.
type part struct {
	name     string        // equal for parts that may be of one kind at all
	measures []unit.Length // its sizes
	turned   []unit.Length // the same when it is turned round; nil where it cannot be
	within   []unit.Length // how far two may differ in each measure
	exists   bool
	holes    []string
	what     say.Sentence
	mass     float64 // kg
}

// bin is a kind being gathered: the least and the greatest of each measure.
type bin struct{ low, high []unit.Length }

// takes reports whether a part's measures keep the bin within its tolerances,
// and widens the bin if so.
func (b *bin) takes(m, within []unit.Length) bool {
	for i, v := range m {
		if max(b.high[i], v)-min(b.low[i], v) > within[i]+slack {
			return false
		}
	}
	for i, v := range m {
		b.low[i], b.high[i] = min(b.low[i], v), max(b.high[i], v)
	}
	return true
}

// kindsOf gathers parts into kinds. A kind's greatest and least measure differ
// by no more than the tolerance, so every two of its parts do, and any can
// stand in for any other: a chain of parts each a little larger than the last
// is several kinds. Parts are gone through from small to large, so that the
// answer does not hang on the order of the plan; kinds stand in the plan's order.
func kindsOf(parts []part, covers bool) []Alike {
	order := make([]int, len(parts))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(strings.Compare(parts[a].name, parts[b].name), slices.Compare(parts[a].measures, parts[b].measures))
	})
	var bins []bin
	var members [][]int
	for _, i := range order {
		p := parts[i]
		at := slices.IndexFunc(members, func(m []int) bool { return parts[m[0]].name == p.name })
		for ; at >= 0 && at < len(bins); at++ {
			if parts[members[at][0]].name == p.name && (bins[at].takes(p.measures, p.within) || p.turned != nil && bins[at].takes(p.turned, p.within)) {
				break
			}
		}
		if at < 0 || at == len(bins) {
			at = len(bins)
			bins = append(bins, bin{slices.Clone(p.measures), slices.Clone(p.measures)})
			members = append(members, nil)
		}
		members[at] = append(members[at], i)
	}
	for _, m := range members {
		slices.Sort(m)
	}
	slices.SortFunc(members, func(a, b []int) int { return a[0] - b[0] })
	out := make([]Alike, len(members))
	for k, m := range members {
		first := parts[m[0]]
		out[k] = Alike{Cover: covers, What: first.what}
		for _, i := range m {
			out[k].Holes = append(out[k].Holes, parts[i].holes...)
			out[k].Piece = max(out[k].Piece, parts[i].mass)
			if parts[i].exists {
				out[k].Exist++
			} else {
				out[k].Make++
			}
		}
	}
	return out
}

// Tolerances within which panes count as one kind, beside those of the drawing.
const sheetTolerance = 0.5 * unit.Millimetre // of nominal thicknesses: own choice

// paneOf returns a drilled pane, told by the jobs of its holes. A flat pane may
// be turned round.
func paneOf(jobs []Job) part {
	j, f := jobs[0], jobs[0].Face
	p := part{
		name: string(j.Material.Name) + strings.Repeat(" hole", len(jobs)), exists: j.PaneExists(), mass: j.Mass,
		measures: []unit.Length{j.Thick, j.front(f.Width), f.Height, f.Radius},
		within:   []unit.Length{sheetTolerance, placeTolerance, placeTolerance, placeTolerance},
	}
	if f.Curved {
		p.name += " curved"
	}
	size := j.Cover.Options.HoleTolerance
	places := func(left func(Job) unit.Length) []unit.Length {
		jobs := slices.SortedFunc(slices.Values(jobs), func(a, b Job) int { return cmp.Compare(left(a), left(b)) })
		out := slices.Clone(p.measures)
		for _, j := range jobs {
			out = append(out, left(j), j.Face.Up, j.Hole.Size.W, j.Hole.Size.H, j.Corner)
		}
		return out
	}
	asIs, turned := places(func(j Job) unit.Length { return j.front(j.Face.Left) }), places(func(j Job) unit.Length { return j.front(j.Face.Right()) })
	if !f.Curved {
		if slices.Compare(turned, asIs) < 0 {
			asIs, turned = turned, asIs
		}
		p.turned = turned
	}
	p.measures = asIs
	for _, j := range jobs {
		p.within = append(p.within, placeTolerance, placeTolerance, size, size, radiusTolerance)
		p.holes = append(p.holes, j.Hole.ID)
	}
	p.what = describe(jobs)
	return p
}

// coverOf returns a job's cover.
func coverOf(j Job) part {
	c := j.Cover
	return part{
		name: string(c.Material), exists: j.CoverExists(), holes: []string{j.Hole.ID}, mass: c.Mass,
		measures: []unit.Length{c.Plug.W, c.Plug.H, c.PlugCorner, c.PlugDepth},
		within:   []unit.Length{c.Options.PlugTolerance, c.Options.PlugTolerance, radiusTolerance, sheetTolerance},
		what:     say.Make("%s, plug %s", c.Material, fineSize(c.Plug)),
	}
}

// describe says what a drilled pane is.
func describe(jobs []Job) say.Sentence {
	j := jobs[0]
	curved, word := "", "hole"
	if j.Face.Curved {
		curved = ", curved"
	}
	if len(jobs) > 1 {
		word = "holes"
	}
	lefts := say.Make("%s", say.Fine(j.front(j.Face.Left)))
	for _, k := range jobs[1:] {
		lefts = say.Make("%s and %s", lefts, say.Fine(k.front(k.Face.Left)))
	}
	return say.Make("%s, %s, %s%s, %s %s from the left", j.Material.Name, say.Fine(j.Thick),
		fineSize{W: j.front(j.Face.Width), H: j.Face.Height}, curved, word, lefts)
}

// fineSize is a size as on a drawing: "5 1/2 x 4 1/2 in".
type fineSize unit.Size

// Say prints the size as on a drawing.
func (s fineSize) Say(sys unit.System) string { return unit.Size(s).FormatFine(sys) }

// kinds goes through the kinds of panes, then those of covers.
func (l *List) kinds() iter.Seq[*Alike] {
	return func(yield func(*Alike) bool) {
		for _, list := range [][]Alike{l.Panes, l.Covers} {
			for i := range list {
				if !yield(&list[i]) {
					return
				}
			}
		}
	}
}
