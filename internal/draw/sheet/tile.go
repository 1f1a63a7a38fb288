package sheet

import (
	"fmt"
	"math"
)

// Tiling is a drawing cut into sheets of paper that are laid edge over edge.
type Tiling struct {
	Paper   Paper
	Margin  float64 // millimetres that a printer leaves white on every side; 0 is 10
	Overlap float64 // millimetres that neighbours share; 0 is 10
}

const (
	defaultOverlap = 10.0 // mm
	registerArm    = 3.0  // mm, half a register mark's length
	mostTiles      = 400
)

// Tile cuts a drawing into sheets of the tiling's paper, in the orientation that
// needs fewer, row by row from the top left. Each carries register marks on the
// edges that overlap, check bars in both directions, its place ("row 1 of 2, column 2
// of 3") and the note to print at full size with the distances between the marks, so
// that every sheet can be measured. It fails when the paper is too small, and when more than
// 400 sheets would be needed.
func (d *Drawing) Tile(t Tiling) ([]*Drawing, error) {
	if t.Margin == 0 {
		t.Margin = Margin
	}
	if t.Overlap == 0 {
		t.Overlap = defaultOverlap
	}
	up, lying := t.grid(d, t.Paper.Portrait()), t.grid(d, t.Paper.Landscape())
	g := up
	if lying.cols*lying.rows < up.cols*up.rows {
		g = lying
	}
	if g.cols*g.rows > mostTiles {
		return nil, fmt.Errorf("a drawing of %s x %s mm needs more than %d sheets of %s: take larger paper",
			mm(d.W), mm(d.H), mostTiles, t.Paper.Name)
	}
	var out []*Drawing
	for row := range g.rows {
		for col := range g.cols {
			out = append(out, g.tile(d, row, col))
		}
	}
	return out, nil
}

// tileGrid is a tiling with its paper turned the right way.
type tileGrid struct {
	Tiling
	w, h       float64 // the part of a sheet that shows the drawing
	cols, rows int
}

func (t Tiling) grid(d *Drawing, p Paper) tileGrid {
	t.Paper = p
	g := tileGrid{Tiling: t, w: p.W - 2*t.Margin, h: p.H - 2*t.Margin}
	g.cols, g.rows = g.count(d.W, g.w), g.count(d.H, g.h)
	return g
}

// count returns how many sheets that show so much cover a length with overlaps.
func (g tileGrid) count(length, shown float64) int {
	if shown <= g.Overlap {
		return mostTiles + 1
	}
	n := math.Ceil((length-g.Overlap)/(shown-g.Overlap) - 1e-9)
	return int(min(max(n, 1), mostTiles+1))
}

func (g tileGrid) tile(d *Drawing, row, col int) *Drawing {
	name := fmt.Sprintf("%s-%d-%d", d.Name, row+1, col+1)
	t := g.Paper.Sheet(name, d.Styles.Merge(Base()))
	t.Title = fmt.Sprintf("%s, row %d of %d, column %d of %d", d.Title, row+1, g.rows, col+1, g.cols)
	from := Pt(float64(col)*(g.w-g.Overlap), float64(row)*(g.h-g.Overlap))
	window, _ := t.Group("", "")
	window.Offset = Pt(g.Margin, g.Margin)
	window.Clip = &Rect{0, 0, g.w, g.h}
	all := &Group{Offset: Pt(-from.X, -from.Y)}
	for _, layer := range d.LayerOrder() {
		for _, e := range d.Items {
			if e.Layer == layer {
				all.Items = append(all.Items, e)
			}
		}
	}
	window.Add("", all)
	marks, _ := t.Group("register", "")
	g.marks(marks, row, col)
	y := g.Margin / 2
	say := fmt.Sprintf("print at 100 %%: crosses %s mm across, %s mm up; lay them over each other", mm(g.w-g.Overlap), mm(g.h-g.Overlap))
	marks.Add("caption", Text{At: Pt(g.Margin+g.w, y), Anchor: End, VAlign: Centre, S: say})
	room := g.w - Regular.Width(say, SizeSmall) - captionGap
	size := Regular.FitSize(t.Title, SizeSmall, SizeSmall/2, room)
	marks.Add("caption", Text{At: Pt(g.Margin, y), VAlign: Centre, Size: size, S: Regular.Shorten(t.Title, size, room+1e-6)})
	t.CheckBars("register", Rect{g.Margin, g.Margin, g.w, g.h})
	return t
}

const captionGap = 4.0 // mm between the two captions of a tile

// marks sets crosses in the middle of each overlap, at both ends of the shared
// edge: the same place of the drawing on both sheets.
func (g tileGrid) marks(m *Group, row, col int) {
	half := g.Overlap / 2
	x0, y0, x1, y1 := g.Margin+half, g.Margin+half, g.Margin+g.w-half, g.Margin+g.h-half
	left, right, top, foot := col > 0, col < g.cols-1, row > 0, row < g.rows-1
	for _, c := range []struct {
		on bool
		at Point
	}{{left || top, Pt(x0, y0)}, {right || top, Pt(x1, y0)}, {left || foot, Pt(x0, y1)}, {right || foot, Pt(x1, y1)}} {
		if c.on {
			m.Add("register", Line{Pt(c.at.X-registerArm, c.at.Y), Pt(c.at.X+registerArm, c.at.Y)})
			m.Add("register", Line{Pt(c.at.X, c.at.Y-registerArm), Pt(c.at.X, c.at.Y+registerArm)})
			m.Add("register", Circle{C: c.at, R: registerArm / 2})
		}
	}
}
