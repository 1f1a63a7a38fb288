package table

import (
	"strings"
	"unicode/utf8"
)

// Width is how wide people's text may be, in columns.
const Width = 100

// Text sets the table in columns of fixed width letters: two spaces between
// columns, none at a line's end.
func (t Table) Text() string {
	heads := make([]Cell, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = Words(c.Head)
	}
	rows := append([][]Cell{heads}, t.Rows...)
	width := make([]int, len(t.Columns))
	for _, row := range rows {
		for i, c := range row {
			width[i] = max(width[i], utf8.RuneCountInString(c.Text))
		}
	}
	var b strings.Builder
	for _, row := range rows {
		b.WriteString(t.line(row, width))
	}
	return b.String()
}

func (t Table) line(row []Cell, width []int) string {
	var b strings.Builder
	for i, c := range row {
		if i > 0 {
			b.WriteString("  ")
		}
		pad := strings.Repeat(" ", width[i]-utf8.RuneCountInString(c.Text))
		if t.Columns[i].Right {
			b.WriteString(pad + c.Text)
		} else {
			b.WriteString(c.Text + pad)
		}
	}
	return strings.TrimRight(b.String(), " ") + "\n"
}

// Wrap breaks text into lines of at most Width columns, each after the first
// indented.
func Wrap(text, indent string) string { return wrapped("", indent, text) }

// Hang sets text behind a head and breaks it as [Wrap] does, its lines below one
// another.
func Hang(head, text string) string {
	return wrapped(head, strings.Repeat(" ", utf8.RuneCountInString(head)), text)
}

func wrapped(head, indent, text string) string {
	var b strings.Builder
	b.WriteString(head)
	at, begins := utf8.RuneCountInString(head), true
	for word := range strings.FieldsSeq(text) {
		n := utf8.RuneCountInString(word)
		switch {
		case begins:
		case at+1+n > Width:
			b.WriteString("\n" + indent)
			at = utf8.RuneCountInString(indent)
		default:
			b.WriteString(" ")
			at++
		}
		b.WriteString(word)
		at, begins = at+n, false
	}
	return b.String() + "\n"
}
