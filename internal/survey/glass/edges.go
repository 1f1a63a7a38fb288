package glass

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Edges is how far a hole's outline stands inside its pane, in metres, seen
// from the camera's side (the spectators' side, looking at the ice): left is
// toward falling station, right toward rising station. A negative distance
// lies outside the pane.
//
//	+--------------------------+  top of the pane
//	|            Top           |
//	|  Left   +------+  Right  |
//	|<------->| hole |<------->|
//	|         +------+         |
//	|          Bottom          |
//	+--------------------------+  top of the boards
type Edges struct{ Left, Right, Top, Bottom unit.Length }

// Least returns the smallest of the four distances.
func (e Edges) Least() unit.Length { return min(e.Left, e.Right, e.Top, e.Bottom) }

// EdgesOf returns the distances of a hole to its pane's edges. Stations are
// taken along the boards' rink face, of the given perimeter; a pane may pass
// the perimeter's end.
func EdgesOf(b Boards, p Pane, h Hole, perimeter unit.Length) Edges {
	along := unit.Length(math.Mod(float64(h.Station-p.From), float64(perimeter)))
	if along < 0 {
		along += perimeter
	}
	if along > p.Width && perimeter-along < along-p.Width { // nearer to the pane going back
		along -= perimeter
	}
	up := h.Height - b.Height
	return Edges{
		Left:   along - h.Size.W/2,
		Right:  p.Width - along - h.Size.W/2,
		Bottom: up - h.Size.H/2,
		Top:    p.Height - up - h.Size.H/2,
	}
}
