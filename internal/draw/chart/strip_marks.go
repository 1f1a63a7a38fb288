package chart

import (
	"math"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

const quarterTurn = math.Pi / 2

// ruler draws the station ruler below the ice.
func (r *stripRow) ruler() {
	g, _ := r.d.Group("stations", "")
	minor, each := unit.Metre, 5
	if r.Arena.Units == unit.Imperial {
		minor, each = 5*unit.Foot, 2
	}
	for r.scale*minor.Metres() < 1.5 {
		minor, each = minor*unit.Length(each), 5
	}
	y := r.ice + 2
	g.Add("station", sheet.Line{A: sheet.Pt(r.x(0), y), B: sheet.Pt(r.x(r.length), y)})
	first := int(math.Ceil(float64(r.from/minor) - 1e-9))
	for k := first; ; k++ {
		o := minor*unit.Length(k) - r.from
		if o > r.length+unit.Millimetre || minor*unit.Length(k) > r.per {
			break
		}
		long := 1.0
		if k%each == 0 {
			long = 1.8
			r.rulerText(g, minor*unit.Length(k), o, y+2.6)
		}
		g.Add("station", sheet.Line{A: sheet.Pt(r.x(o), y), B: sheet.Pt(r.x(o), y+long)})
	}
}

// rulerText sets a station's number unless it would stand over the row's end.
func (r *stripRow) rulerText(g *sheet.Group, s, o unit.Length, y float64) {
	name := stationName(s, r.Arena.Units)
	half := sheet.Regular.Width(name, sizeTiny) / 2
	if x := r.x(o); x+half < r.d.W-0.5 && (o == 0 || x-half > r.x(0)-2) {
		g.Add("station-text", sheet.Text{At: sheet.Pt(x, y), S: name, Anchor: sheet.Middle, VAlign: sheet.Top})
	}
}

// farLabel is how far, in millimetres, a landmark's name may be pushed along
// before it would seem to name something else and is left out.
const farLabel = 3

// namedPlace is a landmark of a row: its name, and how far from the row's start it is.
type namedPlace struct {
	words  string
	offset unit.Length
}

// landmarksHere are the landmarks of the row.
func (r *stripRow) landmarksHere() (found []namedPlace) {
	for _, c := range rink.Corners() {
		for _, l := range rink.Landmarks() {
			if s, ok := r.Arena.Rink.Landmark(c, l); ok {
				if o, in := r.at(s); in {
					found = append(found, namedPlace{strings.ReplaceAll(string(l), "-", " "), o})
				}
			}
		}
	}
	return found
}

// landmarks draws the landmarks as lines over boards and glass, named at the
// foot of the boards.
func (r *stripRow) landmarks() {
	found := r.landmarksHere()
	slots := make([]slot, len(found))
	for i, f := range found {
		half := sheet.Regular.Width(f.words, sizeTiny) / 2
		slots[i] = slot{r.x(f.offset) + half + 0.7, half}
		if r.windowWithin(slots[i].want-half, slots[i].want+half) {
			slots[i].want = r.x(f.offset) - half - 0.7
		}
	}
	g, _ := r.d.Group("landmarks", "")
	for i, x := range spread(slots, 1.5, r.x(0), r.x(r.length)) {
		at := r.x(found[i].offset)
		g.Add("landmark", sheet.Line{A: sheet.Pt(at, r.top), B: sheet.Pt(at, r.ice+2)})
		if math.Abs(x-slots[i].want) < farLabel {
			t := sheet.Text{At: sheet.Pt(x, r.ice-0.9), S: found[i].words, Anchor: sheet.Middle}
			box := t.Box(r.d.Styles.Resolve("glass-text", sheet.Style{}))
			g.Add("boards", sheet.RoundRect(box, 0))
			g.Add("glass-text", t)
		}
	}
}

// windowWithin reports whether a low window of the row stands between two places
// on the sheet.
func (r *stripRow) windowWithin(x0, x1 float64) bool {
	for _, w := range r.Arena.Windows {
		half := r.scale * w.Size.W.Metres() / 2
		if o, ok := r.at(w.Station); ok && r.x(o)+half > x0 && r.x(o)-half < x1 {
			return true
		}
	}
	return false
}

// zones draws the zones as bands below everything, their names in the bands or,
// where they do not fit, below.
func (r *stripRow) zones() {
	y := r.ice + rulerHigh
	var slots []slot
	var names []string
	for _, z := range r.Arena.Zones {
		from, to := z.From, z.From+r.Arena.Rink.Wrap(z.To-z.From)
		for _, q := range r.pieces(from, to) {
			g, e := r.d.Group("zones", "")
			e.With("zone", z.ID).Titled(zoneName(z.ID, z.Kind))
			box := sheet.Rect{X: r.x(q.from), Y: y, W: r.x(q.to) - r.x(q.from), H: bandHigh - 0.6}
			drawZone(g, z.Kind, sheet.RoundRect(box, 0))
			name, mid := fitting(box.W-1, zoneName(z.ID, z.Kind), z.ID), box.X+box.W/2
			if name != "" {
				g.Add("zone-text", sheet.Text{At: sheet.Pt(mid, y+box.H/2), S: name, Anchor: sheet.Middle, VAlign: sheet.Centre})
				continue
			}
			names = append(names, z.ID)
			slots = append(slots, slot{mid, sheet.Regular.Width(z.ID, sizeTiny) / 2})
		}
	}
	g, _ := r.d.Group("zones", "")
	y += bandHigh - 0.6
	for i, x := range spread(slots, 1.5, stripLeft-8, r.d.W-1) {
		g.Add("leader", sheet.Line{A: sheet.Pt(slots[i].want, y), B: sheet.Pt(x, y+1)})
		g.Add("zone-text", sheet.Text{At: sheet.Pt(x, y+1.3), S: names[i], Anchor: sheet.Middle, VAlign: sheet.Top})
	}
}

// fitting returns the first of some names that fits into a width at the smallest
// type, or "".
func fitting(width float64, names ...string) string {
	for _, s := range names {
		if sheet.Regular.Width(s, sizeTiny) <= width {
			return s
		}
	}
	return ""
}

// stretches draws bars above the glass where a hole is permitted.
func (r *stripRow) stretches() {
	g, _ := r.d.Group("stretches", "")
	y := r.top - 1.6
	for _, v := range r.Undecided {
		for _, q := range r.pieces(v.From, v.To) {
			g.Add("stretch-open", sheet.Line{A: sheet.Pt(r.x(q.from), y), B: sheet.Pt(r.x(q.to), y)}).With("stretch", "unknown")
		}
	}
	for _, v := range r.Permitted {
		for _, q := range r.pieces(v.From, v.To) {
			g.Add("stretch", sheet.Line{A: sheet.Pt(r.x(q.from), y), B: sheet.Pt(r.x(q.to), y)}).With("stretch", "pass")
			for _, o := range []unit.Length{q.from, q.to} {
				g.Add("stretch-end", sheet.Line{A: sheet.Pt(r.x(o), y-0.9), B: sheet.Pt(r.x(o), y+0.9)})
			}
		}
	}
}
