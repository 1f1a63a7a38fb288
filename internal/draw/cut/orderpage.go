package cut

import (
	"fmt"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/glass"
)

// blank is left for whoever orders to fill in.
const blank = "____________________"

// ordered reports whether the pane is ordered made with its holes, not cut, and does not
// stand yet.
func (j paneJob) ordered() bool { return j.Material.MadeToOrder() && j.route() != Standing }

// orderPage is the form by which a pane is ordered made with its hole; none for one that
// is not. What the survey does not know is left blank, for the buyer and the glass maker
// to settle: none of it is guessed.
func (s *set) orderPage(j paneJob) {
	if !j.ordered() {
		return
	}
	f := sheet.NewFlow(func() (*sheet.Drawing, sheet.Rect) {
		g := s.page(lying, "order", "Pane "+j.Pane.ID+": order form", j.marks(),
			sheet.Field{Name: "Pane", Value: j.Pane.ID}, sheet.Field{Name: "Material", Value: string(j.Material.Name)}, sheet.Field{Name: "Quantity", Value: "1"})
		return g.d, g.area
	})
	g := page{sys: s.Arena.Units}
	tolerance := tolerance(j.Cover.Options.HoleTolerance, g.sys)
	f.Heading("What is ordered")
	lines := []string{
		fmt.Sprintf("Quantity: 1, for pane %s. Spares: %s", j.Pane.ID, blank),
		fmt.Sprintf("Visible pane %s x %s.", g.place(j.front(j.Face.Width)), g.place(j.Face.Height)),
		fmt.Sprintf("FULL pane with what the frame hides (edge bite), measured out of the frame: width %s height %s", blank, blank),
		fmt.Sprintf("Edge bite: left %s right %s foot %s top %s", blank, blank, blank, blank),
		fmt.Sprintf("Material %s, thickness %s as surveyed; grade and make-up: not surveyed: %s", j.Material.Name, g.one(j.Thick), blank),
	}
	for _, k := range j.jobs {
		lines = append(lines, fmt.Sprintf("Hole %s %s x %s, %s; corner fillets R %s; its centre %s from the left visible edge and %s above the foot, on the face away from the ice; its edges rounded R %s on both faces and smooth.", k.Hole.ID,
			g.one(k.Hole.Size.W), g.one(k.Hole.Size.H), tolerance, g.one(k.Corner), g.place(k.front(k.Face.Left)), g.place(k.Face.Up), g.one(k.Rounding)))
	}
	f.Numbered(append(lines, "The pane's own edges: "+blank)...)
	f.Heading("How it is made")
	f.Numbered(j.making()...)
	f.Heading("Agreed")
	f.Notes("Measured by "+blank+" on "+blank, "Ordered by "+blank+" on "+blank, "Confirmed by the glass maker "+blank+" on "+blank,
		"The glass maker's limits for holes, edges and distances govern over this form, and local codes over both. This form proves no strength.")
}

// making is what is to be settled with the maker, by the pane's material.
func (j Job) making() []string {
	label := "Label on the face toward the ice: THIS FACE TO ICE, pane " + j.Pane.ID + "."
	steps := []string{"Hole, fillets and all edges are worked BEFORE tempering; nothing is cut, drilled or ground after.",
		"Heat soak test against breaking without cause (EN 14179-1, from memory): yes / no " + blank,
		"Tempering stamp: place where neither the hole nor the line of sight is; the corner agreed: " + blank}
	if j.Material.Name == glass.Laminated {
		steps = []string{"Hole, fillets and all edges are worked in each ply BEFORE laminating, and before tempering where plies are tempered; nothing is cut after.",
			"Plies: thickness and kind of each " + blank, "Interlayer: material and thickness " + blank + "; its edge in the hole sealed: yes / no " + blank,
			"Heat soak test of tempered plies (EN 14179-1, from memory): yes / no " + blank,
			"Maker's stamp: place where neither the hole nor the line of sight is; the corner agreed: " + blank}
	}
	return append(steps, "Tolerances of size, thickness and flatness beyond those above: the maker's own, stated on confirmation: "+blank, label)
}
