package store

import (
	"context"
	"fmt"
	"sync/atomic"
	"testing"

	"example.org/rinkpane/internal/decide/custody"
)

// BenchmarkDurableEvents keeps cover events, each acknowledged when it is on the disk: as
// many phones send one at a time, and as the plain insert loop of the same database does
// it, a transaction an event. Budget: 2,000 a second on two cores.
func BenchmarkDurableEvents(b *testing.B) {
	open := func(b *testing.B) *Store {
		s, err := OpenFolder(b.Context(), b.TempDir())
		if err != nil {
			b.Fatal(err)
		}
		b.Cleanup(func() { s.Close() })
		return s
	}
	perSecond := func(b *testing.B) { b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "events/s") }
	for _, phones := range []int{1, 20, 200} {
		b.Run(fmt.Sprintf("phones=%d", phones), func(b *testing.B) {
			s := open(b)
			var n atomic.Int64
			b.SetParallelism(max(1, phones/2)) // of two cores
			b.RunParallel(func(pb *testing.PB) {
				for pb.Next() {
					if _, err := s.Append(context.Background(), noon, []custody.Event{coverEvent(0, int(n.Add(1)))}); err != nil {
						b.Error(err)
						return
					}
				}
			})
			perSecond(b)
		})
	}
	b.Run("plain-insert-loop", func(b *testing.B) {
		s := open(b)
		n := 0
		for b.Loop() {
			n++
			e := coverEvent(0, n)
			kind, body := custody.Encode(e.Fact)
			if _, err := s.db.ExecContext(b.Context(), `INSERT INTO event (`+eventColumns+`) VALUES `+places(0, 10),
				string(e.ID), e.Arena, n, e.Told.UnixMicro(), 0, noon.UnixMicro(), e.Who, "", kind, body); err != nil {
				b.Fatal(err)
			}
		}
		perSecond(b)
	})
}
