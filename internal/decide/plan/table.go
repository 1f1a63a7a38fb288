package plan

import (
	"strings"
	"unicode/utf8"
)

// textWidth is how wide people's text may be, in columns.
const textWidth = 100

// table is rows of cells under a head, set in columns for a text of fixed width
// letters. Columns whose head starts with ">" stand to the right.
type table struct {
	head []string
	rows [][]string
}

func newTable(head ...string) *table { return &table{head: head} }

func (t *table) row(cells ...string) { t.rows = append(t.rows, cells) }

// String sets the table: two spaces between columns, none at a line's end.
func (t *table) String() string {
	head, right := make([]string, len(t.head)), make([]bool, len(t.head))
	for i, h := range t.head {
		head[i], right[i] = strings.CutPrefix(h, ">")
	}
	width := make([]int, len(head))
	for _, cells := range append([][]string{head}, t.rows...) {
		for i, c := range cells {
			width[i] = max(width[i], utf8.RuneCountInString(c))
		}
	}
	var b strings.Builder
	for _, cells := range append([][]string{head}, t.rows...) {
		b.WriteString(line(cells, width, right))
	}
	return b.String()
}

func line(cells []string, width []int, right []bool) string {
	var b strings.Builder
	for i, c := range cells {
		pad := strings.Repeat(" ", width[i]-utf8.RuneCountInString(c))
		switch {
		case i > 0 && right[i]:
			b.WriteString("  " + pad + c)
		case i > 0:
			b.WriteString("  " + c + pad)
		default:
			b.WriteString(c + pad)
		}
	}
	return strings.TrimRight(b.String(), " ") + "\n"
}

// wrap breaks text into lines of at most textWidth columns, each after the
// first indented.
func wrap(text, indent string) string {
	var b strings.Builder
	at := 0
	for word := range strings.FieldsSeq(text) {
		n := utf8.RuneCountInString(word)
		switch {
		case at == 0:
		case at+1+n > textWidth:
			b.WriteString("\n" + indent)
			at = len(indent)
		default:
			b.WriteString(" ")
			at++
		}
		b.WriteString(word)
		at += n
	}
	return b.String() + "\n"
}
