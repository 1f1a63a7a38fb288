package sight_test

import (
	"context"
	"fmt"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

func Example() {
	doc, err := arena.Demo()
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := doc.Check()
	if err != nil {
		fmt.Println(err)
		return
	}
	k, err := kit.Default()
	if err != nil {
		fmt.Println(err)
		return
	}
	a.Lenses = []string{"70-200"}
	mapper, err := sight.NewMapper(a, k)
	if err != nil {
		fmt.Println(err)
		return
	}
	grid, err := sight.NewGrid(a.Rink, 0.5)
	if err != nil {
		fmt.Println(err)
		return
	}
	reach, err := mapper.Map(context.Background(), a.Holes[1], grid, []unit.Length{sight.PuckHeight})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range reach.Lenses {
		fmt.Printf("%s at %s: %.0f %% of the ice, blind for %s\n", l.ID, l.Focal.Format(unit.Metric), 100*l.Share[0], unit.Length(l.Blind.Ahead).Format(unit.Metric))
	}
	// Output:
	// 70-200 at 70 mm: 87 % of the ice, blind for 297 mm
	// 70-200 at 200 mm: 76 % of the ice, blind for 564 mm
}
