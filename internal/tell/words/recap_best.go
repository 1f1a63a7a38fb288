package words

import (
	"fmt"

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// RecapBest says how the best set by the frames differs from the one before, and tables it.
func RecapBest(b recap.Best, sys unit.System) (string, table.Table) {
	t := ChosenHoles.Pick("hole", "place", "pane", "height_m", "worth").Of("The best set by what the frames say", b.By.Holes, sys)
	moved := b.Moved()
	switch {
	case len(b.By.Holes) == 0:
		return "No set of holes keeps the rules.", t
	case len(moved) == 0:
		return "It cuts the same panes as the best set by what was assumed before.", t
	}
	return fmt.Sprintf("Of its %s the best set by what was assumed before leaves whole: %s.", say.Count(len(b.By.Holes), "pane"), say.Names(moved)), t
}

// RecapBestText tells the same as text.
func RecapBestText(b recap.Best, sys unit.System) string {
	p := page{sys: sys}
	said, t := RecapBest(b, sys)
	p.say("\n%s\n%s", t.Title, t.Shown().Text())
	p.lines(said)
	return p.String()
}
