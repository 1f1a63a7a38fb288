package sheet

import (
	"cmp"
	"slices"

	"example.org/rinkpane/internal/tell/table"
)

// The room in a cell beside and above its text, and the distance between lines,
// as shares of the type size (no unit).
const (
	cellSide    = 0.55
	cellRise    = 0.5
	cellLeading = 1.25
)

// TableLayout is a table fitted to a width: columns and rows in millimetres.
type TableLayout struct {
	table   table.Table // the columns for people
	size    float64
	widths  []float64
	cells   [][][]string // wrapped lines by row and column, the head first
	heights []float64
	part    *Part
}

// FitTable lays a table out in a type size and for a width, both in
// millimetres: the columns for people, numbers to the right, rows that stand
// out bold. Columns take what their text needs; when that is too much, the
// widest columns give way and wrap.
func FitTable(t table.Table, size, width float64) *TableLayout {
	l := &TableLayout{table: t.Shown(), size: size, part: &Part{Role: RoleTable}}
	rows := append([][]string{l.table.Heads()}, l.table.Texts()...)
	l.widths = shareWidths(l.wanted(rows), width)
	for _, row := range rows {
		l.addRow(row)
	}
	return l
}

// wanted returns the width of each column's longest text, in millimetres.
func (l *TableLayout) wanted(rows [][]string) []float64 {
	w := make([]float64, len(l.table.Columns))
	for _, row := range rows {
		for i, s := range row {
			w[i] = max(w[i], l.widthOf(s)+2*cellSide*l.size)
		}
	}
	return w
}

// widthOf returns a text's width in millimetres in whichever weight is wider.
func (l *TableLayout) widthOf(s string) float64 {
	return max(Regular.Width(s, l.size), Bold.Width(s, l.size))
}

// shareWidths gives each column what it wants, or, when the sum is too much,
// caps the widest columns at one common width.
func shareWidths(want []float64, total float64) []float64 {
	order := make([]int, len(want))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(want[a], want[b]) })
	out := make([]float64, len(want))
	for k, i := range order {
		out[i] = min(want[i], max(total, 0)/float64(len(order)-k))
		total -= out[i]
	}
	return out
}

func (l *TableLayout) addRow(row []string) {
	cells := make([][]string, len(row))
	lines := 1
	face := Regular
	if n := len(l.cells); n == 0 || l.strong(n-1) {
		face = Bold
	}
	for i, s := range row {
		cells[i] = face.Wrap(s, l.size, l.widths[i]-2*cellSide*l.size+1e-6)
		lines = max(lines, len(cells[i]))
	}
	l.cells = append(l.cells, cells)
	l.heights = append(l.heights, l.size*(2*cellRise+0.72+cellLeading*float64(lines-1)))
}

// strong reports whether a row stands out; the head is none of the rows.
func (l *TableLayout) strong(row int) bool { return row < len(l.table.Strong) && l.table.Strong[row] }

// Width returns the table's width in millimetres.
func (l *TableLayout) Width() float64 { return sum(l.widths) }

// Height returns the height in millimetres of the head and so many rows from a row on.
func (l *TableLayout) Height(from, rows int) float64 {
	return l.heights[0] + sum(l.heights[1+from:1+from+rows])
}

// Rows returns the number of rows without the head.
func (l *TableLayout) Rows() int { return len(l.cells) - 1 }

// Fits returns how many rows from a row on stand within a height in millimetres,
// the head counted.
func (l *TableLayout) Fits(from int, height float64) int {
	n, h := 0, l.heights[0]
	for i := from; i < l.Rows(); i++ {
		if h += l.heights[1+i]; h > height+1e-9 {
			break
		}
		n++
	}
	return n
}

func sum(v []float64) float64 {
	s := 0.0
	for _, x := range v {
		s += x
	}
	return s
}

// Draw adds the head and rows from a row on, its top left corner at a point, and
// returns the height in millimetres.
func (l *TableLayout) Draw(g *Group, at Point, from, rows int) float64 {
	y := at.Y
	w := l.Width()
	g.Add("table-head", RoundRect(Rect{at.X, y, w, l.heights[0]}, 0))
	l.row(g, Pt(at.X, y), 0, true, from == 0) // a head told again is decoration
	y += l.heights[0]
	g.Add("rule", Line{Pt(at.X, y), Pt(at.X+w, y)})
	for i := from; i < from+rows; i++ {
		l.row(g, Pt(at.X, y), 1+i, l.strong(i), true)
		y += l.heights[1+i]
		g.Add("rule-thin", Line{Pt(at.X, y), Pt(at.X+w, y)})
	}
	return y - at.Y
}

func (l *TableLayout) row(g *Group, at Point, row int, strong, told bool) {
	role := RoleCell
	if row == 0 {
		role = RoleHead
	}
	var parts *Part
	if told {
		parts = l.part.Within(RoleRow)
	}
	x := at.X
	side := cellSide * l.size
	class := "text"
	if strong {
		class = "text strong"
	}
	for i, lines := range l.cells[row] {
		anchor, tx := Start, x+side
		if l.table.Columns[i].Right {
			anchor, tx = End, x+l.widths[i]-side
		}
		var part *Part
		if told {
			part = parts.Within(role)
		}
		for k, s := range lines {
			if s != "" {
				y := at.Y + l.size*(cellRise+cellLeading*float64(k))
				g.Add(class, Text{At: Pt(tx, y), S: s, Size: l.size, Anchor: anchor, VAlign: Top}).PartOf(part)
			} else if told {
				g.Add("", &Group{}).PartOf(part) // an empty cell keeps its place
			}
		}
		x += l.widths[i]
	}
}
