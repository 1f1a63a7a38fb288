package starter

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Listed is one line of a contractor's list of panes, its texts as an arena file
// takes them.
type Listed struct {
	line   int
	from   unit.Maybe[unit.Length]
	width  unit.Length
	count  int
	fields map[string]string // by the file's name: "width": "4 ft"
}

// ListColumns are the columns of a list of panes, in any order; width must be there.
// A length carries its unit, or its column does: "width mm", "height (in)".
func ListColumns() []string {
	return []string{"id", "from", "width", "count", "height", "thickness", "material", "curved", "gate"}
}

// lengthColumns are those that may name a unit for bare numbers.
var lengthColumns = []string{"from", "width", "height", "thickness"}

// MaxListBytes is far above any list of panes.
const MaxListBytes = 1 << 20

// column is one column of a list: what it holds, and the unit of its bare numbers.
type column struct{ name, unit string }

// listReader reads a list row by row; its errors name file, line and column.
type listReader struct {
	name string
	csv  *csv.Reader
	head []column
	seen map[string]bool
}

// ReadList reads a contractor's list of panes in station order as CSV, divided by
// commas, semicolons or tabs; the first line names the columns of [ListColumns].
// Errors name file, line and column, what stands there, and the cure.
func ReadList(name string, r io.Reader) ([]Listed, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxListBytes+1))
	if err != nil {
		return nil, err
	}
	text := strings.TrimPrefix(string(data), "\ufeff")
	if len(data) > MaxListBytes || strings.ContainsRune(text, 0) {
		return nil, fmt.Errorf("%s: no list of panes: more than %d bytes, or no text", name, MaxListBytes)
	}
	first, _, _ := strings.Cut(text, "\n")
	l := listReader{name: name, csv: csv.NewReader(strings.NewReader(text)), seen: map[string]bool{}}
	for _, divide := range ";\t" {
		if strings.ContainsRune(first, divide) {
			l.csv.Comma = divide
		}
	}
	l.csv.TrimLeadingSpace = true
	if err := l.heads(); err != nil {
		return nil, err
	}
	var out []Listed
	for {
		row, err := l.row(len(out))
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, err
		}
		if out = append(out, row); len(out) > mostPanes {
			return nil, fmt.Errorf("%s: more than %d lines of panes", name, mostPanes)
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("%s: no pane below the line that names the columns; write one line for each pane", name)
	}
	return out, nil
}

// at makes an error at a cell of the row just read.
func (l *listReader) at(k int, format string, args ...any) error {
	line, col := l.csv.FieldPos(k)
	return fmt.Errorf("%s:%d:%d: %s: %s", l.name, line, col, l.head[k].name, fmt.Sprintf(format, args...))
}

func (l *listReader) read() ([]string, error) {
	cells, err := l.csv.Read()
	var bad *csv.ParseError
	if errors.As(err, &bad) {
		return nil, fmt.Errorf("%s:%d:%d: %v; each line has as many cells as the first", l.name, bad.Line, bad.Column, bad.Err)
	}
	return cells, err
}

// heads reads the line that names the columns.
func (l *listReader) heads() error {
	cells, err := l.read()
	if err == io.EOF {
		return fmt.Errorf("%s: empty; the first line names the columns, as in: id,width,height,gate", l.name)
	}
	if err != nil {
		return err
	}
	for _, cell := range cells {
		words := strings.Fields(strings.ToLower(strings.NewReplacer("(", " ", ")", " ", "_", " ", "[", " ", "]", " ").Replace(cell)))
		c := column{name: strings.Join(words, " ")}
		if len(words) == 2 && slices.Contains(lengthColumns, words[0]) {
			c = column{words[0], words[1]}
		}
		l.head = append(l.head, c)
		k := len(l.head) - 1
		switch {
		case !slices.Contains(ListColumns(), c.name):
			return l.at(k, "no such column; write %s", form.Choices(ListColumns()))
		case slices.ContainsFunc(l.head[:k], func(o column) bool { return o.name == c.name }):
			return l.at(k, "named twice; keep one")
		case c.unit != "":
			if _, err := unit.ParseLength("1 " + c.unit); err != nil {
				return l.at(k, "no unit of length %s; write mm, cm, m, in or ft", form.Quote(c.unit))
			}
		}
	}
	if !slices.ContainsFunc(l.head, func(c column) bool { return c.name == "width" }) {
		return fmt.Errorf("%s:1: no column width among %s", l.name, form.Quote(strings.Join(cells, ", ")))
	}
	return nil
}

// row reads one line; n panes' lines stand before it.
func (l *listReader) row(n int) (Listed, error) {
	cells, err := l.read()
	if err != nil {
		return Listed{}, err
	}
	out := Listed{count: 1, fields: map[string]string{}}
	out.line, _ = l.csv.FieldPos(0)
	for k, cell := range cells {
		if cell = strings.TrimSpace(cell); cell == "" {
			if l.head[k].name == "width" {
				return out, l.at(k, "is missing; write the pane's width along the boards")
			}
			continue
		}
		if err := l.cell(&out, l.head[k], cell); err != nil {
			return out, l.at(k, "%v", err)
		}
	}
	if out.fields["id"] == "" {
		out.fields["id"] = fmt.Sprintf("L%03d", n+1)
	}
	return out, nil
}

// cell reads one cell as the arena file would.
func (l *listReader) cell(out *Listed, c column, text string) (err error) {
	if _, bare := strconv.ParseFloat(text, 64); bare == nil && c.unit != "" {
		text += " " + c.unit
	}
	switch c.name {
	case "id":
		if _, err = form.ID(text); err == nil && l.seen[text] {
			err = fmt.Errorf("%s is the id of an earlier pane; give each its own", form.Quote(text))
		}
		l.seen[text] = true
	case "from":
		var s unit.Length
		s, err = unit.ParseLength(text)
		out.from = unit.Known(s)
	case "width":
		out.width, err = form.Within(narrowest, MostNominal)(text)
	case "height":
		_, err = form.Within(narrowest, MostNominal)(text)
	case "thickness":
		_, err = unit.ParseLength(text)
	case "count":
		if out.count, err = strconv.Atoi(text); err != nil || out.count < 1 || out.count > mostPanes {
			err = fmt.Errorf("%s: write a whole number from 1 to %d", form.Quote(text), mostPanes)
		}
	case "material":
		text = strings.ToLower(text)
		_, err = form.Words(glass.Materials()...)(text)
	case "curved":
		_, err = form.YesNo(text)
	}
	out.fields[c.name] = text
	return err
}

// narrowest is the narrowest pane that an arena file takes.
const narrowest = 50 * unit.Millimetre
