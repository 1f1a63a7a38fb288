// Package queue answers: which long work is asked for, who does it when, and what came
// of it, on one machine or on many?
//
//	Ask -> waiting -> at work -> done        the answer is kept, and asked for again at no cost
//	          ^          |
//	          '- again --+-> failed          after so many tries, each later than the one before
//	                     '-> given up        cancelled by hand
//
// The model: a [Kind] turns a question into an answer, both values that JSON can hold.
// A question is known by its content: SHA-256 over kind, program and JSON. The same
// question is worked once, however often, by whomever and from wherever it is asked.
// Pieces wait in an SQLite file or in PostgreSQL; whoever calls [Queue.Work] works them.
//
// What is promised:
//
//   - A piece that was asked for ends done, failed or given up, also when workers are
//     killed or the database restarts meanwhile. A worker says every [beat] that it is
//     alive; what it does not say for [lease] is given to another.
//   - An answer is kept once: of two workers that come to the same one, as when one of
//     them was thought dead, the first counts.
//   - Owners take turns, as in package job: of the pieces that wait, the next is one of
//     the owner who was served longest ago. Pieces that somebody waits for go first, and
//     every worker has a place for them that no other piece takes.
//   - A worker takes the pieces of its own program's version only, so that old and new
//     may work side by side on one database.
//
// The turns are those of start-time fair queueing (Goyal, Vin and Cheng, SIGCOMM 1996)
// with pieces of equal length: an owner's next piece is tagged one above the later of the
// owner's last tag and the tag that is being worked; pieces are worked in the tags' order.
package queue
