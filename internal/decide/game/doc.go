// Package game answers: which games are played, toward which ends, who asks for which
// holes, and what is a hole worth to each of them?
//
//	games.yaml --Read--> Season: arena, kit, people, games, requests
//	                        |
//	                      Score     each hole, lens set, end and phase once (package sight)
//	                        |
//	                      Table.Worth  of a hole to a request in a period of a game
//	                        |
//	                      Season.Night the seating problem of one game (package seat)
//
// A games document names an arena and a kit; [Read] opens them by what it is given and
// checks every id against them, so that a [Season] is sound throughout. Its errors name
// file, line, column, field, the value seen and the cure. docs/games.md describes the
// format.
//
// # What a hole is worth
//
// Not a rank of its own: the mean score of the moments that the request is about, through
// that hole, in that period, with the lenses that this person brings (package sight, with
// the news weights of package play). Ends come from the game.
//
// # Assumptions
//
// Moments are the sampler's, not this game's. Each person uses the kit's first body. Who
// sits or stands is taken to work at the heights of package choose; a remote camera at any.
// Times are the rink's wall clock, unless a calendar gives them in universal time.
package game
