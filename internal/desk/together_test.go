package desk

import (
	"net/http"
	"os"
	"sync"
	"sync/atomic"
	"testing"
)

// TestPagesAskedTogether: four visitors who read every page at the same time, each in an
// order of their own, share nothing that is written: make soak runs it under the race
// detector. A desk that says it is busy is within its right.
func TestPagesAskedTogether(t *testing.T) {
	if os.Getenv("RINKPANE_SOAK") == "" {
		t.Skip("reads every page four times at once; make soak does")
	}
	pages := samplePages(t)
	h, _, _ := ownDesk(t, false)
	var all sync.WaitGroup
	var answered atomic.Int64
	for k := range 4 {
		all.Go(func() {
			for i := range pages {
				path := pages[(i*(2*k+1)+k*len(pages)/4)%len(pages)]
				switch w := ask(t, h, "GET", path, ""); w.Code {
				case http.StatusOK, http.StatusSeeOther, http.StatusServiceUnavailable:
					answered.Add(1)
				case http.StatusNotFound: // "/nothing" is a page, too
				default:
					t.Errorf("%s: %d", path, w.Code)
				}
			}
		})
	}
	all.Wait()
	if got := int(answered.Load()); got < 4*(len(pages)-1) {
		t.Errorf("%d of %d pages answered", got, 4*len(pages))
	}
}
