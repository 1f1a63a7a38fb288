package seat

import "math"

// match is the assignment problem of one period: each hole to one person at most,
// each person to one hole at most, most points in all. It is solved by shortest
// augmenting paths (the Hungarian method; Kuhn 1955, Edmonds and Karp 1972) in
// whole numbers, and keeps the prices at which nobody would rather have another
// seat: the relaxation of an assignment is whole, so prices prove it.
type match struct {
	people, holes int
	// Columns are the people, then for each hole an empty chair that only it may
	// have. Column 0 and row 0 are where a path begins.
	row, way []int // by column: the hole seated there, the column before it
	u, v     []int64
	slack    []int64
	used     []bool
}

func newMatch(people, holes int) *match {
	n := people + holes + 1
	return &match{people: people, holes: holes, row: make([]int, n), way: make([]int, n), u: make([]int64, holes+1), v: make([]int64, n), slack: make([]int64, n), used: make([]bool, n)}
}

// solve writes who has each hole into who, none for nobody, and the price of each
// hole, 0 or more. Points below zero are never taken.
func (m *match) solve(points func(who, hole int) int64, who []int, prices []int64) {
	clear(m.row)
	clear(m.u)
	clear(m.v)
	for h := 1; h <= m.holes; h++ {
		m.seat(h, points)
	}
	for h := range m.holes {
		who[h], prices[h] = none, max(0, -m.u[h+1])
	}
	for j := 1; j <= m.people; j++ {
		if m.row[j] > 0 {
			who[m.row[j]-1] = j - 1
		}
	}
}

// cost is what a column costs a hole; an empty chair costs nothing.
func (m *match) cost(hole, column int, points func(who, hole int) int64) int64 {
	if column <= m.people {
		return -points(column-1, hole-1)
	}
	if column-m.people == hole {
		return 0
	}
	return -barred
}

// seat finds the cheapest way to seat one more hole and turns it.
func (m *match) seat(hole int, points func(who, hole int) int64) {
	m.row[0] = hole
	clear(m.used)
	for j := range m.slack {
		m.slack[j] = math.MaxInt64
	}
	j0 := 0
	for {
		m.used[j0] = true
		i0, j1, delta := m.row[j0], 0, int64(math.MaxInt64)
		for j := 1; j < len(m.row); j++ {
			if m.used[j] {
				continue
			}
			if c := m.cost(i0, j, points) - m.u[i0] - m.v[j]; c < m.slack[j] {
				m.slack[j], m.way[j] = c, j0
			}
			if m.slack[j] < delta {
				delta, j1 = m.slack[j], j
			}
		}
		for j := range m.row {
			if m.used[j] {
				m.u[m.row[j]] += delta
				m.v[j] -= delta
			} else {
				m.slack[j] -= delta
			}
		}
		if j0 = j1; m.row[j0] == 0 {
			break
		}
	}
	for j0 != 0 {
		m.row[j0] = m.row[m.way[j0]]
		j0 = m.way[j0]
	}
}
