// Package recap answers: what did the frames of a game say? Which hole each was taken
// through and when, what was used and kept there, what light there was, and what that
// says about the plan.
//
//	frames + clocks + stages + seats --Match--> each with hole, stage, how sure and why
//	   |-- Used      focal lengths, shutter, stop, ISO, keepers with intervals, blur
//	   |-- See       the zone, what the hole let through, blur: by the model's moments
//	   |-- Light     E = C N^2 / (t S), by stage, end and zone, beside the survey
//	   '-- Learn     shares and news weights of the moments, for the next choice
//
// # The model
//
// A camera's clock is off and drifts ([Clock]). A scoreboard tells by how much: with a time
// of day exactly, with the game clock as well as the stops in play allow; a second one of
// the same body tells the drift.
// Times are the rink's wall clock.
//
// Frames come in bursts; one burst, frames of one body within [burstGap] of each other, is
// one picture taken. Keepers are bursts with a frame rated one star or more, or as asked.
//
// A frame does not tell where it was aimed. [Outlook] takes the model's moments as the hole
// sees them, each as likely as it is worth, and away about as far as the focal length
// frames a player; the likeliest zone, the hole's transmission at those pans and the
// subject's speed across the view follow.
//
// # What one game may move
//
// The shares of the moments have a prior of [priorBursts] bursts spread as the plan assumes
// (a Dirichlet distribution), the keeping of each kind of moment one of [priorKept] bursts:
// a game of some 300 bursts moves either by about a tenth of what it alone would say.
//
// # Limits
//
// An exposure says what light a photographer exposed for, in the part of the ice that was
// in the picture; flash, backlight and taste move it. A frame does not tell its phase of
// play: shares are learnt from which holes were used more than the plan expects.
package recap
