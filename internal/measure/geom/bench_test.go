package geom

import "testing"

// BenchmarkOverlap is one clipping: an ellipse across two walls and a corner of
// what a tunnel leaves open.
func BenchmarkOverlap(b *testing.B) {
	o := RoundRect{0.07, 0.057, 0.012}.Shared(Vec2{0.015, 0.004})
	e := Ellipse{Centre: Vec2{0.045, 0.03}, A: Vec2{0.03, 0.002}, B: Vec2{0.001, 0.035}}
	b.ReportAllocs()
	for b.Loop() {
		sink, _ = o.Overlap(e)
	}
}

// BenchmarkShared builds what a tunnel leaves open toward a direction.
func BenchmarkShared(b *testing.B) {
	r := RoundRect{0.07, 0.057, 0.012}
	b.ReportAllocs()
	for b.Loop() {
		o := r.Shared(Vec2{0.015, 0.004})
		sink = o.area
	}
}

var sink float64
