package main

import (
	"io"
	"strings"

	"example.org/rinkpane/internal/tell/table"
)

// writeTable prints rows under a head, columns of numbers to the right.
func writeTable(w io.Writer, head []string, rows [][]string) {
	t := table.Table{Rows: make([][]table.Cell, len(rows))}
	for i, name := range head {
		t.Columns = append(t.Columns, table.Column{Head: name, Right: numeric(rows, i)})
		for j, row := range rows {
			t.Rows[j] = append(t.Rows[j], table.Words(row[i]))
		}
	}
	io.WriteString(w, t.Text()) // the writer is the app's buffer, which cannot fail
}

// numeric reports whether a column holds only numbers, with or without units.
func numeric(rows [][]string, column int) bool {
	some := false
	for _, row := range rows {
		cell := row[column]
		if cell == "" || cell == "-" {
			continue
		}
		if !strings.ContainsRune("-+0123456789<>", rune(cell[0])) {
			return false
		}
		some = true
	}
	return some
}

// wrapText prints a text that hangs behind its head.
func wrapText(w io.Writer, head, text string) { io.WriteString(w, table.Hang(head, text)) }
