package arena_test

import (
	"testing"

	"example.org/rinkpane/internal/survey/arena"
)

func TestDemoIsSound(t *testing.T) {
	d, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := d.Check()
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Panes) < 100 || len(a.Holes) != 8 || len(a.Light.Readings) < 20 || len(a.Windows) != 1 || len(a.Zones) < 6 {
		t.Errorf("the demo is not rich: %d panes, %d holes, %d readings, %d low windows, %d zones",
			len(a.Panes), len(a.Holes), len(a.Light.Readings), len(a.Windows), len(a.Zones))
	}
}
