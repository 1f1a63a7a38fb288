package rules

import (
	"maps"
	"slices"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
)

// kind is how one kind of rule is written: its fields, besides id, kind, note
// and dispensation, and how they are read.
type kind struct {
	fields []string
	read   func(m form.Map) law
}

// kinds is the table of all kinds, read only.
var kinds = map[string]kind{
	"most-in-all":      {[]string{"most"}, func(m form.Map) law { return mostInAll{readMost(m)} }},
	"most-per-corner":  {[]string{"most"}, func(m form.Map) law { return mostPerCorner{readMost(m)} }},
	"stretches":        {[]string{"stretches"}, readStretches},
	"least-separation": {[]string{"least", "between"}, readSeparation},
	"hole-to-hole":     {[]string{"least"}, func(m form.Map) law { return holeToHole{readLeast(m)} }},
	"hole-size":        {[]string{"size", "tolerance"}, readHoleSize},
	"size-at-most":     {[]string{"size"}, func(m form.Map) law { return sizeAtMost{m.At("size").Size()} }},
	"hole-least":       {[]string{"least"}, func(m form.Map) law { return holeLeast{readLeast(m)} }},
	"height-range":     {[]string{"of", "above", "least", "most"}, readHeightRange},
	"corner-radius":    {[]string{"least"}, func(m form.Map) law { return cornerRadius{readLeast(m)} }},
	"edge-rounding":    {[]string{"least"}, func(m form.Map) law { return edgeRounding{readLeast(m)} }},
	"cover":            {nil, func(form.Map) law { return coverDue{} }},
	"tether":           {nil, func(form.Map) law { return tetherDue{} }},
	"pane-edge":        {[]string{"least"}, func(m form.Map) law { return paneEdge{readLeast(m)} }},
	"pane-corner":      {[]string{"least"}, func(m form.Map) law { return paneCorner{readLeast(m)} }},
	"cut-out-share":    {[]string{"most"}, func(m form.Map) law { return cutOutShare{form.Parse(m.At("most"), parseShare)} }},
	"materials":        {[]string{"allowed"}, func(m form.Map) law { return allowedMaterials{readMaterials(m.At("allowed"))} }},
	"forbidden-zones":  {[]string{"zones", "clearance"}, readForbidden},
	"no-opening":       {[]string{"exempt", "ways-left"}, readNoOpening},
}

// Kinds returns the kinds of rules, sorted.
func Kinds() []string { return slices.Sorted(maps.Keys(kinds)) }

// mostHoles is the greatest cap that is read.
const mostHoles = 10000

func readMost(m form.Map) int { return m.At("most").Int(0, mostHoles) }

// readLeast reads a distance above zero.
func readLeast(m form.Map) Distance {
	d := form.Parse(m.At("least"), ParseDistance)
	if m.Has("least") && d == (Distance{}) {
		m.At("least").Failf("must be more than zero; leave the rule out instead")
	}
	return d
}

func readSeparation(m form.Map) law {
	l := leastSeparation{least: m.At("least").LengthAbove()}
	if m.Has("between") {
		l.rims = m.At("between").Choice("centres", "rims") == "rims"
	}
	return l
}

func readHoleSize(m form.Map) law {
	return holeSize{size: m.At("size").Size(), tolerance: m.At("tolerance").Length()}
}

func readHeightRange(m form.Map) law {
	l := heightRange{least: m.At("least").MaybeLength(), most: m.At("most").MaybeLength()}
	if m.Has("of") {
		l.rim = m.At("of").Choice("centre", "rim") == "rim"
	}
	if m.Has("above") {
		l.boards = m.At("above").Choice("ice", "boards") == "boards"
	}
	least, hasLeast := l.least.Get()
	most, hasMost := l.most.Get()
	if !hasLeast && !hasMost {
		m.Failf("a height-range needs least, most or both")
	}
	if hasLeast && hasMost && least > most {
		m.At("most").Failf("is below least; change one of them")
	}
	return l
}

func readStretches(m form.Map) law {
	var l stretches
	for _, n := range m.At("stretches").List(maxEntries) {
		l.pieces = append(l.pieces, readPiece(n))
	}
	if len(l.pieces) == 0 {
		m.At("stretches").Failf("must hold at least one stretch")
	}
	return l
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

func readForbidden(m form.Map) law {
	var l forbiddenZones
	for _, z := range m.At("zones").List(len(arena.ZoneKinds())) {
		l.kinds = append(l.kinds, z.Choice(arena.ZoneKinds()...))
	}
	if len(l.kinds) == 0 {
		m.At("zones").Failf("must name a kind of zone: %s", form.Choices(arena.ZoneKinds()))
	}
	if m.Has("clearance") {
		l.clearance = m.At("clearance").Length()
	}
	return l
}

func readNoOpening(m form.Map) law {
	var l noOpening
	if m.Has("exempt") {
		for _, n := range m.At("exempt").List(maxEntries) {
			e := n.Map("name", "zone", "diameter", "tolerance", "most")
			l.exempt = append(l.exempt, exemption{
				name: e.At("name").Text(), zone: e.At("zone").Choice(arena.ZoneKinds()...),
				diameter: e.At("diameter").LengthAbove(), tolerance: e.At("tolerance").Length(), most: readMost(e),
			})
		}
	}
	if m.Has("ways-left") {
		for _, w := range m.At("ways-left").List(maxEntries) {
			l.ways = append(l.ways, w.Text())
		}
	}
	return l
}
