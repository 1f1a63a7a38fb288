package kit_test

import (
	"testing"

	"example.org/rinkpane/kit"
)

func TestDefaultKit(t *testing.T) {
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	if len(k.Lenses) < 10 || len(k.Bodies) != 3 {
		t.Errorf("%d lenses and %d bodies", len(k.Lenses), len(k.Bodies))
	}
	for _, id := range []string{"24-70", "70-200", "85-1.8", "135-2", "300-2.8", "400-2.8"} {
		if _, ok := k.Lens(id); !ok {
			t.Errorf("no lens %s", id)
		}
	}
}
