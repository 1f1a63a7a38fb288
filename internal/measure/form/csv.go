package form

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
)

// Columns says which columns a table has; their order is the file's.
type Columns struct {
	Must, May []string // those that must be there, and those that may
	Lengths   []string // those whose name may carry the unit of bare numbers: "width mm", "height (in)"
	Only      bool     // any other column is refused; otherwise it is passed over
	Short     bool     // the last cells of a row may be left out
	Comments  bool     // lines that begin with # are passed over
	Dividers  string   // what may stand for the comma, as in ";\t"; the first line tells
}

// Table is CSV with named columns, read a row at a time:
//
//	t, err := form.ReadTable("marks.csv", r, 1<<20, form.Columns{Must: []string{"landmark", "x_px"}})
//	...
//	for {
//		row, err := t.Next()
//		if err == io.EOF { break }
//		...
//		x, err := row.Number("x_px")
//	}
//
// What is wrong in a row is a [*Problem] and names file, line, column, the value
// and the cure; the rows after it can still be read.
type Table struct {
	name  string
	most  int64
	bytes *io.LimitedReader
	csv   *csv.Reader
	cols  Columns
	head  []head
	place map[string]int // of each known column that is there
}

// head names a column, and the unit of its bare numbers.
type head struct{ name, unit string }

// Row is one row of a table. Ask before the next is read: its messages name the place
// at which the table stands.
type Row struct {
	t     *Table
	Line  int // from 1
	cells []string
}

// ReadTable reads the first line, which names the columns. A file of more than most
// bytes is refused when they have been read.
func ReadTable(name string, r io.Reader, most int64, c Columns) (*Table, error) {
	limited := &io.LimitedReader{R: r, N: most + 1}
	text := bufio.NewReader(limited)
	if mark, _ := text.Peek(3); string(mark) == "\ufeff" {
		text.Discard(3)
	}
	t := &Table{name: name, most: most, bytes: limited, csv: csv.NewReader(text), cols: c, place: map[string]int{}}
	t.csv.FieldsPerRecord = -1
	if c.Comments {
		t.csv.Comment = '#'
	}
	peek, _ := text.Peek(text.Size())
	first, _, _ := strings.Cut(string(peek), "\n")
	for _, divide := range c.Dividers {
		if strings.ContainsRune(first, divide) {
			t.csv.Comma = divide
		}
	}
	t.csv.TrimLeadingSpace = t.csv.Comma != '\t' // it would take empty cells for space
	return t, t.names()
}

// names reads the line that names the columns.
func (t *Table) names() error {
	cells, err := t.read()
	if err == io.EOF {
		return &Problem{File: t.name, Line: 1, Text: "empty; the first line names the columns: " + t.cols.sentence()}
	}
	if err != nil {
		return err
	}
	known := t.cols.known()
	for k, cell := range cells {
		h := t.cols.headOf(cell)
		t.head = append(t.head, h)
		_, twice := t.place[h.name]
		switch {
		case !slices.Contains(known, h.name) && t.cols.Only:
			t.head[k].name = strings.Trim(Quote(h.name), `"`)
			return t.at(k, "no such column; write "+Choices(known))
		case !slices.Contains(known, h.name):
			continue
		case twice:
			return t.at(k, "named twice; keep one")
		case h.unit != "":
			if _, err := unit.ParseLength("1 " + h.unit); err != nil {
				return t.at(k, fmt.Sprintf("no unit of length %s; write mm, cm, m, in or ft", Quote(h.unit)))
			}
		}
		t.place[h.name] = k
	}
	for _, must := range t.cols.Must {
		if _, ok := t.place[must]; !ok {
			return &Problem{File: t.name, Line: 1, Text: fmt.Sprintf("no column %s among %s; the first line names the columns, separated by commas: %s", must, Quote(strings.Join(cells, ",")), t.cols.sentence())}
		}
	}
	return nil
}

// headOf reads the name of a column: case, blanks and brackets do not matter.
func (c Columns) headOf(cell string) head {
	name := strings.ToLower(strings.TrimSpace(cell))
	words := strings.Fields(strings.NewReplacer("(", " ", ")", " ", "_", " ", "[", " ", "]", " ").Replace(name))
	if len(words) == 2 && slices.Contains(c.Lengths, words[0]) {
		return head{words[0], words[1]}
	}
	return head{name: name}
}

// known lists all columns; May may name those that must be there once more, for their order.
func (c Columns) known() []string {
	must := slices.DeleteFunc(slices.Clone(c.Must), func(m string) bool { return slices.Contains(c.May, m) })
	return append(must, c.May...)
}

// sentence lists the columns for a message.
func (c Columns) sentence() string {
	may := slices.DeleteFunc(slices.Clone(c.May), func(m string) bool { return slices.Contains(c.Must, m) })
	if len(may) == 0 {
		return strings.Join(c.Must, ",")
	}
	return strings.Join(c.Must, ",") + " and, if known, " + strings.Join(may, ",")
}

// read reads one line; a [*Problem] when it is no CSV.
func (t *Table) read() ([]string, error) {
	cells, err := t.csv.Read()
	var bad *csv.ParseError
	switch {
	case t.bytes.N <= 0:
		return nil, fmt.Errorf("%s: larger than %s: split it", t.name, bytesText(t.most))
	case errors.As(err, &bad):
		return nil, &Problem{File: t.name, Line: bad.Line, Column: bad.Column, Text: fmt.Sprintf("not CSV: %v", bad.Err)}
	case err != nil && err != io.EOF:
		return nil, fmt.Errorf("%s: %w", t.name, err)
	}
	return cells, err
}

func bytesText(n int64) string {
	if n < 1<<20 {
		return fmt.Sprintf("%d bytes", n)
	}
	return fmt.Sprintf("%d MB", n>>20)
}

// at makes a problem at a cell of the line just read.
func (t *Table) at(k int, text string) *Problem {
	p := &Problem{File: t.name, Text: text}
	p.Line, p.Column = t.csv.FieldPos(k)
	p.Field = t.head[k].name
	return p
}

// Next returns the next row, io.EOF after the last.
func (t *Table) Next() (Row, error) {
	cells, err := t.read()
	if err != nil {
		return Row{}, err
	}
	line, column := t.csv.FieldPos(0)
	bad := func(text string) (Row, error) {
		return Row{}, &Problem{File: t.name, Line: line, Column: column, Text: text}
	}
	if len(cells) > len(t.head) || len(cells) < len(t.head) && !t.cols.Short {
		return bad(fmt.Sprintf("%s: has %d columns, the first line %d", Quote(strings.Join(cells, ",")), len(cells), len(t.head)))
	}
	if slices.ContainsFunc(cells, func(c string) bool { return strings.ContainsRune(c, 0) }) {
		return bad("no text: write the table as text, as a spreadsheet saves CSV")
	}
	return Row{t, line, cells}, nil
}

// mostBadRows is how many bad rows of a file are named.
const mostBadRows = 20

// Each gives every row to take. The rows that are no good, by a [*Problem], are named
// together, up to [mostBadRows] of them; any other error ends the reading at once.
func (t *Table) Each(take func(Row) error) error {
	var bad []error
	for {
		row, err := t.Next()
		if err == io.EOF {
			return errors.Join(bad...)
		}
		if err == nil {
			err = take(row)
		}
		if err == nil {
			continue
		}
		var place *Problem
		if bad = append(bad, err); len(bad) == mostBadRows || !errors.As(err, &place) {
			return errors.Join(bad...)
		}
	}
}

// Text returns the trimmed text of a column, "" when the file or the row lacks it. A
// bare number has the unit that its column names.
func (r Row) Text(column string) string {
	k, ok := r.t.place[column]
	if !ok || k >= len(r.cells) {
		return ""
	}
	text := strings.TrimSpace(r.cells[k])
	if of := r.t.head[k].unit; of != "" {
		if _, err := strconv.ParseFloat(text, 64); err == nil {
			return text + " " + of
		}
	}
	return text
}

// Place returns "file:line".
func (r Row) Place() string { return fmt.Sprintf("%s:%d", r.t.name, r.Line) }

// Bad returns the problem of a cell: its value, and the cure.
func (r Row) Bad(column, cure string) *Problem {
	return r.Wrong(column, Quote(r.Text(column))+": "+cure)
}

// Wrong returns the problem of a cell in words that already name the value.
func (r Row) Wrong(column, text string) *Problem {
	if k, ok := r.t.place[column]; ok && k < len(r.cells) {
		return r.t.at(k, text)
	}
	return &Problem{File: r.t.name, Line: r.Line, Field: column, Text: text}
}

// Number reads a finite number, in the unit that the column is named for.
func (r Row) Number(column string) (float64, error) { return Cell(r, column, finite) }

func finite(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%s: write a number", Quote(s))
	}
	return v, nil
}

// Cell reads a cell as a parser of single values does, whose error names the value and
// the cure.
func Cell[T any](r Row, column string, parse func(string) (T, error)) (T, error) {
	v, err := parse(r.Text(column))
	if err != nil {
		return v, r.Wrong(column, err.Error())
	}
	return v, nil
}
