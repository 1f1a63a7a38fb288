package chart

import (
	"fmt"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// Distances on the boards strip in millimetres.
const (
	stripLeft   = 15.0 // room for heights at a row's left end
	stripRight  = 4.0
	captionHigh = 5.0  // a row's name
	labelsHigh  = 11.0 // labels of holes with their leaders
	stretchHigh = 3.2  // the bar of permitted stretches above the glass
	rulerHigh   = 7.2  // ticks and stations below the ice
	bandHigh    = 4.2  // zones
	namesHigh   = 2.4  // names of zones too narrow for them
	rowGap      = 4.0
	mostRows    = 40
	cornerRows  = 4 // rows that show a corner each
)

// BoardsStrip draws the boards and the glass unrolled along the stations, as
// seen from the spectators' side: stations rise to the right. Widths and heights
// have one scale, panes, holes and windows their true size. The strip is cut
// into so many rows of equal length from station 0 (at least 1; 4 rows show a
// corner each), for a drawing of a width in millimetres (120 at least).
func BoardsStrip(p Content, width float64, rows int) *sheet.Drawing {
	rows = min(max(rows, 1), mostRows)
	width = max(width, leastWidth)
	s := newStrip(p, width, rows)
	s.d = sheet.New("boards-strip", width, 0, Styles())
	s.d.Layers = []string{"ice", "boards", "glass", "zones", "stretches", "stations", "landmarks", "holes", "labels", "legend"}
	s.d.Title = "Boards strip of " + p.Arena.Name
	s.d.Desc = fmt.Sprintf("Boards and glass along the stations, seen from the spectators' side, in %s.", say.Count(rows, "row"))
	y := 0.0
	if !p.Bare {
		y = s.heading()
	}
	for i := range rows {
		y = s.row(i, y)
	}
	s.d.H = y
	if !p.Bare {
		s.legend()
	}
	return s.d
}

func newStrip(p Content, width float64, rows int) *strip {
	per := p.Arena.Rink.Perimeter()
	s := &strip{Content: p, per: per, length: per / unit.Length(rows), rows: rows, high: p.Arena.Boards.Height}
	s.scale = (width - stripLeft - stripRight) / s.length.Metres()
	if !p.Bare && !p.Moving { // a drawing of its own: on paper its scale counts
		s.scale = p.onPaper(s.scale)
	}
	for _, q := range p.Arena.Panes {
		s.high = max(s.high, p.Arena.Boards.Height+q.Height)
	}
	return s
}

type strip struct {
	Content
	d      *sheet.Drawing
	per    unit.Length
	length unit.Length // of a row
	rows   int
	scale  float64     // mm on paper for a metre
	high   unit.Length // top of the highest glass above the ice
}

func (s *strip) heading() float64 {
	s.Content.heading(s.d, "Boards strip, "+s.Arena.Name,
		fmt.Sprintf("Unrolled from station 0 at the bench-side end of the red line toward end B, seen from the spectators' side, 1:%.0f.", s.says(s.scale)))
	return s.headingRoom() + 2
}

// row draws one row below y and returns where the next begins, in millimetres.
func (s *strip) row(i int, y float64) float64 {
	r := s.rowAt(i, y)
	if !s.Moving { // a page shows the one row there is, under a head of its own
		r.caption(i, y)
	}
	r.wall()
	r.panes()
	r.curves()
	r.ruler()
	r.landmarks()
	r.zones()
	r.stretches()
	r.openings()
	if s.Moving {
		r.guide()
	}
	foot := r.ice + rulerHigh + bandHigh + namesHigh
	if s.Moving {
		return foot + 1
	}
	return foot + rowGap
}

// rowAt places a row below y on the sheet.
func (s *strip) rowAt(i int, y float64) *stripRow {
	r := &stripRow{strip: s, from: s.length * unit.Length(i)}
	r.top = y + labelsHigh + stretchHigh
	if !s.Moving {
		r.top += captionHigh
	}
	r.ice = r.top + s.scale*s.high.Metres()
	return r
}

// stripRow is one row of the strip: where its first station and the ice lie.
type stripRow struct {
	*strip
	from     unit.Length
	top, ice float64 // mm
}

// x returns where a station of this row lies, in millimetres; offset is counted
// from the row's first station.
func (r *stripRow) x(offset unit.Length) float64 { return stripLeft + r.scale*offset.Metres() }

// y returns where a height above the ice lies, in millimetres.
func (r *stripRow) y(height unit.Length) float64 { return r.ice - r.scale*height.Metres() }

// piece is a part of a row, as offsets from its first station.
type piece struct{ from, to unit.Length }

// pieces returns the parts of a stretch of boards that lie in this row.
func (r *stripRow) pieces(from, to unit.Length) []piece {
	const least = unit.Millimetre
	length := to - from
	start := r.Arena.Rink.Wrap(from - r.from)
	var out []piece
	for _, a := range []unit.Length{start - r.per, start} {
		p := piece{max(a, 0), min(a+length, r.length)}
		if p.to-p.from > least {
			out = append(out, p)
		}
	}
	return out
}

// at returns a station's offset in this row, and whether it lies in it.
func (r *stripRow) at(station unit.Length) (unit.Length, bool) {
	o := r.Arena.Rink.Wrap(station - r.from)
	return o, o < r.length
}

func (r *stripRow) box(p piece, low, high unit.Length) sheet.Rect {
	return sheet.Rect{X: r.x(p.from), Y: r.y(high), W: r.scale * (p.to - p.from).Metres(), H: r.scale * (high - low).Metres()}
}

// caption names the row: the corner that a quarter shows, and its stations.
func (r *stripRow) caption(i int, y float64) {
	sys := r.Arena.Units
	span := "tations " + stationName(r.from, sys) + " to " + stationName(r.from+r.length, sys)
	s := "S" + span
	if r.rows == cornerRows && r.Arena.Rink.Marked() {
		s = "Corner " + rink.Corners()[i].String() + ": " + [...]string{
			"from the red line to the middle of end B", "from the middle of end B to the red line",
			"from the red line to the middle of end A", "from the middle of end A to the red line"}[i] +
			", s" + span
	}
	r.d.Add("labels", "caption", sheet.Text{At: sheet.Pt(2, y+0.5), S: s, VAlign: sheet.Top})
}
