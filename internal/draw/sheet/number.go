package sheet

import (
	"math"
	"strconv"
)

// appendMM writes a number of millimetres rounded to 0.01, the shortest way:
// no trailing zeros, no minus before zero.
func appendMM(b []byte, v float64) []byte { return appendRounded(b, v, 2) }

// appendRounded writes v rounded to a number of decimals, the shortest way.
// A number that is not finite is written as 0, so that no file is broken by it.
func appendRounded(b []byte, v float64, decimals int) []byte {
	p := math.Pow10(decimals)
	v = math.Round(v*p) / p
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return append(b, '0')
	}
	start := len(b)
	b = strconv.AppendFloat(b, v, 'f', decimals, 64)
	end := len(b)
	for end > start && b[end-1] == '0' && decimals > 0 {
		end--
	}
	if b[end-1] == '.' {
		end--
	}
	return b[:end]
}
