// Package book answers: what do rink operator, glass contractor, league and
// photographer put their names under?
//
// [Gather] works everything out for one arena and takes the pictures; [Content.PDF]
// sets it as one book with bookmarks, page numbers, text that can be searched and a
// structure that can be read out, [Content.HTML] as one file for a browser that needs
// nothing else. Both are made of the same chapters:
//
//	arena document -> plan, fit, sight, frame, puck, cut -> Content -> chapters -> PDF
//	                                                                           '-> HTML
//
// A chapter is leaves, a leaf columns, a column parts; a part writes itself into a
// flow, which is a column of a sheet or a page for a browser. The order: the cover;
// what to mend and the contents; plan map; boards strip; light; a spread for each
// hole, its pictures, place, verdict and guard, then lenses, reach and light; covers,
// tethers and the kit; rule findings with margins; the guard over the arena; cautions
// and sign-off.
//
// Assumptions and limits are those of the packages it calls; it adds no model.
// The bytes depend on nothing but the arena, the kit, the rules and the options.
package book
