package cut

import (
	"bytes"
	"os"
	"testing"

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
	return NewShopOrder(a, doc.Bytes(), nil)
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
