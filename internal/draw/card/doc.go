// Package card draws what somebody carries on game night: where to be in which period, and
// with what.
//
//	Prepare   what all cards of a season stand on, once: lenses, light, guards
//	Cards     one Card a person of a game, from the seats given
//	PDF       each card as a page of a phone's shape, or four on a sheet of paper
//	WallPDF   the seats of a game on one sheet for the wall
//	Calendars one iCalendar file a person
//
// A [Card] is a typed value: a page shows the same one. Read from the top it answers, in
// this order: which hole now, who attacks here, which lens; then how far it turns, what to
// set, what to keep clear, which cover to mind.
//
// Assumptions: the lens named is that of the person's whose score is best for what they
// follow, bare and wide open. Light is the survey's.
package card
