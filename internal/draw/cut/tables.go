package cut

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
)

// field is a column: its head on paper, its name in CSV, either "" where it
// has no place there.
func field[T any](head, name string, cell func(row T, sys unit.System) table.Cell) table.Field[T] {
	return table.Field[T]{Column: table.Column{Head: head, Name: name}, Cell: cell}
}

func numbers[T any](head, name string, cell func(row T, sys unit.System) table.Cell) table.Field[T] {
	f := field(head, name, cell)
	f.Right = true
	return f
}

// lengths is a column of lengths: on paper as on a drawing, in CSV in millimetres.
func lengths[T any](head, name string, of func(T) unit.Length) table.Field[T] {
	return numbers(head, name, func(row T, sys unit.System) table.Cell {
		l := of(row)
		return table.Number(l.FormatCut(sys), inMillimetres(l))
	})
}

// inMillimetres is a length in millimetres to the nanometre, without the last
// digits of binary arithmetic.
func inMillimetres(l unit.Length) float64 { return math.Round(l.Millimetres()*1e6) / 1e6 }

func texts[T any](head, name string, of func(T) string) table.Field[T] {
	return field(head, name, func(row T, _ unit.System) table.Cell { return table.Words(of(row)) })
}

// sentences is a column of words with lengths in them.
func sentences[T any](head, name string, of func(T) []say.Sentence) table.Field[T] {
	return field(head, name, func(row T, sys unit.System) table.Cell { return table.Words(joined(of(row), sys)) })
}

func counts[T any](head, name string, of func(T) int) table.Field[T] {
	return numbers(head, name, func(row T, _ unit.System) table.Cell {
		return table.Cell{Text: fmt.Sprint(of(row)), Value: of(row)}
	})
}

// drawn makes a column of drawn holes: empty where there is no drawing.
func drawn(f table.Field[ListRow]) table.Field[ListRow] {
	cell := f.Cell
	f.Cell = func(r ListRow, sys unit.System) table.Cell {
		if len(r.Refused) > 0 {
			return table.Words("")
		}
		return cell(r, sys)
	}
	return f
}

// mass is a column of masses: a pane with several holes weighs once, so that
// the column adds up.
func mass(head, name string, of func(Job) float64) table.Field[ListRow] {
	return drawn(numbers(head, name, func(r ListRow, _ unit.System) table.Cell {
		if !r.First {
			return table.Cell{Text: "same pane", Value: ""}
		}
		return table.Number(fmt.Sprintf("%.1f", of(r.Job)), of(r.Job))
	}))
}

// holeFields are the columns of the cut list. Those without a head are for
// spreadsheets, those without a name for paper.
func holeFields(mark string) table.Fields[ListRow] {
	type row = ListRow
	size := func(head string, of func(Job) unit.Size) table.Field[row] {
		return drawn(numbers(head, "", func(r row, sys unit.System) table.Cell { return table.Words(of(r.Job).FormatFine(sys)) }))
	}
	length := func(head, name string, of func(Job) unit.Length) table.Field[row] {
		return drawn(lengths(head, name, func(r row) unit.Length { return of(r.Job) }))
	}
	return table.Fields[row]{
		texts("hole", "hole", func(r row) string { return r.Job.Hole.ID }),
		texts("work", "work", func(r row) string { return string(r.Work()) }),
		texts("", "state", func(r row) string { return stateWord(r.Job) }),
		texts("pane", "pane", func(r row) string { return r.Job.Hole.Pane }),
		drawn(texts("material", "material", func(r row) string { return string(r.Job.Material.Name) })),
		length("thick", "thick_mm", func(j Job) unit.Length { return j.Thick }),
		size("pane, width x height", func(j Job) unit.Size { return unit.Size{W: j.front(j.Face.Width), H: j.Face.Height} }),
		length("", "pane_width_mm", func(j Job) unit.Length { return j.front(j.Face.Width) }),
		length("", "pane_height_mm", func(j Job) unit.Length { return j.Face.Height }),
		drawn(texts("", "curved", func(r row) string { return fmt.Sprint(r.Job.Face.Curved) })),
		length("", "hole_left_mm", func(j Job) unit.Length { return j.front(j.Face.Left) }),
		length("", "hole_up_mm", func(j Job) unit.Length { return j.Face.Up }),
		size("hole", func(j Job) unit.Size { return j.Hole.Size }),
		length("", "hole_width_mm", func(j Job) unit.Length { return j.Hole.Size.W }),
		length("", "hole_height_mm", func(j Job) unit.Length { return j.Hole.Size.H }),
		length("corner", "corner_mm", func(j Job) unit.Length { return j.Corner }),
		length("", "rounding_mm", func(j Job) unit.Length { return j.Rounding }),
		drawn(texts("route", "route", func(r row) string { return string(r.Job.Route) })),
		size("cover's plug", func(j Job) unit.Size { return j.Cover.Plug }),
		length("", "plug_width_mm", func(j Job) unit.Length { return j.Cover.Plug.W }),
		length("", "plug_height_mm", func(j Job) unit.Length { return j.Cover.Plug.H }),
		drawn(texts("cover", "cover", func(r row) string { return string(workOf(r.Job.CoverExists())) })),
		mass("mass, kg", "mass_kg", func(j Job) float64 { return j.Whole }),
		mass("drilled, kg", "drilled_mass_kg", func(j Job) float64 { return j.Mass }),
		sentences("", "not_drawn", func(r row) []say.Sentence { return r.Refused }),
		sentences("", "not_passed", func(r row) []say.Sentence { return r.Job.NotPassed }),
		sentences("", "not_proved", func(r row) []say.Sentence { return r.Job.NotProved }),
		texts("", "plan", func(row) string { return mark }),
	}
}

// spotFields are the columns of a pane's holes, their places along the shooting face.
func spotFields(j paneJob) table.Fields[onPane] {
	return table.Fields[onPane]{
		texts("hole", "", func(k onPane) string { return k.Hole.ID }),
		texts("work", "", func(k onPane) string { return string(k.work) }),
		lengths("from A", "", func(k onPane) unit.Length { return j.front(k.Left) }),
		lengths("from B", "", func(k onPane) unit.Length { return k.Up }),
		numbers("width x height", "", func(k onPane, sys unit.System) table.Cell { return table.Words(k.Hole.Size.FormatFine(sys)) }),
		lengths("corners R", "", func(k onPane) unit.Length { return k.Corner }),
		lengths("(to the right edge)", "", func(k onPane) unit.Length { return j.front(j.Face.Width - k.Left) }),
	}
}

// rinkFields are the columns of their places along the rink face of a curved pane.
func rinkFields(f glass.Face) table.Fields[onPane] {
	return table.Fields[onPane]{
		texts("hole", "", func(k onPane) string { return k.Hole.ID }),
		lengths("from A", "", func(k onPane) unit.Length { return k.Left }),
		lengths("to the right edge", "", func(k onPane) unit.Length { return f.Width - k.Left }),
		lengths("pane's width", "", func(onPane) unit.Length { return f.Width }),
	}
}

// spareFields are the columns of the spares.
func spareFields() table.Fields[Alike] {
	return table.Fields[Alike]{
		texts("what", "what", func(k Alike) string {
			if k.Cover {
				return "cover"
			}
			return "drilled pane"
		}),
		sentences("of which kind", "kind", func(k Alike) []say.Sentence { return []say.Sentence{k.What} }),
		texts("holes", "holes", func(k Alike) string { return strings.Join(k.Holes, ", ") }),
		counts("exist", "exist", func(k Alike) int { return k.Exist }),
		counts("to make", "make", func(k Alike) int { return k.Make }),
		counts("spares to keep", "spares", func(k Alike) int { return k.Spares }),
		numbers("one weighs", "mass_kg", func(k Alike, _ unit.System) table.Cell {
			return table.Number(fmt.Sprintf("%.3g kg", k.Piece), k.Piece)
		}),
	}
}

// reasonFields are the columns of holes with a reason against them.
func reasonFields(head string, of func(ListRow) []say.Sentence) table.Fields[ListRow] {
	return table.Fields[ListRow]{
		texts("hole", "hole", func(r ListRow) string { return r.Job.Hole.ID }),
		sentences(head, "reasons", of),
	}
}

// sizeFields are the columns of a hole's sizes.
func sizeFields() table.Fields[size] {
	printed := func(head string, of func(unit.System) unit.System) table.Field[size] {
		return numbers(head, "", func(r size, sys unit.System) table.Cell { return table.Words(drawnAs(r.is, of(sys))) })
	}
	return table.Fields[size]{
		texts("size", "size", func(r size) string { return r.what }),
		printed("is", func(sys unit.System) unit.System { return sys }),
		printed("that is", other),
		lengths("", "size_mm", func(r size) unit.Length { return r.is }),
		field("tolerance", "", func(r size, sys unit.System) table.Cell { return table.Words(tolerance(r.plus, sys)) }),
		lengths("", "tolerance_mm", func(r size) unit.Length { return r.plus }),
	}
}

// limitFields are the columns of the distances that a hole keeps.
func limitFields() table.Fields[glass.Limit] {
	return table.Fields[glass.Limit]{
		texts("distance", "distance", func(l glass.Limit) string { return l.What }),
		lengths("has", "has_mm", func(l glass.Limit) unit.Length { return l.Have }),
		numbers("limit", "", func(l glass.Limit, sys unit.System) table.Cell {
			if l.AtMost {
				return table.Words("≤ " + l.Bound.FormatCut(sys))
			}
			return table.Words("≥ " + l.Bound.FormatCut(sys))
		}),
		lengths("", "limit_mm", func(l glass.Limit) unit.Length { return l.Bound }),
		texts("", "limit_is", func(l glass.Limit) string {
			if l.AtMost {
				return "most"
			}
			return "least"
		}),
		texts("kept", "kept", func(l glass.Limit) string {
			if l.Kept() {
				return "yes"
			}
			return "NO"
		}),
	}
}

// playFields are the columns of a plug's play in its hole.
func playFields() table.Fields[Fit] {
	fine := func(l unit.Length, sys unit.System) string {
		if sys == unit.Imperial {
			return fmt.Sprintf("%.3f", l.Inches())
		}
		return fmt.Sprintf("%.2f", l.Millimetres())
	}
	name := map[unit.System]string{unit.Metric: " mm", unit.Imperial: " in"}
	span := func(head, low, high string, of func(Fit) (a, b unit.Length)) table.Fields[Fit] {
		return table.Fields[Fit]{
			numbers(head, "", func(f Fit, sys unit.System) table.Cell {
				a, b := of(f)
				return table.Words(fine(a, sys) + " to " + fine(b, sys) + name[sys])
			}),
			lengths("", low, func(f Fit) unit.Length { a, _ := of(f); return a }),
			lengths("", high, func(f Fit) unit.Length { _, b := of(f); return b }),
		}
	}
	return slices.Concat(table.Fields[Fit]{
		texts("state", "state", func(f Fit) string { return f.State }),
		texts("along", "along", func(f Fit) string { return f.Along }),
		numbers("play", "play_mm", func(f Fit, sys unit.System) table.Cell {
			return table.Number(fine(f.Nominal, sys)+name[sys], inMillimetres(f.Nominal))
		}),
	},
		span("worst case", "worst_low_mm", "worst_high_mm", func(f Fit) (a, b unit.Length) { return f.Low, f.High }),
		span("r.s.s.", "rss_low_mm", "rss_high_mm", func(f Fit) (a, b unit.Length) { return f.LowRSS, f.HighRSS }))
}

// ofWhich puts a column with a name before a table's: of which hole, or window, its rows are.
func ofWhich(what, id string, t table.Table) table.Table {
	t.Columns = append([]table.Column{{Name: what}}, t.Columns...)
	rows := make([][]table.Cell, len(t.Rows))
	for i, r := range t.Rows {
		rows[i] = append([]table.Cell{table.Words(id)}, r...)
	}
	t.Rows = rows
	return t
}

// csvOf writes a table for a spreadsheet.
func csvOf(t table.Table) []byte {
	var b bytes.Buffer
	_ = t.CSV(&b) // a buffer does not fail, and no field can
	return b.Bytes()
}
