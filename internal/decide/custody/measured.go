package custody

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/form"
)

// measuredColumns are the columns of a file of measurements.
func measuredColumns() []string { return []string{"what", "value_mm", "uncertainty_mm"} }

// ReadMeasured reads what an inspection measured and saw, a line each:
//
//	what,value_mm,uncertainty_mm
//	width,139.6,0.05
//	no-cracks,yes,
//
// An error names the line, the value and what would do.
func ReadMeasured(file string, r io.Reader) (m []Measured, seen []Seen, err error) {
	rows := csv.NewReader(r)
	rows.TrimLeadingSpace, rows.Comment, rows.FieldsPerRecord = true, '#', -1
	met := map[string]bool{}
	for first := true; ; first = false {
		cells, err := rows.Read()
		switch line, _ := fieldLine(rows, cells); {
		case errors.Is(err, io.EOF) && len(met) == 0:
			return nil, nil, fmt.Errorf("%s: holds no measurement; write a line for each under %s", file, strings.Join(measuredColumns(), ","))
		case errors.Is(err, io.EOF):
			return m, seen, nil
		case err != nil:
			return nil, nil, fmt.Errorf("%s: %w", file, err)
		case first && !slices.Equal(cells, measuredColumns()):
			return nil, nil, fmt.Errorf("%s:%d: the first line must be %s", file, line, strings.Join(measuredColumns(), ","))
		case first:
		case met[cells[0]]:
			return nil, nil, fmt.Errorf("%s:%d: %s stands here twice; keep one", file, line, form.Quote(cells[0]))
		default:
			met[cells[0]] = true
			if err := readLine(cells, &m, &seen); err != nil {
				return nil, nil, fmt.Errorf("%s:%d: %w", file, line, err)
			}
		}
	}
}

// fieldLine trims a line's cells and returns its number.
func fieldLine(rows *csv.Reader, cells []string) (line, column int) {
	if len(cells) == 0 {
		return 0, 0
	}
	for i := range cells {
		cells[i] = strings.TrimSpace(strings.TrimPrefix(cells[i], "\ufeff"))
	}
	return rows.FieldPos(0)
}

// readLine adds what one line says.
func readLine(cells []string, m *[]Measured, seen *[]Seen) error {
	if len(cells) < 2 || len(cells) > len(measuredColumns()) {
		return fmt.Errorf("%d cells; write %s", len(cells), strings.Join(measuredColumns(), ","))
	}
	cells = append(cells, "")
	if what := Sight(cells[0]); slices.Contains(Sights(), what) {
		right, known := map[string]bool{"yes": true, "no": false}[strings.ToLower(cells[1])]
		if !known {
			return fmt.Errorf("%s is %s; write yes or no", what, form.Quote(cells[1]))
		}
		*seen = append(*seen, Seen{What: what, Right: right})
		return nil
	}
	what := Quantity(cells[0])
	if !slices.Contains(Quantities(), what) {
		return fmt.Errorf("%s is nothing that is measured; write %s", form.Quote(cells[0]), form.Choices(whats()))
	}
	x, err := numbers(cells[1], cells[2])
	if err == nil {
		err = checkMeasure(cells[0], x[0], x[1])
	}
	*m = append(*m, Measured{What: what, Value: x[0], U: x[1]})
	return err
}

func numbers(cells ...string) (x [2]float64, err error) {
	for i, c := range cells {
		if x[i], err = strconv.ParseFloat(c, 64); err != nil {
			return x, fmt.Errorf("%s is %s; write a number of millimetres, as 139.7", measuredColumns()[i+1], form.Quote(c))
		}
	}
	return x, nil
}

// whats lists all that may be measured or looked at.
func whats() (names []string) {
	for _, q := range Quantities() {
		names = append(names, string(q))
	}
	for _, s := range Sights() {
		names = append(names, string(s))
	}
	return names
}
