package plan

import (
	"testing"

	"example.org/rinkpane/examples"
)

// BenchmarkMake plans the demo arena. Budget: under a second for plan without drawings.
func BenchmarkMake(b *testing.B) {
	m, doc := maker(b), document(b, examples.Demo)
	for b.Loop() {
		if _, err := m.Make(b.Context(), doc); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkProve is what the desk's list of arenas waits for.
func BenchmarkProve(b *testing.B) {
	m, doc := maker(b), document(b, examples.Demo)
	for b.Loop() {
		if _, err := m.Prove(doc); err != nil {
			b.Fatal(err)
		}
	}
}
