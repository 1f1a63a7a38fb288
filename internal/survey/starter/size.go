package starter

import (
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
)

// standardOf is the standard whose book fills in what a rink of a system lacks.
func standardOf(sys unit.System) string {
	if sys == unit.Imperial {
		return rink.NorthAmerican
	}
	return rink.International
}

// OfSize returns the layout with a rink of a length and width, and a corner radius
// where it is known; markings are filled in as how says ([rink.Fill]) from the
// standard of the layout's units.
func (p Layout) OfSize(d rink.Dimensions, how rink.Filling) (Layout, error) {
	name := standardOf(p.Units)
	guessed := d.CornerRadius == 0
	r, how, err := rink.Fill(d, name, how)
	if err != nil {
		return p, err
	}
	p.Rink = r
	switch whole, _ := rink.Standard(name); {
	case whole == r:
		p.Standard = name
	case how == rink.ByBook:
		p.Markings = "by " + rink.Book(name)
	case how == rink.InProportion:
		p.Markings = "in proportion to " + rink.Book(name)
	}
	if guessed && p.Standard == "" {
		p.Markings += "; the corner radius is in proportion, too"
	}
	return p, nil
}

// Notes says what a begun survey takes for granted, and what of the wish it could not
// do.
func (p Layout) Notes(a arena.Arena) []string {
	out := []string{"Boards, glass, benches, boxes and doors are the usual ones and stand where they usually do; every number counts as a guess until its source says otherwise."}
	if p.Markings != "" {
		out = append(out, "The markings are filled in, not measured: "+p.Markings+".")
	}
	if p.Benches == Opposite {
		out = append(out, "The benches stand on opposite sides, the guests' beside their penalty box.")
	}
	if n := len(a.Panes); p.Wish.Count > 0 && p.Wish.Count != n {
		out = append(out, fmt.Sprintf("You said %d panes; of these widths %d stand round the boards, doors among them and none before the benches. Correct widths or gates, or give the contractor's list.", p.Wish.Count, n))
	}
	if len(p.List) > 0 {
		out = append(out, fmt.Sprintf("The %d panes are as the list has them; their source is a drawing.", len(a.Panes)))
	}
	return out
}
