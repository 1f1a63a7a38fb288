// Package book answers: what do rink operator, glass contractor, league and
// photographer put their names under?
//
// [Gather] works everything out for one arena; [Content.PDF] sets it as one
// book with bookmarks, page numbers and text that can be searched,
// [Content.HTML] as one file for a browser that needs nothing else:
//
//	arena document -> plan, fit, sight, puck, cut -> Content -> PDF
//	                                                        '-> HTML
//
// The order of the pages: summary and contents; plan map; boards strip; for
// each hole its place, rules and guard, then lenses, light and reach; the kit;
// covers and tethers; rule findings with margins; the guard over the arena;
// cautions and sign-off.
//
// Assumptions and limits are those of the packages it calls; it adds no model.
// The bytes depend on nothing but the arena, the kit, the rules and the options.
package book
