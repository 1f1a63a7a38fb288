package kit_test

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/survey/kit"
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

func TestInUse(t *testing.T) {
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	if all, err := k.InUse(nil); err != nil || len(all) != len(k.Lenses) {
		t.Errorf("no ids: %d lenses, %v; want all %d", len(all), err, len(k.Lenses))
	}
	some, err := k.InUse([]string{"70-200", "24-70"})
	if err != nil || len(some) != 2 || some[0].ID != "24-70" || some[1].ID != "70-200" {
		t.Errorf("two ids: %v, %v; want them in the kit's order", some, err)
	}
	for id, words := range map[string]string{"24-7o": `no lens "24-7o", did you mean "24-70"`, "xxxxxxxx": `no lens "xxxxxxxx"; take it out`} {
		if _, err := k.InUse([]string{"70-200", id}); err == nil || !strings.Contains(err.Error(), words) {
			t.Errorf("%s: %v, want %q", id, err, words)
		}
	}
}
