package table_test

import (
	"os"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

type hole struct {
	id    string
	width unit.Length
}

var fields = table.Fields[hole]{
	{Column: table.Column{Head: "hole", Name: "hole"}, Cell: func(h hole, _ unit.System) table.Cell { return table.Words(h.id) }},
	{Column: table.Column{Head: "wide", Name: "width_mm", Right: true}, Cell: func(h hole, sys unit.System) table.Cell {
		return table.Number(h.width.Format(sys), h.width.Millimetres())
	}},
	{Column: table.Column{Head: "note"}, Cell: func(hole, unit.System) table.Cell { return table.None() }},
}

func Example() {
	t := fields.Of("Holes", []hole{{"B1", 139.7 * unit.Millimetre}, {"A-long", unit.Inch}}, unit.Metric)
	os.Stdout.WriteString(t.Text())
	_ = t.CSV(os.Stdout)
	// Output:
	// hole       wide  note
	// B1       140 mm  -
	// A-long  25.4 mm  -
	// hole,width_mm
	// B1,139.7
	// A-long,25.4
}

func TestPickKeepsTheOrderAskedFor(t *testing.T) {
	got := fields.Pick("width_mm", "nothing", "hole").Of("", nil, unit.Metric).Heads()
	if strings.Join(got, " ") != "wide hole" {
		t.Errorf("picked %q", got)
	}
}

func TestWrapKeepsToTheWidth(t *testing.T) {
	lines := strings.Split(table.Wrap(strings.Repeat("word ", 60), "  "), "\n")
	if len(lines) < 4 {
		t.Fatalf("%d lines", len(lines))
	}
	for i, l := range lines {
		if len(l) > table.Width || i > 0 && l != "" && !strings.HasPrefix(l, "  ") {
			t.Errorf("line %d: %q", i, l)
		}
	}
}
