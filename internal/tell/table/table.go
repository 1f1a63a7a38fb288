// Package table is what every table of the house is before it is drawn: one
// value, from which text, CSV, PDF and pages take the same cells.
//
//	Fields[T]  what a row of T says: head, unit, key, cell   (one list a kind of row)
//	   |  Of(rows, system)
//	Table      heads and cells
//	   |-- Text   columns of fixed width letters, at most 100 wide
//	   |-- CSV    full numbers, units in the heads
//	   |-- sheet  a table on paper
//	   '-- pages  a template walks Columns and Rows
//
// A cell holds two tellings of one thing: words for people, rounded and in
// their units, and the exact value for programs, in the unit that its column's
// name carries.
package table

import (
	"strings"

	"example.org/rinkpane/internal/measure/unit"
)

// Column is a column's head.
type Column struct {
	Head  string // for people: "clean"; "" leaves the column out of text, paper and pages
	Name  string // for programs, with its unit: "pan_clear_deg"; "" leaves the column out of CSV
	Key   string // one sentence that explains the column, "" where the head says it all
	Right bool   // numbers stand to the right
}

// Cell is one cell: words for people, and for programs the value in full.
type Cell struct {
	Text  string
	Value any // nil: the text is the value; else float64, int, bool or string
}

// Table is a table ready to be drawn.
type Table struct {
	Title   string
	Columns []Column
	Rows    [][]Cell
	Strong  []bool // rows that stand out where a drawing can show it; may be shorter than Rows
}

// Field is one column over rows of T: its head and how its cell is made.
type Field[T any] struct {
	Column
	Cell func(row T, sys unit.System) Cell
}

// Fields are the columns over rows of T, from left to right.
type Fields[T any] []Field[T]

// Of makes the table of rows in a system's units.
func (f Fields[T]) Of(title string, rows []T, sys unit.System) Table {
	t := Table{Title: title}
	for _, c := range f {
		t.Columns = append(t.Columns, c.Column)
	}
	for _, r := range rows {
		cells := make([]Cell, len(f))
		for i, c := range f {
			cells[i] = c.Cell(r, sys)
		}
		t.Rows = append(t.Rows, cells)
	}
	return t
}

// Pick returns the columns with these names, in the order asked for; a name
// that is not there is left out.
func (f Fields[T]) Pick(names ...string) Fields[T] {
	var out Fields[T]
	for _, n := range names {
		for _, c := range f {
			if c.Name == n {
				out = append(out, c)
			}
		}
	}
	return out
}

// New returns a table without rows; heads stand to the left.
func New(heads ...string) Table {
	var t Table
	for _, h := range heads {
		t.Columns = append(t.Columns, Column{Head: h})
	}
	return t
}

// Numbers sets columns, from one up to but not including another, to the right.
func (t Table) Numbers(from, to int) Table {
	for i := from; i < to; i++ {
		t.Columns[i].Right = true
	}
	return t
}

// Add adds a row of words; what it lacks on the right stays empty.
func (t *Table) Add(words ...string) {
	row := make([]Cell, len(t.Columns))
	for i, s := range words {
		row[i] = Words(s)
	}
	t.Rows = append(t.Rows, row)
}

// Words is a cell that says the same to people and programs.
func Words(s string) Cell { return Cell{Text: s} }

// Number is a cell with a number in full behind its words.
func Number(text string, value float64) Cell { return Cell{text, value} }

// None is the cell of a number that does not exist: "-" for people, empty in CSV.
func None() Cell { return Cell{"-", ""} }

// Keys explains the columns that have a key: "clean: degrees from ... half: ...".
func (t Table) Keys() string {
	var out []string
	for _, c := range t.Columns {
		if c.Key != "" {
			out = append(out, c.Head+": "+c.Key+".")
		}
	}
	return strings.Join(out, " ")
}

// Shown returns the table without the columns that are for programs only.
func (t Table) Shown() Table {
	out := Table{Title: t.Title, Strong: t.Strong, Rows: make([][]Cell, len(t.Rows))}
	for i, c := range t.Columns {
		if c.Head == "" {
			continue
		}
		out.Columns = append(out.Columns, c)
		for j, row := range t.Rows {
			out.Rows[j] = append(out.Rows[j], row[i])
		}
	}
	return out
}

// Heads returns the heads of all columns.
func (t Table) Heads() []string {
	out := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		out[i] = c.Head
	}
	return out
}

// Texts returns the cells' words for people, row by row.
func (t Table) Texts() [][]string {
	out := make([][]string, len(t.Rows))
	for i, row := range t.Rows {
		out[i] = make([]string, len(row))
		for j, c := range row {
			out[i][j] = c.Text
		}
	}
	return out
}
