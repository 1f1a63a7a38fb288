// Package sheet answers: how does one drawing become a print, a picture, a web
// page's figure and a file that a shop's machine cuts from, all alike to 0.01 mm?
//
// A [Drawing] is a neutral model in real millimetres. It knows no rink: it holds
// shapes (lines, polylines with true arcs, circles, arcs, paths, text, pictures,
// groups), each with a class (its look, see [Stylesheet]), a layer, and, for web
// pages, data attributes and a title. Four writers read the same model:
//
//	             +--> WriteSVG   file (style sheet and fonts inside) or inline (classes only)
//	Drawing ---->+--> WritePDF   pages, bookmarks, searchable text in embedded Go fonts
//	             +--> WritePNG   at a given number of dots per inch
//	             +--> WriteDXF   R2000, millimetres, closed polylines with bulges
//
// The frame is the paper as it is read: origin at the top left corner, x to the
// right, y down, both in millimetres.
//
//	(0,0) ---- x ---->
//	  |    +-------+          angles are counter-clockwise as seen,
//	  y    |       |          0 points right, in radians
//	  v    +-------+ (W,H)
//
// Angles, arcs and bulges turn counter-clockwise as seen on the paper when they
// are positive. A [View] maps a frame in metres with y up (the rink) to it.
//
// Assumptions: text is set in the Go fonts, which hold the Latin, Greek and
// Cyrillic alphabets, fractions such as ½ and signs such as ×; a character that
// they lack prints as an empty box, and the sheet says so (see [Lack]). No kerning, so that every writer sets the
// same width. Coordinates are rounded to 0.01 mm only in the SVG writer, to
// 0.0001 pt or better elsewhere. The bytes written depend on nothing but the
// drawing and the options: clock and version are passed in.
package sheet
