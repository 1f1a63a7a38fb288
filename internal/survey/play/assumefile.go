package play

import (
	"fmt"
	"io"

	"example.org/rinkpane/internal/measure/form"
)

// maxAssumeBytes is far above any file of assumptions written by hand.
const maxAssumeBytes = 1 << 20

// leastWeight is the smallest news weight that a file may give.
const leastWeight = 1e-6

// ReadAssumptions reads YAML over the shipped assumptions; what the file does
// not name keeps its default. name is used in messages, which give line,
// column and field. An example:
//
//	shares: {rush: 20, zone-play: 30, net-front: 25, face-off: 10, celebration: 10, bench: 5}
//	weights: {celebration: 6}
//	home_share: 0.5
//	home_weight: 2
//	stature: {mean: 1628.5 mm, deviation: 64.2 mm}
//	equipment: 12 cm
func ReadAssumptions(name string, in io.Reader) (Assumptions, error) {
	a := DefaultAssumptions()
	doc, err := form.Read(name, in, maxAssumeBytes)
	if err != nil {
		return a, err
	}
	m := doc.Root().Map("shares", "weights", "home_share", "home_weight", "stature", "equipment")
	perPhase(m.At("shares"), 0, &a.Share)
	perPhase(m.At("weights"), leastWeight, &a.Weight)
	float(m.At("home_share"), 0, 1, &a.HomeShare)
	float(m.At("home_weight"), leastWeight, maxShare, &a.HomeWeight)
	if n := m.At("stature"); n.Present() {
		st := n.Map("mean", "deviation")
		length(st.At("mean"), &a.Stature.Mean)
		length(st.At("deviation"), &a.Stature.SD)
	}
	length(m.At("equipment"), &a.Equipment)
	if err := doc.Err(); err != nil {
		return a, err
	}
	if err := a.Check(); err != nil {
		return a, fmt.Errorf("%s: %w", name, err)
	}
	return a, nil
}

// perPhase reads a number for each phase that the file names.
func perPhase(n form.Node, least float64, to *[phases]float64) {
	if !n.Present() {
		return
	}
	var names []string
	for _, p := range Phases() {
		names = append(names, p.String())
	}
	m := n.Map(names...)
	for p, name := range names {
		float(m.At(name), least, maxShare, &to[p])
	}
}

func float(n form.Node, least, most float64, to *float64) {
	if n.Present() {
		*to = n.Float(least, most)
	}
}

func length(n form.Node, to *float64) {
	if n.Present() {
		*to = n.Length().Metres()
	}
}
