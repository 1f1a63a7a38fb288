package chart

import (
	"math"
	"slices"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/glass"
)

// Kinds of zone that keep a hole out for reasons of their own, and how far apart
// the hatch lines of a keep-out stand, in millimetres.
const (
	keepOut      = "keep-out"
	broadcast    = "broadcast"
	hatchSpacing = 1.1
)

// drawZone adds a zone's band. Kinds differ without colour too: a keep-out is
// hatched, broadcast is dashed, the rest is plain.
func drawZone(g *sheet.Group, kind string, band sheet.Polyline) {
	g.Add("zone zone-"+kind, band)
	if kind != keepOut {
		return
	}
	var outline, lines sheet.Path
	outline.Add(band)
	for _, l := range sheet.Hatch(outline, math.Pi/4, hatchSpacing) {
		lines.MoveTo(l.A)
		lines.LineTo(l.B)
	}
	g.Add("zone-hatch", lines)
}

// zoneEntries says what the bands outside the boards are: a sample for each look in use.
func (p Content) zoneEntries() []entry {
	var out []entry
	for _, look := range []struct {
		kind, words string
	}{{keepOut, "keep-out"}, {broadcast, "broadcast"}, {"", "bench, box or other zone"}} {
		for _, z := range p.Arena.Zones {
			if z.Kind == look.kind || look.kind == "" && z.Kind != keepOut && z.Kind != broadcast {
				out = append(out, entry{look.words, 5, func(g *sheet.Group, at sheet.Point) {
					drawZone(g, look.kind, sheet.Polygon(sheet.Pt(at.X, at.Y-1.3), sheet.Pt(at.X+5, at.Y-1.3), sheet.Pt(at.X+5, at.Y+1.3), sheet.Pt(at.X, at.Y+1.3)))
				}})
				break
			}
		}
	}
	return out
}

// wallEntries says what stands on the boards beside panes and holes.
func (p Content) wallEntries() []entry {
	out := []entry{{"rink face of the boards", lineSample, func(g *sheet.Group, at sheet.Point) {
		g.Add("boards-face", sheet.Line{A: at, B: sheet.Pt(at.X+lineSample, at.Y)})
	}}}
	if len(p.Arena.Panes) > 0 {
		out = append(out, entry{"stanchion", 1, func(g *sheet.Group, at sheet.Point) {
			g.Add("stanchion", sheet.Line{A: sheet.Pt(at.X+0.5, at.Y-1.3), B: sheet.Pt(at.X+0.5, at.Y+1.3)})
		}})
	}
	if slices.ContainsFunc(p.Arena.Panes, func(q glass.Pane) bool { return q.Gate != "" }) {
		out = append(out, entry{"gate", lineSample, func(g *sheet.Group, at sheet.Point) {
			g.Add("pane pane-gate", sheet.Line{A: at, B: sheet.Pt(at.X+lineSample, at.Y)})
		}})
	}
	if len(p.Arena.Windows) > 0 {
		out = append(out, boxEntry("window", "low window"))
	}
	return out
}

// wedgeWords says what a wedge is: the angles between which the best lens's axis
// turns, not what its frame takes in.
func (p Content) wedgeWords() string {
	words := "turn of the best lens's axis with clean corners"
	deep := p.Reach[0].Depth
	if deep > 0 && !slices.ContainsFunc(p.Reach, func(w Wedge) bool { return w.Depth != deep }) {
		words += ", drawn " + deep.Format(p.Arena.Units) + " deep"
	}
	return words
}
