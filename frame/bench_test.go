package frame

import (
	"syscall"
	"testing"
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
	for _, size := range []struct {
		name string
		w, h int
	}{{"1200x800", 1200, 800}, {"preview 480x320", 480, 320}} {
		b.Run(size.name, func(b *testing.B) {
			s := shot(b, nil)
			from := cpu(b)
			for b.Loop() {
				s.Picture(size.w, size.h)
			}
			b.ReportMetric((cpu(b)-from)/float64(b.N), "cpu-ms/op")
		})
	}
}
