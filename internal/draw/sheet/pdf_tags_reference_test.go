package sheet_test

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/table"
)

// tagged is two sheets: a heading, sentences, a list, a table that runs over onto
// the second sheet, a figure and a link.
func tagged() []sheet.Page {
	var pages []sheet.Page
	start := func() (*sheet.Drawing, sheet.Rect) {
		d := sheet.New("tagged", 100, 60, sheet.Base())
		pages = append(pages, sheet.Page{Drawing: d})
		return d, sheet.Rect{X: 10, Y: 10, W: 80, H: 45}
	}
	f := sheet.NewFlow(start)
	f.Heading("What is told")
	f.Notes("A sentence so long that it is set on two lines, the words of which stay apart.")
	f.Numbered("First this.", "Then that.")
	t := table.New("pane", "note")
	for _, row := range []string{"P1", "P2", "P3", "P4"} {
		t.Add(row, "")
	}
	f.Table(t, sheet.SizeTable)
	figure := sheet.New("figure", 20, 10, sheet.Base())
	figure.Title, figure.Desc = "A square", "It stands alone."
	figure.Add("", "outline", sheet.RoundRect(sheet.Rect{W: 8, H: 8}, 0))
	f.Drawing(figure)
	toc := &sheet.Part{Role: sheet.RoleContents}
	f.Group().Add("text", sheet.Text{At: sheet.Pt(10, 58), S: "back"}).To("#page=1").PartOf(toc.Within(sheet.RoleEntry).Within(sheet.RoleLink))
	return pages
}

// TestStructureByPoppler has poppler tell the parts of a file: roles nested as
// they were said, words apart, the head of a table once, alternative text, and
// decoration left out; and mupdf the numbers of its pages.
func TestStructureByPoppler(t *testing.T) {
	data, err := sheet.PDF(t.Context(), sheet.Info{Title: "Tagged", Tagged: true, Front: 1}, tagged()...)
	if err != nil {
		t.Fatal(err)
	}
	told := tool(t, "poppler-utils", "t.pdf", data, "pdfinfo", "-struct-text", "FILE")
	last := 0
	for _, want := range []string{"Document", "H2", `"What is told`, "P", "on two lines, the", "L ", "LI", "Lbl", `"1`, "LBody", `"First this.`,
		"Table", "TR", "TH", `"pane`, "TD", `"P1`, "TR", `"P4`, "Figure", "TOC", "TOCI", "Link", `"back`, "Object"} {
		i := strings.Index(told[last:], want)
		if i < 0 {
			t.Fatalf("%q is not told after %q:\n%s", want, told[max(0, last-40):last], told)
		}
		last += i
	}
	for want, n := range map[string]int{"TR": 5, "TD": 8, "TH": 2, `"pane`: 1} {
		if got := strings.Count(told, want); got != n {
			t.Errorf("%d times %s, want %d:\n%s", got, want, n, told)
		}
	}
	info := tool(t, "poppler-utils", "t.pdf", data, "pdfinfo", "FILE")
	for _, want := range []string{"Tagged:          yes", "Pages:           2"} {
		if !strings.Contains(info, want) {
			t.Errorf("pdfinfo lacks %q:\n%s", want, info)
		}
	}
	root := tool(t, "mupdf-tools", "t.pdf", data, "mutool", "show", "FILE", "trailer/Root")
	for _, want := range []string{"/Marked true", "/PageLabels", "/S /r", "/Lang (en)", "/DisplayDocTitle true"} {
		if !strings.Contains(strings.Join(strings.Fields(root), " "), want) {
			t.Errorf("the catalogue lacks %q:\n%s", want, root)
		}
	}
	if !strings.Contains(string(data), "/Alt (A square. It stands alone.)") {
		t.Error("the figure is not told in words")
	}
}

// A file that is not said to be tagged holds no structure, whatever parts it has.
func TestNoStructureUnasked(t *testing.T) {
	data, err := sheet.PDF(t.Context(), sheet.Info{Title: "Plain"}, tagged()...)
	if err != nil || strings.Contains(string(data), "StructTreeRoot") || strings.Contains(string(data), "PageLabels") {
		t.Errorf("structure unasked, %v", err)
	}
}
