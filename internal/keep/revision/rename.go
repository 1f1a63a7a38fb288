package revision

// A Rename says that a version calls a hole To that the version before it called
// From. A version has one for each hole that it renames, all at once, so that two
// holes may change names.
type Rename struct {
	From string `json:"from"`
	To   string `json:"to"`
}

// Renames returns what holes are called in version to that are called otherwise in
// version from; either may be the older one. It reads the history of a document:
// versions with their renames, in any order, all from the older to the newer.
//
// Only renames are followed: a hole that was deleted, and another that was later
// given its id, count as one.
func Renames(versions []Version, from, to int) []Rename {
	old, young := min(from, to), max(from, to)
	byNumber := map[int][]Rename{}
	for _, v := range versions {
		byNumber[v.Number] = v.Renames
	}
	var all []Rename // From in version old, To in the version reached
	for n := old + 1; n <= young; n++ {
		all = then(all, byNumber[n])
	}
	if from > to {
		for i, r := range all {
			all[i] = Rename{r.To, r.From}
		}
	}
	return all
}

// then joins renames with those of the next version.
func then(all, next []Rename) []Rename {
	later := map[string]string{}
	for _, r := range next {
		later[r.From] = r.To
	}
	var out []Rename
	for _, r := range all {
		to, again := later[r.To]
		if !again {
			to = r.To
		}
		delete(later, r.To)
		if r.From != to {
			out = append(out, Rename{r.From, to})
		}
	}
	for _, r := range next {
		if _, new := later[r.From]; new {
			out = append(out, r)
		}
	}
	return out
}
