package custody

import (
	"fmt"
	"io"
	"slices"
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
	t, err := form.ReadTable(file, r, maxMeasuredBytes, form.Columns{Must: measuredColumns(), Short: true, Comments: true})
	if err != nil {
		return nil, nil, err
	}
	for met := map[string]bool{}; ; {
		row, err := t.Next()
		switch {
		case err == io.EOF && len(met) == 0:
			return nil, nil, fmt.Errorf("%s: holds no measurement; write a line for each under %s", file, strings.Join(measuredColumns(), ","))
		case err == io.EOF:
			return m, seen, nil
		case err != nil:
			return nil, nil, err
		}
		what := row.Text("what")
		if met[what] {
			return nil, nil, row.Wrong("what", form.Quote(what)+" stands here twice; keep one")
		}
		met[what] = true
		if err := readLine(row, &m, &seen); err != nil {
			return nil, nil, err
		}
	}
}

// maxMeasuredBytes is far above any file of measurements.
const maxMeasuredBytes = 1 << 20

// readLine adds what one line says.
func readLine(in form.Row, m *[]Measured, seen *[]Seen) (err error) {
	name := in.Text("what")
	if what := Sight(name); slices.Contains(Sights(), what) {
		right, err := form.YesNo(in.Text("value_mm"))
		if err != nil {
			return in.Wrong("value_mm", fmt.Sprintf("%s is %v", what, err))
		}
		*seen = append(*seen, Seen{What: what, Right: right})
		return nil
	}
	if !slices.Contains(Quantities(), Quantity(name)) {
		return in.Wrong("what", fmt.Sprintf("%s is nothing that is measured; write %s", form.Quote(name), form.Choices(whats())))
	}
	out := Measured{What: Quantity(name)}
	if out.Value, err = millimetres(in, "value_mm"); err != nil {
		return err
	}
	if out.U, err = millimetres(in, "uncertainty_mm"); err != nil {
		return err
	}
	if err := checkMeasure(name, out.Value, out.U); err != nil {
		return in.Wrong("value_mm", err.Error())
	}
	*m = append(*m, out)
	return nil
}

// millimetres reads a cell as a number of them.
func millimetres(in form.Row, column string) (float64, error) {
	x, err := in.Number(column)
	if err != nil {
		return 0, in.Wrong(column, fmt.Sprintf("%s is %s; write a number of millimetres, as 139.7", in.Text("what"), form.Quote(in.Text(column))))
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
