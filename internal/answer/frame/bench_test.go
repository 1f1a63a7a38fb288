package frame

import (
	"syscall"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// cpu returns the processor time of this process so far, in milliseconds.
func cpu(b *testing.B) float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e6
}

// BenchmarkPicture reports the processor time of a picture beside the wall
// time: on a machine that others use too, only the first can be compared.
func BenchmarkPicture(b *testing.B) {
	for _, scene := range []struct {
		name   string
		change func(*Request)
	}{
		{"70mm", nil},
		{"200mm", func(q *Request) { q.Use.Focal = 200 * unit.Millimetre }},
		{"pane", byPane(0.1, 0.1)},
		{"near-focus", func(q *Request) { q.Use.Focal, q.Focus = 135*unit.Millimetre, unit.Known(4*unit.Metre) }},
	} {
		for _, size := range []struct {
			name string
			w, h int
		}{{"1200x800", 1200, 800}, {"480x320", 480, 320}} {
			b.Run(scene.name+" "+size.name, func(b *testing.B) {
				s := shot(b, scene.change)
				from := cpu(b)
				for b.Loop() {
					s.Picture(size.w, size.h)
				}
				b.ReportMetric((cpu(b)-from)/float64(b.N), "cpu-ms/op")
			})
		}
	}
}

func BenchmarkNewShot(b *testing.B) {
	a := demo(b)
	q := request(b, a)
	from := cpu(b)
	for b.Loop() {
		if _, err := NewShot(a, q); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric((cpu(b)-from)/float64(b.N), "cpu-ms/op")
}
