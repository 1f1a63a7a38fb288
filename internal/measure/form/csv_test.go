package form_test

import (
	"errors"
	"io"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

func columns() form.Columns {
	return form.Columns{Must: []string{"id", "width"}, May: []string{"note"}, Lengths: []string{"width"}, Comments: true, Dividers: ";\t"}
}

// A table is read by the names of its columns, in whatever order and case they stand,
// after a byte order mark, divided as its first line is; columns not known are passed
// over, and a bare number has the unit of its column.
func TestTableReadsByName(t *testing.T) {
	for _, text := range []string{
		"\ufeffwho; Width (mm) ;ID\nada;1200; P1\n# a remark\nbo;4 ft;P2\n",
		"id\tnote\twidth_mm\twho\r\nP1\t\t1200\tada\r\nP2\t\t4 ft\tbo\r\n",
		"width [mm],id\n1200,\"P1\"\n\n 4 ft,P2\n",
	} {
		table, err := form.ReadTable("t.csv", strings.NewReader(text), 1<<10, columns())
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for {
			row, err := table.Next()
			if err == io.EOF {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			width, err := form.Cell(row, "width", unit.ParseLength)
			if err != nil || width <= 0 || row.Text("note") != "" {
				t.Errorf("%q: %v %v %q", text, width, err, row.Text("note"))
			}
			got = append(got, row.Text("id")+" "+row.Text("width"))
		}
		if s := strings.Join(got, "; "); s != "P1 1200 mm; P2 4 ft" {
			t.Errorf("%q: %s", text, s)
		}
	}
}

// What is wrong in a row names file, line, column, value and cure, and the rows after
// it can still be read.
func TestTableNamesTheCell(t *testing.T) {
	const text = "id,width,note\nP1,wide,\nP2\nP3,\x00,\nP4,\"1,\nP5,2 m,\n"
	table, err := form.ReadTable("t.csv", strings.NewReader(text), 1<<10, columns())
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		`t.csv:2:4: width: length "wide"`,
		`t.csv:3:1: "P2": has 1 columns, the first line 3`,
		`t.csv:4:1: no text`,
		`not CSV`,
	} {
		row, err := table.Next()
		if err == nil {
			_, err = form.Cell(row, "width", unit.ParseLength)
		}
		var p *form.Problem
		if !errors.As(err, &p) || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %s", err, want)
		}
	}
	table, _ = form.ReadTable("t.csv", strings.NewReader("id,width\nP1,0x\nP2,1e999\nP3,-2.5\n"), 1<<10, columns())
	for _, want := range []string{`t.csv:2:4: width: "0x": write a number`, `"1e999": write a number`, ""} {
		row, err := table.Next()
		if err != nil {
			t.Fatal(err)
		}
		if v, err := row.Number("width"); want != "" && (err == nil || !strings.Contains(err.Error(), want)) || want == "" && v != -2.5 {
			t.Errorf("%v %v, want %s", v, err, want)
		}
	}
}

// What makes the whole file no table is told at once and is no problem of a row.
func TestTableRefuses(t *testing.T) {
	strict := columns()
	strict.Only = true
	for text, want := range map[string]string{
		"":                     "t.csv:1: empty; the first line names the columns: id,width and, if known, note",
		"id,breadth\n":         `t.csv:1:4: breadth: no such column; write id, width or note`,
		"id,note\n":            `t.csv:1: no column width among "id,note"`,
		"id,width,width mm\n":  "t.csv:1:10: width: named twice; keep one",
		"id,width ells\n":      `no unit of length "ells"; write mm, cm, m, in or ft`,
		"id,width\x1b[31m\n":   `\x1b[31m`,
		"id," + wide(100) + "": "...",
	} {
		if _, err := form.ReadTable("t.csv", strings.NewReader(text), 1<<10, strict); err == nil || !strings.Contains(err.Error(), want) || strings.ContainsRune(err.Error(), 0x1b) {
			t.Errorf("%.40q: %v, want %s", text, err, want)
		}
	}
	table, err := form.ReadTable("t.csv", strings.NewReader("id,width\n"+strings.Repeat("P1,1 m\n", 200)), 1<<10, strict)
	for err == nil {
		_, err = table.Next()
	}
	var p *form.Problem
	if errors.As(err, &p) || !strings.Contains(err.Error(), "t.csv: larger than 1024 bytes: split it") {
		t.Error(err)
	}
}

func wide(n int) string { return strings.Repeat("w", n) }
