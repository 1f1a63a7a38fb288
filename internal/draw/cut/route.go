package cut

import (
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Route is the way by which a hole comes into a pane.
type Route string

// The routes, as written in flags.
const (
	Shop  Route = "shop"  // the pane is taken to a shop and cut there
	Site  Route = "site"  // the pane is cut where it stands
	Order Route = "order" // the pane is ordered with its hole

	// Standing is no route that one asks for: the hole exists, and nothing is cut.
	Standing Route = "none: it exists"
)

// Routes lists the routes.
func Routes() []Route { return []Route{Shop, Site, Order} }

// ParseRoute reads a route's name.
func ParseRoute(s string) (Route, error) {
	for _, r := range Routes() {
		if string(r) == s {
			return r, nil
		}
	}
	return "", fmt.Errorf("route %q: write shop, site or order", s)
}

// routeFor returns the route of a pane: the one asked for, or the material's
// own when asked is "". What is never cut is ordered made.
func routeFor(m glass.Properties, asked Route) (Route, error) {
	switch {
	case m.Cuttable() && asked == "":
		return Shop, nil
	case m.Cuttable():
		return asked, nil
	case asked == "" || asked == Order:
		return Order, nil
	}
	return "", fmt.Errorf("the pane is %s, which is never cut: route %q is not possible; order a pane made with the hole (route order)", m.Noun(), string(asked))
}

// Steps returns what is to be done on the route, in order, in plain words.
func (j Job) Steps() []string {
	if j.Exists() {
		return j.checks()
	}
	drill := "Drill the four pilot holes with a bit ground for plastics (point 60 to 90 deg, no rake), backed, at low feed."
	along := "from pilot hole to pilot hole"
	bit := "a straight bit of dia. 12 mm at most (own choice)"
	if j.Pilot() == 0 {
		drill = "Drill one starting hole well inside the outline with a bit ground for plastics (point 60 to 90 deg, no rake), backed, at low feed."
		along = "all round, corners included"
		bit = "a straight bit of dia. " + bitFor(j.Corner) + " at most"
	}
	switch j.Route {
	case Shop:
		return []string{
			"Take the pane out, lay it flat on a clean, padded table; leave its masking on.",
			"Mark the outline from the template after measuring the check bars.",
			drill,
			"Rout with " + bit + ", " + along + "; the outline is the finished edge: compensate to its inside, by the bit's radius, and climb on the last pass; leave no step where radius meets side.",
			"Round both edges all round to the radius in the section, sand out every tool mark and polish, by hand or flame; no notch may stay.",
			"Check size, radius, rounding and the cover's fit; label the other face THIS FACE TO ICE, pane " + j.Pane.ID + ", before the pane goes back.",
		}
	case Site:
		return []string{
			"No one on the ice and nobody behind the pane; shore the pane on both sides.",
			"Mark the outline from the template after measuring the check bars; look at it from both sides.",
			drill,
			"Rout along a jig clamped to the pane with " + bit + ", " + along + "; the outline is the finished edge: the bit stays inside it; catch chips and keep them off the ice.",
			"Round both edges all round, sand out every tool mark; no notch may stay.",
			"Check size, radius, rounding and the cover's fit before the rink opens.",
		}
	}
	first := "Nothing is cut at the rink: the pane comes made with its hole."
	if why := j.Material.NeverCut; why != "" {
		first = "NEVER CUT this pane: " + why + "."
	}
	what := "it made with the hole"
	if n := len(j.Neighbours); n > 0 {
		what = fmt.Sprintf("ONE pane made with all its %d holes", n+1)
	}
	return []string{
		first,
		"Measure the pane in its frame and order " + what + ", all edges rounded and smooth.",
		"Send the factory this sheet and the DXF; the pane's outline in the frame is theirs to add.",
		"On delivery lay the template on the new pane: for checking only, not for cutting.",
	}
}

// bitFor is the largest bit that still makes a corner: dia. 12 mm, or the corner's own
// where it is smaller (own choice).
func bitFor(corner unit.Length) string {
	return fmt.Sprintf("%.3g mm", min(12*unit.Millimetre, 2*corner).Millimetres())
}

// checks are what is to be done about a hole that exists.
func (j Job) checks() []string {
	out := []string{
		"Nothing is cut: the hole is there already.",
		"Lay the template on it after measuring the check bars: size, corners and place as drawn?",
		"Feel both edges all round: no tool mark, no notch, no crack at a corner. A cracked pane comes out of use.",
	}
	if j.CoverExists() {
		return append(out, "Try the cover against its sheet: it goes in and comes out by hand, and its flange holds.")
	}
	return append(out, "Make its cover: no hole goes without one.")
}
