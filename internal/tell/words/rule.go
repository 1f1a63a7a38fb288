package words

import "strings"

// Rule titles: what a rule of each kind asks, as a sentence.
var ruleTitles = map[string]string{
	"most-in-all":      "The rink has no more holes than allowed",
	"most-per-corner":  "No corner has more holes than allowed",
	"stretches":        "Holes stand on the stretches set aside for them",
	"least-separation": "Holes keep their distance along the boards",
	"hole-to-hole":     "Holes in one pane keep their distance",
	"no-overlap":       "No two holes meet",
	"hole-size":        "The hole is of the size asked for",
	"size-at-most":     "The hole is not too large",
	"hole-least":       "The hole is not too small",
	"height-range":     "The hole is at the height asked for",
	"corner-radius":    "The hole's corners are round enough",
	"edge-rounding":    "The hole's edges are rounded",
	"cover":            "The hole has a cover",
	"tether":           "The cover hangs on a tether",
	"in-one-pane":      "The hole lies in one pane",
	"pane-edge":        "The hole keeps away from the pane's edges",
	"pane-corner":      "The hole keeps away from the pane's corners",
	"cut-out-share":    "The hole leaves enough of the pane",
	"materials":        "The pane is of a material that may be cut",
	"trade-distance":   "The hole keeps what the trade asks of such a pane",
	"forbidden-zones":  "The hole keeps out of closed zones",
	"no-opening":       "There is no opening in the glass",
	"inspection":       "The hole is inspected as often as asked for",
	"kept-for-camera":  "Holes are kept for cameras at games",
}

// RuleTitle says as a sentence what a rule of a kind asks.
func RuleTitle(kind string) string {
	if title, ok := ruleTitles[kind]; ok {
		return title
	}
	return strings.ReplaceAll(kind, "-", " ")
}
