package cut

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// ListRow is one hole of the cut list.
type ListRow struct {
	Job     Job
	Refused []string // why there is no drawing; Job then holds only hole and pane
}

// Group is drilled panes that can stand in for one another: the same size,
// thickness, material and bend with the same hole at the same place to a
// millimetre; a flat pane with one hole may be turned round.
type Group struct {
	Holes  []string
	Pane   string // what they are, in words
	Count  int    // of panes
	Spares int    // drilled panes to keep
}

// List is the cut list over an arena.
type List struct {
	Rows       []ListRow
	Groups     []Group
	Holes      int // with a drawing
	Covers     int
	Spares     int // drilled panes, all groups together
	CoverSpare int
	Mass       float64 // of all drilled panes, kg
	Options    SpareOptions
}

// List gathers the cut list of all working holes. Refused holes stand in it
// with their reasons. A pane with several holes is one pane.
func (p Plan) List(o Options, s SpareOptions) (List, error) {
	l := List{Options: s}
	var panes []string
	jobs := make(map[string][]Job)
	for _, h := range p.Arena.Working() {
		row, err := p.listRow(h, o)
		if err != nil {
			return List{}, err
		}
		l.Rows = append(l.Rows, row)
		if len(row.Refused) > 0 {
			continue
		}
		l.Holes++
		l.Covers++
		if _, met := jobs[h.Pane]; !met {
			panes = append(panes, h.Pane)
			l.Mass += row.Job.Mass
		}
		jobs[h.Pane] = append(jobs[h.Pane], row.Job)
	}
	index := make(map[string]int)
	for _, id := range panes {
		l.add(index, jobs[id], p.Arena.Units)
	}
	return l, l.spares()
}

// add counts one pane, told by the jobs of its holes, to its group.
func (l *List) add(index map[string]int, jobs []Job, sys unit.System) {
	kind := kindOf(jobs)
	i, ok := index[kind]
	if !ok {
		i = len(l.Groups)
		index[kind] = i
		l.Groups = append(l.Groups, Group{Pane: describe(jobs, sys)})
	}
	for _, j := range jobs {
		l.Groups[i].Holes = append(l.Groups[i].Holes, j.Hole.ID)
	}
	l.Groups[i].Count++
}

func (p Plan) listRow(h glass.Hole, o Options) (ListRow, error) {
	j, err := p.Job(h, o)
	var refusal *Refusal
	if errors.As(err, &refusal) {
		pane, _ := p.Arena.Pane(h.Pane)
		return ListRow{Job: Job{Hole: h, Pane: pane}, Refused: refusal.Reasons}, nil
	}
	if err != nil {
		return ListRow{}, err
	}
	return ListRow{Job: j}, nil
}

func (l *List) spares() error {
	for i := range l.Groups {
		n, err := Spares(l.Groups[i].Count, l.Options.BreakRate, l.Options.Certainty)
		if err != nil {
			return fmt.Errorf("spares: %w", err)
		}
		l.Groups[i].Spares = n
		l.Spares += n
	}
	n, err := Spares(l.Covers, l.Options.CoverRate, l.Options.Certainty)
	l.CoverSpare = n
	return err
}

// kindOf is equal for panes that can stand in for one another: sizes to a
// millimetre, holes from left to right.
func kindOf(jobs []Job) string {
	f, j := jobs[0].Face, jobs[0]
	holes := make([]string, len(jobs))
	for i, j := range jobs {
		left := j.Face.Left
		if len(jobs) == 1 && !f.Curved { // a flat pane can be turned round
			left = min(left, j.Face.Right())
		}
		holes[i] = fmt.Sprintf("%05.0f %.0f %.0f %.0f %.1f", left.Millimetres(), j.Face.Up.Millimetres(),
			j.Hole.Size.W.Millimetres(), j.Hole.Size.H.Millimetres(), j.Corner.Millimetres())
	}
	slices.Sort(holes)
	return fmt.Sprintf("%s %.0f %.0f %.0f %t %.0f: ", j.Material.Name, j.Thick.Millimetres()*10,
		f.Width.Millimetres(), f.Height.Millimetres(), f.Curved, f.Radius.Millimetres()) + strings.Join(holes, ", ")
}

// describe says in words what a drilled pane is.
func describe(jobs []Job, sys unit.System) string {
	j := jobs[0]
	parts := []string{
		string(j.Material.Name), j.Thick.FormatFine(sys),
		j.Face.Width.FormatFine(sys) + " x " + j.Face.Height.FormatFine(sys),
	}
	if j.Face.Curved {
		parts = append(parts, "curved")
	}
	lefts := make([]string, len(jobs))
	for i, j := range jobs {
		lefts[i] = j.Face.Left.FormatFine(sys)
	}
	word := "hole "
	if len(jobs) > 1 {
		word = "holes "
	}
	return strings.Join(append(parts, word+strings.Join(lefts, " and ")+" from the left"), ", ")
}
