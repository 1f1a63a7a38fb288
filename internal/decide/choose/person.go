package choose

import (
	"cmp"
	"fmt"
	"slices"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Posture is how a photographer works behind the boards.
type Posture string

// The postures. The zero value is standing.
const (
	Stands  Posture = "standing"
	Sits    Posture = "sitting"    // on a bench or a stool
	InChair Posture = "wheelchair" // or a chair of its height
)

// Person is who works at the holes.
type Person struct {
	Posture Posture
	Eye     unit.Maybe[unit.Length] // above the floor; unknown: of the posture
	Floor   unit.Maybe[unit.Length] // behind the boards, above the ice; unknown: the arena's
	LeftEye bool                    // at the finder; else the right one
	Elbow   unit.Length             // room along the boards that each person needs; 0: not asked about
}

// stance is what a posture asks of a hole, in metres.
type stance struct {
	eye       unit.Length // above the floor
	low, high unit.Length // how far below and above that eye one may bring it and still work
}

// stances: the eye heights are means of women and men.
//
//	standing    1.575 m barefoot, 25 mm of shoe (survey of US Army personnel 1988: men 1.634 m, women 1.516 m; from memory)
//	sitting     0.765 m above the seat (the same survey: 0.792 and 0.739 m; from memory), a seat of 0.44 m
//	wheelchair  middle of 43 to 51 in (ADA Accessibility Guidelines 1991, figure A3; from memory)
//
// How far one stoops or stretches for a whole game is own choice.
var stances = map[Posture]stance{
	Stands:  {1.60 * unit.Metre, 250 * unit.Millimetre, 40 * unit.Millimetre},
	Sits:    {1.205 * unit.Metre, 80 * unit.Millimetre, 40 * unit.Millimetre},
	InChair: {47 * unit.Inch, 100 * unit.Millimetre, 50 * unit.Millimetre},
}

const (
	// finderAbove is how far a finder's eye stands above the lens's axis: common
	// practice, no published source.
	finderAbove = 60 * unit.Millimetre
	// headBeside is how far the head's middle stands beside the eye at the finder:
	// half of 63 mm between the pupils (the survey of 1988, from memory).
	headBeside = 32 * unit.Millimetre
)

// ParseEye reads a posture or an eye height above the floor.
func ParseEye(s string) (Person, error) {
	if _, ok := stances[Posture(s)]; ok {
		return Person{Posture: Posture(s)}, nil
	}
	eye, err := unit.ParseLength(s)
	if err != nil || eye < leastEye || eye > mostEye {
		return Person{}, fmt.Errorf("%s: write %s, %s, %s, or an eye height above the floor such as 5 ft 3 in, 0.6 to 2.2 m", form.Quote(s), Stands, Sits, InChair)
	}
	return Person{Eye: unit.Known(eye)}, nil
}

// ParseElbow reads the room along the boards that each person needs.
func ParseElbow(s string) (unit.Length, error) {
	room, err := unit.ParseLength(s)
	if err == nil {
		err = CheckElbow(room)
	}
	return room, err
}

// CheckElbow refuses room that nobody needs.
func CheckElbow(room unit.Length) error {
	if room < 0 || room > 3*unit.Metre {
		return fmt.Errorf("%g m: write a length from 0 to 3 m", room.Metres())
	}
	return nil
}

// Eye heights above the floor that people have, sitting or standing.
const (
	leastEye = 0.6 * unit.Metre
	mostEye  = 2.2 * unit.Metre
)

// Working is at what heights of hole centres, above the ice, a person works.
type Working struct {
	Person
	Eye          unit.Length // above the floor
	Floor        unit.Length // above the ice
	FloorAssumed bool        // nobody surveyed it
	Best         unit.Length // the lens's axis at ease
	Low, High    unit.Length
}

// At returns where the person works in an arena.
func (p Person) At(a arena.Arena) Working {
	if p.Posture == "" {
		p.Posture = Stands
	}
	s := stances[p.Posture]
	w := Working{Person: p, Eye: p.Eye.Or(s.eye)}
	floor, known := p.Floor.Get()
	if !known {
		floor, known = a.Boards.Floor.Get()
	}
	w.Floor, w.FloorAssumed = floor, !known
	w.Best = w.Floor + w.Eye - finderAbove
	w.Low, w.High = w.Best-s.low, w.Best+s.high
	return w
}

// Asked reports whether anybody said who works at the holes.
func (p Person) Asked() bool { return p.Posture != "" || p.Eye != unit.Maybe[unit.Length]{} }

// Works reports whether the person can work at a hole of this height.
func (w Working) Works(height unit.Length) bool {
	return height >= w.Low-slackLength && height <= w.High+slackLength
}

// heights are those that are tried for a person: at ease, and the ends of what can
// be worked.
func (w Working) heights() []unit.Length { return []unit.Length{w.Low, w.Best, w.High} }

// elbowRoom names the wish for room along the boards.
const elbowRoom = "elbow room"

// Crowds reports whether a person at a station has a neighbour's seat within the
// elbows: a bench, a penalty box, a scorekeeper's or broadcaster's place.
func (p Person) Crowds(a arena.Arena, station unit.Length) bool {
	head := station - headBeside // the right eye's head stands to the camera's left
	if p.LeftEye {
		head = station + headBeside
	}
	return p.Elbow > 0 && slices.ContainsFunc(a.Zones, func(z arena.Zone) bool {
		if !slices.Contains([]string{"bench", "penalty-box", "scorekeeper", "broadcast"}, z.Kind) {
			return false
		}
		from := z.From - p.Elbow/2
		return a.Rink.Wrap(head-from) < a.Rink.Wrap(z.To-z.From)+p.Elbow
	})
}

// eased moves the holes of a set, where several heights were tried, to the height
// nearest to where a person works at ease, as long as the set stays legal and loses
// no more in all than half the 95 % interval of its value: a height is never taken
// for being the highest alone.
func (s *Study) eased(q *Problem, set []int) []int {
	best := s.opt.Person.At(s.arena).Best
	away := func(i int) unit.Length { return max(s.places[i].Hole.Height-best, best-s.places[i].Hole.Height) }
	if !slices.ContainsFunc(set, func(i int) bool { return s.places[i].Lifted }) {
		return set
	}
	least, now := s.solver.Value(set)-s.solver.margin(set, nil), set
	for _, i := range set {
		own := s.places[i]
		if !own.Lifted || slices.Contains(q.In, i) {
			continue
		}
		var others []int
		for j := range s.open {
			if p := s.places[j]; p.Hole.Pane == own.Hole.Pane && p.Hole.Station == own.Hole.Station && away(j) < away(i) {
				others = append(others, j)
			}
		}
		slices.SortFunc(others, func(a, b int) int { return cmp.Compare(away(a), away(b)) })
		for _, j := range others {
			next := append(slices.DeleteFunc(slices.Clone(now), func(k int) bool { return k == i }), j)
			slices.Sort(next)
			if q.Allows(next) && s.solver.Value(next) >= least {
				now = next
				break
			}
		}
	}
	return now
}
