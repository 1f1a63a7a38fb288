package cut

import (
	"cmp"
	"slices"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/survey/glass"
)

// paneJob is a pane with every working hole of it, from its left edge on.
type paneJob struct {
	Job            // of the hole that was asked for: which pane it is, of what
	jobs  []Job    // of the holes that are drawn
	spots []onPane // every hole
}

// onPane is a hole where it stands on its pane.
type onPane struct {
	glass.Neighbour
	work work
	why  []say.Sentence // of one that is not drawn
}

// work is what is to be done about a hole or a piece.
type work string

const (
	toMake   work = "make"
	exists   work = "exists"
	notDrawn work = "not drawn"
)

// workOf tells what exists from what is to be made.
func workOf(there bool) work {
	if there {
		return exists
	}
	return toMake
}

// paneJob gathers the pane of a job.
func (p ShopOrder) paneJob(j Job) paneJob {
	out := paneJob{Job: j}
	own := glass.Neighbour{Hole: j.Hole, Left: j.Face.Left, Up: j.Face.Up, Corner: j.Corner}
	for _, k := range append([]glass.Neighbour{own}, j.Neighbours...) {
		job, err := j, error(nil)
		if k.Hole.ID != j.Hole.ID {
			job, err = p.Job(k.Hole, j.Options)
		}
		spot := onPane{Neighbour: k, work: notDrawn}
		if no, refused := err.(*Refusal); refused {
			spot.why = no.Reasons
		} else {
			spot.work = workOf(job.Exists())
			out.jobs = append(out.jobs, job)
		}
		out.spots = append(out.spots, spot)
	}
	slices.SortStableFunc(out.jobs, func(a, b Job) int { return cmp.Compare(a.Face.Left, b.Face.Left) })
	slices.SortStableFunc(out.spots, func(a, b onPane) int { return cmp.Compare(a.Left, b.Left) })
	return out
}

// route is the way of the pane: that of the holes that are to be made in it.
func (j paneJob) route() Route {
	for _, k := range j.jobs {
		if !k.Exists() {
			return k.Route
		}
	}
	return Standing
}

// class is the look of a hole's outline on its pane's sheet: what is to be made thick,
// what exists thin, as ISO 7518 has it for rebuilding (from memory), the rest dashed.
func (w work) class() string {
	return map[work]string{toMake: "cut", exists: "exists", notDrawn: "beside"}[w]
}

// layer is where a hole's outline stands: nothing that exists, or may not be made, is on
// the layer that a machine cuts.
func (w work) layer() string {
	if w == toMake {
		return sheet.LayerCut
	}
	return sheet.LayerDatum
}

// words says what a hole is, beside its name.
func (w work) words() string {
	return map[work]string{toMake: "to be made", exists: "exists", notDrawn: "not drawn"}[w]
}
