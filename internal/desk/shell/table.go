package shell

import "example.org/rinkpane/internal/tell/table"

// Table is a table for a page, by the template "table".
type Table struct {
	Head []string
	Rows []TableRow
}

// TableRow is a row; its first cell names it.
type TableRow struct {
	Name  string
	Cells []string
	Best  bool // to be marked
}

// TableOf sets a table for a page; best tells which rows are marked, nil for none.
func TableOf(t table.Table, best func(row int) bool) Table {
	out := Table{Head: t.Heads()}
	for i, cells := range t.Texts() {
		out.Rows = append(out.Rows, TableRow{cells[0], cells[1:], best != nil && best(i)})
	}
	return out
}
