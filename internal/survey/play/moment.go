package play

// Phase is a kind of moment that photographers wait for.
type Phase uint8

// The phases, in the order of files and tables.
const (
	Rush        Phase = iota // the puck is carried over the blue line toward the goal
	ZonePlay                 // passing and battles along the boards, at the points and in the slot
	NetFront                 // a scramble within a stick's reach of the crease
	FaceOff                  // two centres bent over a spot
	Celebration              // the scorer by the boards, team mates closing in
	Bench                    // the line that scored glides past its bench
	phases
)

// Phases lists the phases in their order.
func Phases() []Phase {
	return []Phase{Rush, ZonePlay, NetFront, FaceOff, Celebration, Bench}
}

// String returns the phase's name as it stands in files.
func (p Phase) String() string {
	return [...]string{"rush", "zone-play", "net-front", "face-off", "celebration", "bench"}[p]
}

// Speed returns how fast the subject of a moment of the phase moves, m/s. Own estimates
// between what tracked games show: 4 to 5 m/s on average while in play, from 6.7 m/s on a
// sprint (from memory); a sampled moment itself stands still.
func (p Phase) Speed() float64 { return [...]float64{6.5, 3.5, 1.5, 0.5, 3, 4}[p] }

// People is how many persons each moment holds; their places in the row are
// their roles:
//
//	0        the puck carrier, scorer or centre of the attacking team
//	1..4     that team's other skaters: two forwards, two defenders
//	5..9     the defending team's skaters; 5 is its centre or first checker
//	10, 11   the goalkeepers: of the attacking team, of the defending team
//	12..15   the officials: two referees and two linesmen, where the game says nothing else
const People = 16

// The first place of each role in a moment's row.
const (
	Attackers      = 0
	Defenders      = 5
	AttackerGoalie = 10
	DefenderGoalie = 11
	Officials      = 12
)

// Body radii in metres: half the width of a person in full equipment seen from
// above, arms at the stick. Own estimate, from the shoulder (bideltoid) breadth
// of 0.51 m of ANSUR II's men plus pads; a goalkeeper's leg pads make more.
const (
	SkaterRadius = 0.28
	GoalieRadius = 0.40
)

// Radius returns the body radius, in metres, of the person at place i of a row.
func Radius(i int) float64 {
	if i == AttackerGoalie || i == DefenderGoalie {
		return GoalieRadius
	}
	return SkaterRadius
}

// Person is one player or official on the ice.
type Person struct {
	X, Y    float64 // centre, metres in the rink's frame
	Heading float64 // where the face points, radians counter-clockwise from +x
	Height  float64 // top of the helmet above the ice in this pose, metres
}

// Moment is one instant of a game, as a plain value. Long lists of moments are
// kept as a [Set].
type Moment struct {
	Phase   Phase
	Period  int     // 1, 2 or 3
	Team    int     // the attacking team: 0 home, 1 away
	End     int     // +1: the attack goes toward end B (x > 0), -1: toward end A
	Weight  float64 // news weight, without unit, above 0
	Shot    bool    // the puck leaves a stick toward the goal
	Subject int     // place of the person that the picture is of
	Puck    Puck
	People  [People]Person
}

// Puck is where the puck's centre is, metres in the rink's frame.
type Puck struct{ X, Y, Z float64 }
