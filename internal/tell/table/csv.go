package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
)

// CSV writes the columns that have a name as CSV: numbers in full
// precision, in the unit that the column's name carries.
func (t Table) CSV(w io.Writer) error {
	var names []string
	var columns []int
	for i, c := range t.Columns {
		if c.Name != "" {
			names, columns = append(names, c.Name), append(columns, i)
		}
	}
	out := csv.NewWriter(w)
	if err := out.Write(names); err != nil {
		return err
	}
	for _, row := range t.Rows {
		record := make([]string, len(columns))
		for i, at := range columns {
			record[i] = row[at].plain()
		}
		if err := out.Write(record); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// plain is the cell's value for programs.
func (c Cell) plain() string {
	switch v := c.Value.(type) {
	case nil:
		return c.Text
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	default:
		return fmt.Sprint(v)
	}
}
