package sheet_test

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// A hole with its width, on a drawing as large as it needs.
func Example() {
	d := sheet.New("hole", 180, 110, sheet.Base())
	hole := sheet.Rect{X: 20, Y: 20, W: 139.7, H: 76.2}
	d.Add(sheet.LayerCut, "outline", sheet.RoundRect(hole, 12.7)).With("hole", "B-goal")
	g, _ := d.Group(sheet.LayerDim, "")
	mm, in := sheet.Measure(5.5 * unit.Inch)
	g.Dim(sheet.Dimension{A: sheet.Pt(20, 20), B: sheet.Pt(159.7, 20), Off: 8, Text: mm, Under: in})

	svg := string(sheet.InlineSVG(d))
	fmt.Println(mm, "=", in)
	fmt.Println(strings.Contains(svg, `data-hole="B-goal"`), strings.Contains(svg, `viewBox="0 0 180 110"`))
	fmt.Println(strings.Count(string(sheet.DXF(d)), "LWPOLYLINE"), "outline to cut")
	// Output:
	// 139.7 mm = 5 1/2 in
	// true true
	// 1 outline to cut
}

func ExampleFitTable() {
	t := table.New("Hole", "Pan")
	t.Add("B-goal", "34°")
	t.Add("A-circle", "31°")
	l := sheet.FitTable(t, sheet.SizeText, 100)
	fmt.Printf("%d rows, %.0f mm wide, %.0f mm high\n", l.Rows(), l.Width(), l.Height(0, l.Rows()))
	// Output:
	// 2 rows, 23 mm wide, 15 mm high
}
