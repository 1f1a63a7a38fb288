package edit_test

import (
	"testing"

	"example.org/rinkpane/internal/survey/edit"
)

// BenchmarkRow makes as many edits of the demo as a row may hold, each of which reads
// the document anew: the bytes a second are what the bounds of a row's work stand on.
func BenchmarkRow(b *testing.B) {
	doc := demo(b)
	edits := make([]edit.Edit, edit.Most)
	for i := range edits {
		z := 1.4 + float64(i%10)/100
		edits[i] = edit.Edit{Do: edit.Move, Hole: "B2", To: &edit.Spot{Height: &z}}
	}
	b.SetBytes(int64(len(edits) * len(doc.Bytes())))
	for b.Loop() {
		if _, _, err := (edit.Editor{}).Apply(doc, edits); err != nil {
			b.Fatal(err)
		}
	}
}
