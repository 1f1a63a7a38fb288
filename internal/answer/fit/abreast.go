package fit

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// abreast calls do for 0 .. n-1, shared over the machine's cores. The calls
// must not depend on one another, so that the result does not depend on how
// many cores there are.
func abreast(n int, do func(i int)) {
	workers := min(n, runtime.GOMAXPROCS(0))
	if workers <= 1 {
		for i := range n {
			do(i)
		}
		return
	}
	var next atomic.Int64
	var wg sync.WaitGroup
	for range workers {
		wg.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	wg.Wait()
}
