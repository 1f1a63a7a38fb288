// Package chart answers: how does an arena and what was computed for it look, on
// paper and on a page?
//
// Two pictures show the arena, several small ones the numbers:
//
//	PlanMap      the rink from above: ice, boards, panes, zones, holes, reach
//	BoardsStrip  the boards and the glass unrolled along the stations
//	Plot         lines, points and steps over two axes with sensible ticks
//	FitChart     stops lost against pan, with the limits of a lens in a hole
//	GuardMap     where pucks come down behind the holes
//
// All return a [sheet.Drawing] in millimetres, in the classes of [Styles]. The
// same drawing serves the file, the book and the web page: what a page's script
// looks for stands in data attributes (data-hole, data-pane, data-zone,
// data-window, data-stretch, data-station), what a page's theme colours are the
// named colours of the style sheet.
//
//	       box side                      seen from the spectators' side
//	A +---------------+ B               +-----+-----+-----+-----+ glass
//	  |   plan map    |                 |     |  o  |     |     |
//	  +---------------+                 +-----+-----+-----+-----+
//	      bench side                    |  boards   |  []       |
//	  0 --> station                     0 ------> station
//
// Meaning is never in colour alone: a hole's status is a shape, a stretch, a zone
// and a material have a word, a line of a plot has a dash and a mark of its own.
//
// Labels of holes stand outside the boards with leaders; they are moved apart
// along each side as little as can be, in the order of their holes.
package chart
