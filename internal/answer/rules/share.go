package rules

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// parseShare reads a part of a whole: "1/3" or "0.25"; above 0, at most 1.
func parseShare(s string) (float64, error) {
	top, bottom, fraction := strings.Cut(s, "/")
	v, err := strconv.ParseFloat(strings.TrimSpace(top), 64)
	if err == nil && fraction {
		var d float64
		d, err = strconv.ParseFloat(strings.TrimSpace(bottom), 64)
		v /= d
	}
	if err != nil || math.IsNaN(v) || v <= 0 || v > 1 {
		return 0, fmt.Errorf(`%.40q: write a part of the whole, such as "1/3" or "0.25"`, s)
	}
	return v, nil
}
