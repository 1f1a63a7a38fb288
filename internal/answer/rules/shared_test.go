package rules

import (
	"fmt"
	"strings"
	"sync"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// TestSetsReadAtOnceKeepTheirOwnNumbers: two who read rule sets at the same time, as two
// visitors of a desk do, never get each other's limits.
func TestSetsReadAtOnceKeepTheirOwnNumbers(t *testing.T) {
	const rounds = 500
	var all sync.WaitGroup
	for mm := range 4 {
		want, err := unit.ParseLength(fmt.Sprint(mm+5, " mm"))
		if err != nil {
			t.Fatal(err)
		}
		all.Go(func() {
			text := fmt.Sprintf("rinkpane: rules 1\nid: own\nname: Own\nstatus: no published source\nrules:\n- kind: corner-radius\n  least: %d mm\n", mm+5)
			for range rounds {
				set, err := Read("own", strings.NewReader(text))
				if err != nil {
					t.Error(err)
					return
				}
				if got := set.Rules[0].demand.(atLeast).least.Plus; got != want {
					t.Errorf("read %v and got %v", want, got)
					return
				}
			}
		})
	}
	all.Wait()
}
