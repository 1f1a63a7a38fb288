package play

import (
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/form"
)

// row is one row of a table.
type row struct{ form.Row }

// period reads a period from 1 to 20 as one of the three; 0 when it is not
// given. In overtime the ends go on changing.
func (r row) period() (int, error) {
	s := r.Text("period")
	if s == "" {
		return 0, nil
	}
	n, err := strconv.Atoi(s)
	switch {
	case err != nil || n < 1 || n > 20:
		return 0, r.Bad("period", "write a period from 1 to 20")
	case n > 3:
		return 1 + (n-1)%2, nil
	}
	return n, nil
}

// team reads home (0) or away (1); -1 when it is not given.
func (r row) team() (int, error) {
	switch strings.ToLower(r.Text("team")) {
	case "":
		return -1, nil
	case "home":
		return 0, nil
	case "away":
		return 1, nil
	}
	return -1, r.Bad("team", "write home or away")
}

// weight reads a number above 0; without is what stands for none.
func (r row) weight(without float64) (float64, error) {
	if r.Text("weight") == "" {
		return without, nil
	}
	v, err := r.Number("weight")
	if err != nil || !(v > 0 && v <= maxShare) {
		return 0, r.Bad("weight", "write a number above 0, at most 1e6")
	}
	return v, nil
}

// refuse lists bad rows, up to maxRowErrors.
func refuse(bad []*form.Problem, cure string) error {
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

// eachRow gives every row to take, and returns those that are bad, to the number of
// most.
func eachRow(t *form.Table, most int, take func(row) error) (bad []*form.Problem, err error) {
	for len(bad) <= most {
		in, err := t.Next()
		if err == io.EOF {
			return bad, nil
		}
		if err == nil {
			err = take(row{in})
		}
		var p *form.Problem
		switch {
		case errors.As(err, &p):
			bad = append(bad, p)
		case err != nil:
			return bad, err
		}
	}
	return bad, nil
}
