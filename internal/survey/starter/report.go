package starter

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Report tells how far an arena has been surveyed and what is missing.
type Report struct {
	Perimeter  unit.Length // of the boards
	Panes      int         // in the schedule
	Glazed     unit.Length // boards behind panes
	Open       unit.Length // boards without panes where none are due: before benches
	Unsurveyed []Stretch   // boards of which nothing is known
	Gaps       []Gap
	Origins    []Origin // where the numbers come from, by part; none where nobody says
	Guesses    []Gap    // guessed numbers, and what that costs
	Doubts     []Doubt  // likely slips of the pen
}

// Stretch is a piece of boards from one station to another along rising
// stations; To may pass the perimeter.
type Stretch struct{ From, To unit.Length }

// Length returns the stretch's length along the boards, in metres.
func (s Stretch) Length() unit.Length { return s.To - s.From }

// Gap is one thing that the survey lacks, and what that costs.
type Gap struct {
	Part  string   // "boards", "panes", "holes", "low-windows", "zones", "light", "rink"
	Field string   // as it stands in the file: "thickness"
	Of    []string // ids of the panes, holes or windows that lack it; empty for the arena's own
	Holes []string // ids of the working holes in panes that lack it
	Costs string   // what cannot be answered, or is answered less well, without it
	Cure  string   // how to find it out
}

// Missing reports what the arena's survey lacks, in the order of the file.
func Missing(a arena.Arena) Report {
	r := Report{Perimeter: a.Rink.Perimeter(), Panes: len(a.Panes)}
	r.boards(a)
	for _, find := range []func(arena.Arena) []Gap{rinkGaps, boardGaps, paneGaps, holeGaps, windowGaps, zoneGaps, lightGaps} {
		r.Gaps = append(r.Gaps, find(a)...)
	}
	r.origins(a)
	r.Doubts = doubts(a)
	return r
}

// Complete reports whether nothing is missing.
func (r Report) Complete() bool { return len(r.Unsurveyed) == 0 && len(r.Gaps) == 0 }

// post is the widest piece of boards without a pane that is no gap in the survey.
const post = glass.WidestPost

// boards adds up the panes and finds the boards between them.
func (r *Report) boards(a arena.Arena) {
	if len(a.Panes) == 0 {
		r.Unsurveyed = []Stretch{{0, r.Perimeter}}
		return
	}
	for i, p := range a.Panes {
		r.Glazed += p.Width
		next := r.Perimeter + a.Panes[0].From
		if i+1 < len(a.Panes) {
			next = a.Panes[i+1].From
		}
		if next-p.To() <= post {
			continue
		}
		for _, s := range outsideBenches(a, Stretch{p.To(), next}) {
			if s.Length() > post {
				r.Unsurveyed = append(r.Unsurveyed, s)
			}
		}
		open := next - p.To()
		for _, s := range outsideBenches(a, Stretch{p.To(), next}) {
			open -= s.Length()
		}
		r.Open += open
	}
}

// outsideBenches returns the parts of a stretch that lie before no bench: only
// there is glass due.
func outsideBenches(a arena.Arena, s Stretch) []Stretch {
	per := a.Rink.Perimeter()
	left := []Stretch{s}
	for _, z := range a.Zones {
		if z.Kind != "bench" {
			continue
		}
		to := z.To
		if to < z.From {
			to += per
		}
		for _, lap := range []unit.Length{-per, 0, per} { // a stretch may pass the perimeter's end
			var rest []Stretch
			for _, p := range left {
				rest = append(rest, p.without(z.From+lap, to+lap)...)
			}
			left = rest
		}
	}
	return left
}

// without returns what is left of a stretch beside from..to.
func (s Stretch) without(from, to unit.Length) []Stretch {
	var out []Stretch
	if end := min(from, s.To); end > s.From {
		out = append(out, Stretch{s.From, end})
	}
	if start := max(to, s.From); start < s.To {
		out = append(out, Stretch{start, s.To})
	}
	return out
}
