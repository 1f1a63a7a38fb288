package wire_test

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"example.org/rinkpane/internal/tell/wire"
)

type zone struct {
	Zone string   `json:"zone"`
	ISO  *float64 `json:"iso"`
	Dark struct {
		ISO float64 `json:"iso"`
	} `json:"dark"`
}

type hole struct {
	Hole  string     `json:"hole"`
	Size  [2]float64 `json:"size_mm"`
	Zones []zone     `json:"zones"`
}

func ExampleTables() {
	iso := 2450.5
	answer := struct {
		Verdict string `json:"verdict"`
		Holes   []hole `json:"holes"`
	}{"pass", []hole{{"B1", [2]float64{139.7, 114.3}, []zone{{Zone: "slot", ISO: &iso}, {Zone: "corner, near"}}}, {Hole: "B2"}}}
	tables, err := wire.Tables(answer)
	if err != nil {
		panic(err)
	}
	for _, t := range tables {
		os.Stdout.WriteString("# " + t.Title + "\n")
		_ = t.CSV(os.Stdout)
	}
	// Output:
	// # answer
	// verdict
	// pass
	// # holes
	// hole,size_mm,zones
	// B1,139.7 114.3,
	// B2,0 0,
	// # holes.zones
	// hole,zone,iso,dark.iso
	// B1,slot,2450.5,0
	// B1,"corner, near",,0
}

// Rows that hold different fields still have a cell under every head.
func TestTablesAreRectangular(t *testing.T) {
	tables, err := wire.Tables(map[string]any{"rows": []map[string]any{{"a": 1}, {"b": "x"}, {}, {"a": nil, "c": []int{1, 2}}}})
	if err != nil || len(tables) != 1 {
		t.Fatal(tables, err)
	}
	var b strings.Builder
	if err := tables[0].CSV(&b); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(b.String())).ReadAll()
	if err != nil || len(rows) < 4 {
		t.Errorf("%v in\n%s", err, b.String())
	}
}
