package form

import (
	"fmt"
	"slices"
	"strings"
)

// Nearest returns the name of known that is nearest to s by edit distance
// (letter case left out), or "" when none is near enough to be meant: more than
// a third of the longer name would have to change.
func Nearest(s string, known []string) string {
	best, least := "", 0
	for _, k := range known {
		longest := max(len(s), len(k))
		d := editDistance(strings.ToLower(s), strings.ToLower(k))
		if 3*d <= longest && (best == "" || d < least) {
			best, least = k, d
		}
	}
	return best
}

// mostNamed is how many names a message lists.
const mostNamed = 12

// Known reports a name that is not among those there are, what they are of, and the
// nearest or the first of them: no hole is called "B11"; did you mean B1?
func Known(what, name string, known []string) error {
	if slices.Contains(known, name) {
		return nil
	}
	cure := "known: " + Choices(known[:min(len(known), mostNamed)])
	if near := Nearest(name, known); near != "" {
		cure = "did you mean " + near + "?"
	} else if len(known) > mostNamed {
		cure = fmt.Sprintf("known: %s and %d more", strings.Join(known[:mostNamed], ", "), len(known)-mostNamed)
	}
	return fmt.Errorf("no %s is called %s; %s", what, Quote(name), cure)
}

// compareMost is the longest name that is compared, in bytes: a hostile name of
// megabytes must not cost time.
const compareMost = 100

// editDistance counts the letters to insert, drop or change to turn a into b.
func editDistance(a, b string) int {
	if len(a) > compareMost || len(b) > compareMost {
		return max(len(a), len(b))
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}

// Choices returns "a, b or c" for a message that names what is allowed.
func Choices(names []string) string {
	switch len(names) {
	case 0:
		return "nothing"
	case 1:
		return names[0]
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " or " + names[last]
}
