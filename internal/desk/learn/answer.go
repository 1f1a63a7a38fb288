package learn

import (
	"context"
	"errors"
	"fmt"
	"math"
	"net/http"
	"slices"
	"time"

	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/words"
)

// solved is what marks say, or why they say nothing yet.
type solved struct {
	Problem string // ""
	Waits   bool   // nothing is wrong, but too little is marked
	Passed  []string
	Place   string
	Height  string
	Sure    string
	Plan    string // which hole of the plan is meant, and how far off it is
	Other   string // the hole that is meant, where it is not the one that was picked; ""
	Take    string // what a press would do
	Meant   string // what must be said before it does, in the field "meant"; "" of the hole that was picked
	Ask     bool   // it was pressed, and that was not said
	Agrees  bool   // with the plan
	Cameras []cameraRow
	Notes   []string
	Help    *helpRow
	Sketch  sketch
	answer  resect.Answer
	marked  []resect.Frame
}

// cameraRow is the camera of a frame, and its marks.
type cameraRow struct {
	Frame, Focal, Pan, Tilt, Roll, Behind string
	Marks                                 []markRow
}

// markRow is a mark, and how well it fits.
type markRow struct {
	Frame, Landmark, Words string
	OffBy, Says            string
	Fits                   bool
}

// helpRow is the landmark that would help most, and where it is expected.
type helpRow struct {
	Frame, Landmark, Words, Sure string
	X, Y                         float64 // px
}

// mostSolving is how long marks are solved: those of one hole take a second at most.
const mostSolving = 10 * time.Second

// solveMarks solves the frames that have marks enough; those with fewer wait.
func solveMarks(ctx context.Context, a arena.Arena, s sent, sys unit.System) *solved {
	out := &solved{}
	var err error
	if out.marked, err = s.frames(); err != nil {
		out.Problem, out.Waits = whyNot(err), s.Text == ""
		return out
	}
	var ready []resect.Frame
	for _, f := range out.marked {
		if len(f.Marks) >= resect.LeastMarks {
			ready = append(ready, f)
		} else if len(out.marked) > 1 {
			out.Passed = append(out.Passed, fmt.Sprintf("%s waits for %d more marks.", f.Name, resect.LeastMarks-len(f.Marks)))
		}
	}
	if len(ready) == 0 {
		ready = out.marked[:1]
		out.Waits = true
	}
	ctx, stop := context.WithTimeout(ctx, mostSolving)
	defer stop()
	out.answer, err = resect.Solve(ctx, a, ready)
	switch {
	case errors.Is(err, context.DeadlineExceeded):
		out.Problem = fmt.Sprintf("These marks take more than %.0f seconds. Solve fewer frames at once, or have rinkpane resect solve them.", mostSolving.Seconds())
		return out
	case err != nil:
		out.Problem = whyNot(err)
		return out
	}
	out.tell(a, from(a, s.Hole), s.Hole, sys)
	return out
}

// newHole is the word by which a form says that a hole is to be added.
const newHole = "new"

// whyNot says why there is no answer, with the line of the marks where it is known.
func whyNot(err error) string {
	var at *form.Problem
	if errors.As(err, &at) && at.Line > 0 {
		return fmt.Sprintf("Line %d of the marks: %s", at.Line, shell.WhyNot(err))
	}
	return shell.WhyNot(err)
}

func (s *solved) status() int {
	if s.Problem == "" || s.Waits {
		return http.StatusOK
	}
	return http.StatusUnprocessableEntity
}

// tell puts an answer in words.
func (s *solved) tell(a arena.Arena, b beholder, picked string, sys unit.System) {
	r := s.answer
	known := resect.Landmarks(a)
	name := func(id string) string {
		k := slices.IndexFunc(known, func(l resect.Landmark) bool { return l.Name == id })
		if k < 0 {
			return id
		}
		return b.words(known[k], known)
	}
	s.Place, s.Height = words.NearPlace(a.PlaceOf(r.Station), sys), words.Near(r.Height, sys)
	s.Sure = fmt.Sprintf("%s along the boards, %s in height", r.Ellipse.Along().Format(sys), r.Ellipse.Up().Format(sys))
	s.Plan = fmt.Sprintf("No hole of the plan stands within %s of there.", resect.HoleNear.Format(sys))
	s.Take, s.Meant, s.Agrees = "Add a hole there", newHole, r.InOpening()
	if h, ok := r.Near.Get(); ok {
		s.Plan = fmt.Sprintf("Hole %s stands %s in truth, seen from behind the glass.", h.ID, moved(r, sys))
		if s.Agrees {
			s.Plan = fmt.Sprintf("That lies in the opening of hole %s, %s of its middle, seen from behind the glass: a lens is seldom held in the middle, so nothing speaks against the plan.", h.ID, moved(r, sys))
		}
		s.Take, s.Meant = "Move hole "+h.ID+" there", ""
		if h.ID != picked {
			s.Other, s.Meant = h.ID, h.ID
		}
	}
	for _, v := range r.Frames {
		row := cameraRow{Frame: v.Frame, Focal: fmt.Sprintf("%.0f mm", v.Focal.Millimetres()), Pan: degrees(v.Pan), Tilt: degrees(v.Tilt), Roll: degrees(v.Roll), Behind: words.Near(v.Behind, sys)}
		if v.FocalSpread > 0 {
			row.Focal += fmt.Sprintf(" ± %.1f mm", 2*v.FocalSpread.Millimetres())
		}
		for _, m := range v.Marks {
			mark := markRow{Frame: v.Frame, Landmark: m.Landmark, Words: name(m.Landmark), OffBy: fmt.Sprintf("%.1f px", m.Px), Fits: m.Used}
			if !m.Used {
				mark.Says = "does not fit: left out"
				if m.Like != "" {
					mark.Says += "; this looks like: " + name(m.Like)
				}
			}
			row.Marks = append(row.Marks, mark)
		}
		s.Cameras = append(s.Cameras, row)
	}
	further := r.Help
	r.Help = nil // a row of its own says it
	s.Notes = words.ResectNotes(r, sys)
	if further != nil {
		s.Help = &helpRow{further.Frame, further.Landmark, name(further.Landmark), further.Major.Format(sys), further.Seen[0], further.Seen[1]}
	}
	s.Sketch = sketched(r, sys)
}

// moved says by how much a hole stands elsewhere than in the plan, seen from behind the
// glass, where stations rise to the right.
func moved(r resect.Answer, sys unit.System) string {
	side, up := "to the right", "higher"
	if r.Off.Station < 0 {
		side = "to the left"
	}
	if r.Off.Height < 0 {
		up = "lower"
	}
	return fmt.Sprintf("%s %s and %s %s", max(r.Off.Station, -r.Off.Station).Format(sys), side, max(r.Off.Height, -r.Off.Height).Format(sys), up)
}

func degrees(a unit.Angle) string { return fmt.Sprintf("%.1f°", a.Degrees()) }

// liveMark is a mark for the page's module: with where its landmark is seen.
type liveMark struct {
	Frame    string    `json:"frame"`
	Landmark string    `json:"landmark"`
	X        float64   `json:"x"`
	Y        float64   `json:"y"`
	Seen     []float64 `json:"seen,omitempty"`
	Fits     bool      `json:"fits"`
	Off      float64   `json:"off"` // px
}

func (s *solved) live() []liveMark {
	solved := map[[2]string]resect.Residual{} // by frame and landmark
	for _, v := range s.answer.Frames {
		for _, r := range v.Marks {
			solved[[2]string{v.Frame, r.Landmark}] = r
		}
	}
	out := []liveMark{}
	for _, f := range s.marked {
		for _, m := range f.Marks {
			one := liveMark{Frame: f.Name, Landmark: m.Landmark, X: m.X, Y: m.Y, Fits: true}
			if r, ok := solved[[2]string{f.Name, m.Landmark}]; ok {
				one.Seen, one.Fits, one.Off = r.Seen[:], r.Used, math.Round(100*r.Px)/100
			}
			out = append(out, one)
		}
	}
	return out
}
