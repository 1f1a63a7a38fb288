package chart

import (
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// opening is a hole or a low window of a row, with its label.
type opening struct {
	key, id, note, title string
	at, height           unit.Length // offset in the row, centre above the ice
	size                 unit.Size
	corner               unit.Length
	class                string
	mark                 func(g *sheet.Group, at sheet.Point)
}

// openings draws the row's holes and low windows at true size and place, their
// marks and labels side by side above the glass.
func (r *stripRow) openings() {
	here := append(r.holes(), r.windows()...)
	slots := make([]slot, len(here))
	for i, o := range here {
		slots[i] = slot{r.x(o.at), o.tagWidth() / 2}
	}
	for i, x := range spread(slots, labelGap, stripLeft-8, r.d.W-1) {
		o := here[i]
		g, e := r.d.Group("holes", "hole-mark")
		e.With(o.key, o.id).With("station", stationData(r.Arena.Rink.Wrap(r.from+o.at))).With("height", stationData(o.height)).As("button").Titled(o.title)
		box := r.box(piece{o.at - o.size.W/2, o.at + o.size.W/2}, o.height-o.size.H/2, o.height+o.size.H/2)
		g.Add("hit", sheet.Circle{C: sheet.Pt(box.X+box.W/2, box.Y+box.H/2), R: max(hitSize, box.W)})
		if o.key == "hole" && o.id == r.Picked {
			g.Add("picked", sheet.RoundRect(box.Inset(-0.9), 0.6))
		}
		g.Add(o.class, sheet.RoundRect(box, r.scale*o.corner.Metres()))
		r.openingTag(g, o, x, sheet.Pt(box.X+box.W/2, box.Y))
	}
}

func (r *stripRow) holes() []opening {
	var out []opening
	for _, h := range r.Arena.Holes {
		at, ok := r.at(h.Station)
		if !ok {
			continue
		}
		note := r.Notes[h.ID]
		if note == "" {
			note = r.heightWords(h.Height)
		}
		out = append(out, opening{
			key: "hole", id: h.ID, note: note, at: at, height: h.Height, size: h.Size, corner: h.Corner.Or(0), class: "hole-cut",
			title: "Hole " + h.ID + ": " + markWords(h.State, r.Status[h.ID]) + ", " + h.Size.Format(r.Arena.Units),
			mark:  func(g *sheet.Group, at sheet.Point) { drawMark(g, at, h.State, r.Status[h.ID]) },
		})
	}
	return out
}

func (r *stripRow) windows() []opening {
	var out []opening
	for _, w := range r.Arena.Windows {
		at, ok := r.at(w.Station)
		if !ok {
			continue
		}
		class := "window"
		if w.Printed {
			class += " window-printed"
		}
		out = append(out, opening{
			key: "window", id: w.ID, note: r.heightWords(w.Height), at: at, height: w.Height, size: w.Size, class: class,
			title: "Low window " + w.ID + ", " + w.Size.Format(r.Arena.Units),
			mark: func(g *sheet.Group, at sheet.Point) {
				g.Add("window", sheet.RoundRect(sheet.Rect{X: at.X - 1.4, Y: at.Y - 0.9, W: 2.8, H: 1.8}, 0))
			},
		})
	}
	return out
}

// heightWords says how high above the ice a centre is.
func (r *stripRow) heightWords(l unit.Length) string { return l.Format(r.Arena.Units) + " up" }

// tagWidth is the room that a mark and its label take, in millimetres.
func (o opening) tagWidth() float64 { return 2*markSize + 1 + labelWidth(o.id, o.note) }

// openingTag sets the mark, label and note with their middle at x, and the
// leader down to the opening's top.
func (r *stripRow) openingTag(g *sheet.Group, o opening, x float64, top sheet.Point) {
	foot := r.top - stretchHigh
	y := foot - labelsHigh + 1
	left := x - o.tagWidth()/2
	if r.Moving { // a press on the tag, or on the way down from it, is one on the hole
		g.Add("hit-tag", sheet.RoundRect(sheet.Rect{X: left, Y: y - 1, W: o.tagWidth(), H: foot - y}, 0))
		g.Add("hit-tag", sheet.RoundRect(sheet.Rect{X: top.X - hitSize/2, Y: foot, W: hitSize, H: top.Y - foot}, 0))
	}
	mark := sheet.Pt(left+markSize, y+1.1)
	g.Add("leader", sheet.Lines(sheet.Pt(mark.X, mark.Y+markSize+0.6), sheet.Pt(mark.X, foot-2.2), sheet.Pt(top.X, foot), top))
	o.mark(g, mark)
	tx := left + 2*markSize + 1
	g.Add("hole-label", sheet.Text{At: sheet.Pt(tx, y), S: o.id, VAlign: sheet.Top})
	g.Add("hole-note", sheet.Text{At: sheet.Pt(tx, y+labelHigh), S: o.note, VAlign: sheet.Top})
}

// legend sets the strip's legend at its foot.
func (s *strip) legend() {
	g, _ := s.d.Group("legend", "")
	entries := append(s.markEntries(), s.materialEntries("glass")...)
	entries = append(entries, s.stretchEntries()...)
	entries = append(entries, boxEntry("curve", "boards curve here"))
	entries = append(entries, s.wallEntries()...)
	entries = append(entries, s.zoneEntries()...)
	s.d.H += drawLegend(g, sheet.Pt(2, s.d.H-1), s.d.W-4, entries) + 1
}
