package learn

import (
	"fmt"
	"html/template"
	"net/http"
	"strconv"

	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/keep/frames"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// framePage is where somebody marks places of the rink in frames of one hole.
type framePage struct {
	shell.Frame
	Way     string
	Address shell.Address
	Name    string // of the arena
	Base    int
	Holes   []shell.Choice
	Hole    string
	Groups  []spotGroup
	Map     template.HTML
	Wide    float64 // of the map, millimetres
	Sent    sent
	Example bool
	Solved  *solved // nil while nothing is marked
	arena   arena.Arena
	units   unit.System
}

// To returns an address of the page.
func (p framePage) To(below string) string { return p.Address.Beside("/frame"+below, "hole", p.Hole) }

// Picture is the address of the invented frame.
func (p framePage) Picture() string { return p.To("/example.jpg") }

// ShowExample is the address of the page with the invented frame marked.
func (p framePage) ShowExample() string {
	return p.Address.Beside("/frame", "hole", p.Hole, "example", "1")
}

// Limits says how many marks and frames are taken, and how long they are solved.
func (framePage) Limits() string {
	return fmt.Sprintf("Taken are %d to %d marks in a frame, and up to %d frames of one hole; they are solved for %.0f seconds at most.",
		resect.LeastMarks, resect.MostMarks, resect.MostFrames, mostSolving.Seconds())
}

func (d area) framePage(w http.ResponseWriter, r *http.Request) error {
	page, err := d.openFrame(r, r.FormValue("hole"))
	if err != nil {
		return err
	}
	page.Sent = sent{Shots: []shot{{Sensor: usualSensor}}}
	if r.FormValue("example") != "" {
		e, err := exampleOf(page.arena, page.Hole)
		if err != nil {
			return shell.Because(http.StatusUnprocessableEntity, "No frame can be invented for this hole.", err)
		}
		page.Example, page.Sent = true, e.sent(page.Hole)
		page.solve(r)
	}
	return d.Page(w, r, http.StatusOK, "frame.tmpl", page)
}

// openFrame opens the page of an arena's newest version for one of its holes, the first
// when none is named.
func (d area) openFrame(r *http.Request, hole string) (framePage, error) {
	b, at, err := d.Newest(r)
	if err != nil {
		return framePage{}, err
	}
	return d.frameOf(r, b, at, hole)
}

func (d area) frameOf(r *http.Request, b shelf.Book, at shell.Address, hole string) (framePage, error) {
	a, err := b.Arena.Check()
	if err != nil {
		return framePage{}, err
	}
	if _, ok := a.Hole(hole); !ok {
		if hole != "" {
			return framePage{}, shell.Refuse(http.StatusNotFound, "This arena has no hole of that name.", "Pick one of those on its plan.")
		}
		if len(a.Holes) > 0 {
			hole = a.Holes[0].ID
		}
	}
	page := framePage{Frame: d.Frame(r, "Where a hole stands, from a frame"), Way: "survey", Address: at.Shared(), Name: b.Document.Name, Base: b.Version.Number,
		Hole: hole, Groups: groups(a, from(a, hole)), Map: shell.Still(a), arena: a, units: at.Units(a.Units)}
	page.Wide = chart.Content{Arena: a, Bare: true}.MapFrame(shell.MapWidth).Width
	for _, h := range a.Holes {
		page.Holes = append(page.Holes, shell.Choice{Value: h.ID, Name: h.ID + ", " + a.PlaceOf(h.Station).Say(page.units), Chosen: h.ID == hole})
	}
	return page, nil
}

// solve answers what the page's marks say.
func (p *framePage) solve(r *http.Request) {
	p.Sent.Hole = p.Hole
	p.Solved = solveMarks(r.Context(), p.arena, p.Sent, p.units)
}

// solve answers POST /arena/{slug}/frame: marks as they were typed or set; to a page's
// module, only the answer with where each mark was expected.
func (d area) solve(w http.ResponseWriter, r *http.Request) error {
	page, err := d.openFrame(r, r.PostFormValue("hole"))
	if err != nil {
		return err
	}
	if page.Sent, err = readSent(r); err != nil {
		return err
	}
	page.solve(r)
	if shell.ForProgram(r) {
		text, err := d.Piece("frame-answer", page)
		if err != nil {
			return err
		}
		return d.JSON(w, r, http.StatusOK, map[string]any{"answer": string(text), "marks": page.Solved.live(), "frames": page.Sent.Shots})
	}
	return d.Page(w, r, page.Solved.status(), "frame.tmpl", page)
}

// told answers POST /arena/{slug}/frame/told: what the first bytes of a picture's file say
// of how it was taken. They are not kept.
func (d area) told(w http.ResponseWriter, r *http.Request) error {
	head := sentBytes(r)
	said, trouble := frames.ReadFrom("sent", head, head.Size())
	if trouble.Cause != "" && trouble.Cause != frames.NoTime {
		return d.JSON(w, r, http.StatusOK, map[string]any{"says": "The file does not tell how it was taken."})
	}
	out := map[string]any{"says": "The file does not tell its focal length."}
	if focal, ok := said.Focal.Get(); ok {
		out["focal"] = strconv.FormatFloat(focal.Millimetres(), 'f', -1, 64)
		out["says"] = "The file tells a focal length of " + out["focal"].(string) + " mm, taken within some percent."
	}
	if across, ok := said.Across(); ok {
		out["sensor"] = strconv.FormatFloat(across.Millimetres(), 'f', 2, 64)
	}
	return d.JSON(w, r, http.StatusOK, out)
}
