package choose

import "math"

// sortKey packs a score and a candidate into one number whose rising order is
// falling score, then rising candidate. Scores in [0, 1] have positive float
// bits, whose order is the scores' own.
func sortKey(c float32, i int) uint64 {
	return uint64(^math.Float32bits(c))<<16 | uint64(i)
}
