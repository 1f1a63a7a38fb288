package cut

import (
	"bytes"
	"os"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// shopPlan is the plan of the invented rink in testdata, in a system of units.
func shopPlan(t testing.TB, sys unit.System) ShopOrder {
	t.Helper()
	text, err := os.ReadFile("testdata/shop.yaml")
	if err != nil {
		t.Fatal(err)
	}
	doc, err := arena.Read("shop.yaml", bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	a.Units = sys
	p := NewShopOrder(a, doc.Bytes(), nil)
	p.Approval = approvedByAll()
	return p
}

// approvedByAll is the approval that leaves a drawing without words across it.
func approvedByAll() custody.Approval {
	return custody.Approval{Standing: custody.Approved, Replies: []custody.Reply{{
		Approver: custody.Approver{Party: custody.Operator, Name: "Ada"}, At: time.Date(2027, 1, 9, 12, 0, 0, 0, time.UTC), Accepted: true,
	}}}
}

func jobOf(t testing.TB, p ShopOrder, id string, o Options) Job {
	t.Helper()
	h, ok := p.Arena.Hole(id)
	if !ok {
		t.Fatalf("no hole %s", id)
	}
	j, err := p.Job(h, o)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func builtInKit(t testing.TB) kit.Kit {
	t.Helper()
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	return k
}
