package cut

import (
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
)

// Hold is what keeps a cover in its hole.
type Hold string

// The holds, as written in flags.
const (
	Button Hold = "button" // two buttons that turn over the flange, on blocks glued to the pane
	Strap  Hold = "strap"  // a strap over the flange from stanchion to stanchion
)

// ParseHold reads a hold's name.
func ParseHold(s string) (Hold, error) {
	switch h := Hold(s); h {
	case Button, Strap:
		return h, nil
	}
	return "", fmt.Errorf("hold %q: write button or strap", s)
}

// piece is one kind of part of a hold, a rectangle with round corners.
type piece struct {
	name     string
	count    int
	of       string // material
	thick    unit.Length
	size     unit.Size
	corner   unit.Length
	holes    []unit.Length // their centres from the left, at half the height
	bore     unit.Length   // their diameter
	slotWide unit.Length   // of a slot in the middle; 0 for none
	slotHigh unit.Length
}

// Sizes of the holds: own choices, to be tried on the rink's own panes.
const (
	blockGap    = 3 * unit.Millimetre // between the flange and a button's block
	screwBore   = 5.5 * unit.Millimetre
	strapWide   = 25 * unit.Millimetre
	strapBeyond = 150 * unit.Millimetre // of the strap past either edge of the pane, to its anchor
)

// The button turns about a screw so far from its outer end; the block's middle is under it.
const buttonPivot = 15 * unit.Millimetre

// pieces lists the parts of a job's hold that a shop makes.
func (j Job) pieces() []piece {
	const mm = unit.Millimetre
	if j.Options.Hold == Strap {
		return []piece{{name: "anchor plate", count: 2, of: "stainless steel", thick: 2 * mm, size: unit.Size{W: 60 * mm, H: 30 * mm}, corner: 4 * mm,
			holes: []unit.Length{8 * mm, 52 * mm}, bore: screwBore, slotWide: 28 * mm, slotHigh: 5 * mm}}
	}
	of := string(j.Cover.Material)
	return []piece{
		{name: "turn button", count: 2, of: of, thick: j.Cover.FlangeThk, size: unit.Size{W: 50 * mm, H: 20 * mm}, corner: 10 * mm, holes: []unit.Length{buttonPivot}, bore: screwBore},
		{name: "block", count: 2, of: of, thick: j.Cover.FlangeThk, size: unit.Size{W: 30 * mm, H: 24 * mm}, corner: 4 * mm, holes: []unit.Length{buttonPivot}, bore: screwBore},
	}
}

// overlap is how far a closed button reaches over the flange.
func (p piece) overlap() unit.Length { return p.size.W - buttonPivot - blockGap - buttonPivot }

// length is how long a job's strap is between its anchors.
func (j Job) strapLength() unit.Length { return j.front(j.Face.Width) + 2*strapBeyond }

// holdSteps say how the hold is made and used.
func (j Job) holdSteps(sys unit.System) []string {
	if j.Options.Hold == Strap {
		return []string{
			fmt.Sprintf("Strap of webbing %s wide, cut to %s between the anchors and as much more as its buckle takes; one plate at either end, screwed to the stanchion, never to the pane.", both(strapWide).Say(sys), both(j.strapLength()).Say(sys)),
			"It runs over the middle of the flange, on the spectators' side, and is drawn tight by hand; the buckle lies beside the flange, its loose end tied up.",
			"To open: loosen the buckle, take the cover out by its tab, and hang strap and cover on the frame, off the floor.",
		}
	}
	return []string{
		"The blocks are glued to the pane's shooting face, level with the middle of the hole, with what the pane's maker names for it. NO SCREW ENTERS THE PANE.",
		"Each button turns on an M5 screw with washer and self-locking nut, the nut sunk into the block's back before it is glued; so tight that it stays where it is turned to.",
		"To close: cover in, both buttons level, over the flange by " + both(j.pieces()[0].overlap()).Say(sys) + ". To open: both upright (dashed), cover out by its tab.",
	}
}
