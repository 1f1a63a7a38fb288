// Package cut answers: what does a shop need on paper to make this hole and
// its cover, and may the hole be made at all?
//
// A [ShopOrder] is a checked arena with the mark of its document. For each hole
// [ShopOrder.Job] gathers what a drawing states, or refuses with the reason:
//
//	arena + document -> ShopOrder -> Job (place, route, cover, stress) -> drawings -> files
//	                             '-- refused: too near the edge, corner too sharp ...
//
// Places are measured on the glass itself, not along the boards: on a curved
// pane that stands back by b, a stretch that turns by w radians is longer on
// the glass by b w ([arena.Arena.Face]).
//
// The route follows the material: a pane that may be cut is cut in the shop or
// where it stands; one that is never cut (the materials' table in package
// glass says which, and why) is ordered made.
//
// Assumptions: panes are drawn as the survey has them, edge of stanchion to
// edge of stanchion; what hides in the frame is not known. Tolerances are own
// choices with their values on the drawing.
//
// Limits: nothing here is a strength check. The stress factor compares shapes
// of holes in a wide sheet under tension; a pane is bent and struck.
package cut

import (
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/survey/arena"
)

// ShopOrder is an arena, the mark of the document it was read from, and what the
// rules in force say of it.
type ShopOrder struct {
	Arena    arena.Arena
	Revision string // of the document, whole, for programs: see [arena.Revision]
	Mark     string // its short form for people, see [arena.Mark]
	Findings []rules.Finding
	// Approval is what became of the revision that is drawn; its zero value says that
	// nobody knows of one.
	Approval custody.Approval
	Issue    Issue // who answers for the drawings
}

// NewShopOrder returns the order for a checked arena, its document's text, and the
// findings of the rules in force ([rules.Sets.Check]), which every drawing of a
// hole that is not allowed carries.
func NewShopOrder(a arena.Arena, text []byte, findings []rules.Finding) ShopOrder {
	return ShopOrder{Arena: a, Revision: arena.Revision(text), Mark: arena.Mark(text), Findings: findings}
}
