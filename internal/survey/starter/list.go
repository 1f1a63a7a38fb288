package starter

import (
	"fmt"
	"io"
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

// MaxListBytes is far above any list of panes.
const MaxListBytes = 1 << 20

// listReader reads a list row by row.
type listReader struct {
	t    *form.Table
	seen map[string]bool // ids
}

// ReadList reads a contractor's list of panes in station order as CSV, divided by
// commas, semicolons or tabs; the first line names the columns of [ListColumns].
// Errors name file, line and column, what stands there, and the cure.
func ReadList(name string, r io.Reader) ([]Listed, error) {
	t, err := form.ReadTable(name, r, MaxListBytes, form.Columns{
		Must: []string{"width"}, May: ListColumns(), Only: true,
		Lengths: []string{"from", "width", "height", "thickness"}, Dividers: ";\t",
	})
	if err != nil {
		return nil, err
	}
	l := listReader{t: t, seen: map[string]bool{}}
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

// row reads one line; n panes' lines stand before it.
func (l *listReader) row(n int) (Listed, error) {
	in, err := l.t.Next()
	if err != nil {
		return Listed{}, err
	}
	out := Listed{line: in.Line, count: 1, fields: map[string]string{}}
	if in.Text("width") == "" {
		return out, in.Wrong("width", "is missing; write the pane's width along the boards")
	}
	for _, column := range ListColumns() {
		if text := in.Text(column); text != "" {
			if err := l.cell(&out, column, text); err != nil {
				return out, in.Wrong(column, err.Error())
			}
		}
	}
	if out.fields["id"] == "" {
		out.fields["id"] = fmt.Sprintf("L%03d", n+1)
	}
	return out, nil
}

// cell reads one cell as the arena file would.
func (l *listReader) cell(out *Listed, column, text string) (err error) {
	switch column {
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
	out.fields[column] = text
	return err
}

// narrowest is the narrowest pane that an arena file takes.
const narrowest = 50 * unit.Millimetre
