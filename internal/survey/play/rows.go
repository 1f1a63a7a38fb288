package play

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/form"
)

// RowError is one bad row: where, what stood there and what would do.
type RowError struct {
	Line   int
	Column string
	Value  string
	Cure   string
}

// Error names line, column and value.
func (e RowError) Error() string {
	return fmt.Sprintf("line %d, column %s: %s: %s", e.Line, e.Column, form.Quote(e.Value), e.Cure)
}

// table reads CSV with named columns, a row at a time.
type table struct {
	csv    *csv.Reader
	known  []string
	column map[string]int // place of each known column that is there
	width  int
}

// row is one row of a table.
type row struct {
	t     *table
	line  int
	cells []string
}

// newTable reads the head: the first columns of known must be there, the
// others may be; columns beside them are passed over.
func newTable(in io.Reader, must int, known ...string) (*table, error) {
	t := &table{csv: csv.NewReader(in), known: known, column: map[string]int{}}
	t.csv.FieldsPerRecord = -1
	head, err := t.csv.Read()
	if err == io.EOF {
		return nil, fmt.Errorf("line 1: empty file: the first line names the columns (%s and, if known, %s)", strings.Join(known[:must], ","), strings.Join(known[must:], ","))
	}
	if err != nil {
		return nil, fmt.Errorf("line 1: not CSV: %w", err)
	}
	head[0] = strings.TrimPrefix(head[0], "\xef\xbb\xbf")
	t.width = len(head)
	for k, have := range head {
		for _, want := range known {
			if !strings.EqualFold(strings.TrimSpace(have), want) {
				continue
			}
			if _, twice := t.column[want]; twice {
				return nil, fmt.Errorf("line 1, column %s: named twice: keep one", want)
			}
			t.column[want] = k
		}
	}
	for _, want := range known[:must] {
		if _, ok := t.column[want]; !ok {
			return nil, fmt.Errorf("line 1: no column %s among %s: name the columns in the first line, separated by commas", want, form.Quote(strings.Join(head, ",")))
		}
	}
	return t, nil
}

// next returns the next row, io.EOF after the last. A row that is no CSV, or
// has another number of columns than the head, is a [RowError].
func (t *table) next() (row, error) {
	cells, err := t.csv.Read()
	var pe *csv.ParseError
	if errors.As(err, &pe) {
		return row{}, RowError{pe.Line, "-", "", "not CSV: " + pe.Err.Error()}
	}
	if err != nil {
		return row{}, err
	}
	line, _ := t.csv.FieldPos(0)
	if len(cells) != t.width {
		return row{}, RowError{line, "-", strings.Join(cells, ","), fmt.Sprintf("has %d columns, the first line %d", len(cells), t.width)}
	}
	return row{t, line, cells}, nil
}

// text returns the trimmed text of a column, "" when it is absent.
func (r row) text(column string) string {
	k, ok := r.t.column[column]
	if !ok {
		return ""
	}
	return strings.TrimSpace(r.cells[k])
}

func (r row) bad(column, cure string) error {
	return RowError{r.line, column, r.text(column), cure}
}

// number reads a finite number.
func (r row) number(column string) (float64, error) {
	v, err := strconv.ParseFloat(r.text(column), 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, r.bad(column, "write a number")
	}
	return v, nil
}

// period reads a period from 1 to 20 as one of the three; 0 when it is not
// given. In overtime the ends go on changing.
func (r row) period() (int, error) {
	s := r.text("period")
	if s == "" {
		return 0, nil
	}
	n, err := strconv.Atoi(s)
	switch {
	case err != nil || n < 1 || n > 20:
		return 0, r.bad("period", "write a period from 1 to 20")
	case n > 3:
		return 1 + (n-1)%2, nil
	}
	return n, nil
}

// team reads home (0) or away (1); -1 when it is not given.
func (r row) team() (int, error) {
	switch strings.ToLower(r.text("team")) {
	case "":
		return -1, nil
	case "home":
		return 0, nil
	case "away":
		return 1, nil
	}
	return -1, r.bad("team", "write home or away")
}

// weight reads a number above 0; without is what stands for none.
func (r row) weight(without float64) (float64, error) {
	if r.text("weight") == "" {
		return without, nil
	}
	v, err := r.number("weight")
	if err != nil || !(v > 0 && v <= maxShare) {
		return 0, r.bad("weight", "write a number above 0, at most 1e6")
	}
	return v, nil
}

// refuse lists bad rows, up to maxRowErrors.
func refuse(bad []RowError, cure string) error {
	var lines []string
	for i, b := range bad {
		if i == maxRowErrors {
			lines = append(lines, fmt.Sprintf("and %d more bad rows", len(bad)-i))
			break
		}
		lines = append(lines, b.Error())
	}
	return errors.New(strings.Join(lines, "\n  ") + cure)
}
