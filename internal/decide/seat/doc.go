// Package seat answers: who works which hole in which period, is that provably the
// best seating, and is it fair over a season?
//
// It knows names and numbers only: a [Night] is one game's holes, the people who
// ask for them and what each hole is worth to each of them in each period. What
// makes a hole worth something is somebody else's matter.
//
//	Night --Assign--> Seating: seats, shares, why somebody has none, proof
//	  |                  |
//	  |                  '--Enter--> Ledger: nights asked for and had, by person
//	  '--Run--> Season: night after night, each weighed by the ledger so far
//
// # The rule
//
// A person's share of a night is what their seats are worth, less their moves, over
// the best that they could have had alone. A night is seated so that the sum of all
// shares is the greatest, where who is a night further behind counts twice as much:
//
//	max  sum 2^(owed) share,    owed = (all had / all asked) asked - had, in nights
//
// Firm requests go before every wish, seats that were given by hand stay, kept holes
// go to nobody else, and who came late takes what is left. Equal seatings are
// decided by name. docs/decisions/0011 says why this rule and no other.
//
// # The proof
//
// With prices of 0 or more for every seat, no seating has more than the prices' sum
// and the best that each person could have at those prices (weak duality). Without
// moves the relaxation is whole and prices meet the value; else a search of the few
// ways that the prices leave open closes the rest (package solve), within limits of
// memory and time: what is larger is told with its gap. Equal people are one class
// with a number, of whom the earlier names have the better ways. Whoever has the
// prices can add the bound up again, however they were found.
package seat
