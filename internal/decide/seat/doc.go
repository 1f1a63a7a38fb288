// Package seat answers: who works which hole in which period, is that provably the
// best seating, and is it fair over a season?
//
// It knows names and numbers only: a [Night] is one game's holes, the people who
// ask for them and what each hole is worth to each of them in each period. What
// makes a hole worth something is somebody else's matter.
package seat
