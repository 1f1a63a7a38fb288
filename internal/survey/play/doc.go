// Package play answers: what happens in front of the glass? It makes moments
// of a game, each an instant with the puck, ten skaters, two goalkeepers and
// four officials in place, one of them the subject of the picture, and a news
// weight that says what such a picture is worth.
//
// Moments come from a seeded sampler ([Sample]) or are built round puck places
// of the user's own games ([ReadEvents], [Around]).
//
// # The model
//
// Six phases, each with roles, spacing and poses of its own (see the comment
// at each phase's function, and docs/moments.md for a picture of each):
//
//	rush         carrier over the blue line, two defenders backing off
//	zone-play    five attackers round a box; corner, half wall, point, slot, behind the net
//	net-front    scramble at the crease, goalkeeper down
//	face-off     two centres bent over one of nine spots
//	celebration  the scorer by the boards, team mates closing in
//	bench        the line that scored glides past its bench
//
// Everything is placed in the frame of the attack, in which the attacked goal
// stands at +x, and turned by half a turn for end A:
//
//	y
//	^   ______________________________
//	|  /      |    |    |      o      \
//	| |       |    |    |    x   G|=   |  attack -->  +x
//	|  \______|____|____|_____________/
//	+--------------------------------------> x
//
// A person's place is a bell curve round the place of the role. A draw off the
// ice, in a goal, or on somebody else is drawn again, wider each time; after
// that the nearest free place is taken. A person is a disc of [SkaterRadius]
// or [GoalieRadius]; no two discs overlap and none touches the boards.
//
// Teams change ends each period: the home team attacks end B in periods 1 and
// 3, where nobody says otherwise ([Ends]).
//
// # Assumptions
//
// Shares of the phases, news weights, spacing and poses are own judgement,
// stated where they stand and settable in YAML ([ReadAssumptions]). Heights
// come from ANSUR II's men (mean 1.756 m, deviation 0.069 m) plus skates and
// helmet, times the pose.
//
// # Limits
//
// Moments are independent instants, not a game's course: no skater has a
// speed, no puck flies. Full strength only: five skaters a side and both
// goalkeepers. Coaches, players on the bench and the crowd are left out.
//
// The same seed gives the same moments to the last bit on one kind of machine,
// however many cores work on them.
package play
