package puck

import (
	"example.org/rinkpane/arena"
	"fmt"
	"testing"
	"time"
)

func TestX(t *testing.T) {
	d, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := d.Check()
	if err != nil {
		t.Fatal(err)
	}
	t0 := time.Now()
	g, err := Assess(a, DefaultOptions())
	if err != nil {
		t.Fatal(err)
	}
	fmt.Println(time.Since(t0), len(DefaultShots(a.Rink)))
	for _, x := range g {
		fmt.Printf("%s pane %.4f%% share %.2e game/h %.4f J %.1f %.1f sector %+v\n", x.Hole, 100*x.ShareAtPane, x.ShareOfShots, x.Game.PerHour, x.MeanJ, x.MostJ, x.Sector)
	}
	for _, r := range g[0].Reach {
		fmt.Printf("%+v\n", r)
	}
}
