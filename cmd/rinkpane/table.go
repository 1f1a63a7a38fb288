package main

import (
	"io"
	"strings"
	"unicode/utf8"
)

// columnGap stands between two columns of a table.
const columnGap = "  "

// writeTable prints rows under a head, columns of numbers to the right.
func writeTable(w io.Writer, head []string, rows [][]string) {
	all := append([][]string{head}, rows...)
	widths := make([]int, len(head))
	for _, row := range all {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	var b strings.Builder
	for _, row := range all {
		var line strings.Builder
		for i, cell := range row {
			pad := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell))
			if numeric(rows, i) {
				line.WriteString(pad + cell)
			} else {
				line.WriteString(cell + pad)
			}
			line.WriteString(columnGap)
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
	io.WriteString(w, b.String()) // the writer is the app's buffer, which cannot fail
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
