package arena_test

import (
	"bytes"
	"testing"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
)

// BenchmarkReadAndCheck reads the demo: 127 panes, 8 holes, 27 readings.
func BenchmarkReadAndCheck(b *testing.B) {
	text := example(b, "quillhaven.yaml").Bytes()
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		d, err := arena.Read("q.yaml", bytes.NewReader(text))
		if err != nil {
			b.Fatal(err)
		}
		if _, err := d.Check(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkCheck proves the demo again, without parsing.
func BenchmarkCheck(b *testing.B) {
	d := example(b, "quillhaven.yaml")
	for b.Loop() {
		if _, err := d.Check(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSet changes one value of the demo, reading it again.
func BenchmarkSet(b *testing.B) {
	d := example(b, "quillhaven.yaml")
	for b.Loop() {
		if _, err := d.Set("holes[A4].height", form.Text("59 in")); err != nil {
			b.Fatal(err)
		}
	}
}
