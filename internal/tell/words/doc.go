// Package words says to people what was answered: in sentences and tables, in
// the units that the reader asks for. Command, folder, desk and book take their
// words from here, so that they say the same.
//
//	decide/plan, decide/choose, answer/puck --> words --> text, paper, pages
//
// How far a lens turns has three marks. People read, JSON keeps the names of
// the contract:
//
//	people  JSON    degrees from straight ahead, to either side
//	clean   clear   until a corner of the picture loses a twentieth of its light
//	half    usable  until the middle of the picture has lost half of its light
//	touch   body    until the barrel, its rim at the rink face, meets the glass
//
// The model: rows and columns are values of package table; a column is written
// once and picked by name. Nothing is computed here.
package words
