package play

// Set is many moments laid out for scoring: one array for each quantity, all
// persons of a moment side by side, so that one pass over a hole's moments
// reads memory in order. A moment takes about 290 bytes.
//
// Treat a Set as read only once made; it may then be shared by goroutines.
type Set struct {
	Layout Layout
	crew   crew // who the officials are; zero: the usual four

	Phase   []Phase
	Period  []uint8
	Team    []uint8
	End     []int8
	Shot    []bool
	Subject []uint8
	Weight  []float32 // without unit, above 0; they need not sum to anything
	PuckX   []float32 // metres, rink frame
	PuckY   []float32 // metres
	PuckZ   []float32 // metres, centre above the ice

	// The persons: that of place p in moment m stands at index m*People + p.
	X, Y    []float32 // metres, rink frame
	Heading []float32 // radians counter-clockwise from +x
	Height  []float32 // top of the helmet above the ice, metres
}

// NewSet returns a set of n moments, all zero.
func NewSet(lay Layout, n int) *Set {
	return &Set{
		Layout: lay,
		Phase:  make([]Phase, n), Period: make([]uint8, n), Team: make([]uint8, n),
		End: make([]int8, n), Shot: make([]bool, n), Subject: make([]uint8, n),
		Weight: make([]float32, n),
		PuckX:  make([]float32, n), PuckY: make([]float32, n), PuckZ: make([]float32, n),
		X: make([]float32, n*People), Y: make([]float32, n*People),
		Heading: make([]float32, n*People), Height: make([]float32, n*People),
	}
}

// Len returns how many moments the set holds.
func (s *Set) Len() int { return len(s.Phase) }

// At returns moment i as a plain value.
func (s *Set) At(i int) Moment {
	m := Moment{
		Phase: s.Phase[i], Period: int(s.Period[i]), Team: int(s.Team[i]), End: int(s.End[i]),
		Weight: float64(s.Weight[i]), Shot: s.Shot[i], Subject: int(s.Subject[i]),
		Puck: Puck{float64(s.PuckX[i]), float64(s.PuckY[i]), float64(s.PuckZ[i])},
	}
	for p := range m.People {
		k := i*People + p
		m.People[p] = Person{
			X: float64(s.X[k]), Y: float64(s.Y[k]),
			Heading: float64(s.Heading[k]), Height: float64(s.Height[k]),
		}
	}
	return m
}

// Put writes moment m at place i.
func (s *Set) Put(i int, m Moment) {
	s.Phase[i], s.Period[i], s.Team[i] = m.Phase, uint8(m.Period), uint8(m.Team)
	s.End[i], s.Shot[i], s.Subject[i] = int8(m.End), m.Shot, uint8(m.Subject)
	s.Weight[i] = float32(m.Weight)
	s.PuckX[i], s.PuckY[i], s.PuckZ[i] = float32(m.Puck.X), float32(m.Puck.Y), float32(m.Puck.Z)
	for p, q := range m.People {
		k := i*People + p
		s.X[k], s.Y[k] = float32(q.X), float32(q.Y)
		s.Heading[k], s.Height[k] = float32(q.Heading), float32(q.Height)
	}
}
