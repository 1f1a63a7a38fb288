package frame

import "testing"

func BenchmarkPicture(b *testing.B) {
	for _, size := range []struct {
		name string
		w, h int
	}{{"1200x800", 1200, 800}, {"preview 480x320", 480, 320}} {
		b.Run(size.name, func(b *testing.B) {
			s := shot(b, nil)
			for b.Loop() {
				s.Picture(size.w, size.h)
			}
		})
	}
}
