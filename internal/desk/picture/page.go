package picture

import (
	"errors"
	"math"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
)

// picturePage is the view through the lens of one hole.
type picturePage struct {
	shell.Frame
	Way            string // which of the arena's pages this is
	Address        shell.Address
	Arena, Slug    string
	Revision       string // of the arena's text
	State          State
	Numbers        Numbers
	Problem        string // why there is no picture, "" when there is one
	Image          string // address of the picture
	PNG, SVG, Back string
	Wide, High     int // pixels of the picture
	Units          string
	Systems        []shell.Option
	Holes          []shell.Choice
	Lenses, Bodies []shell.Choice
	Shutters       []shell.Choice
	Controls       []control
	Previous, Next string
	Aimed          string // the same picture aimed at the moment's subject
	Last           int    // moment
	Phase          string
	Phases         []shell.Option
}

// control is a slider with a field of numbers.
type control struct {
	Name, Label, Unit string
	Value             string
	Least, Most, Step string
	Given             bool // stands in the address; else it follows from the moment
}

func (d area) picturePage(w http.ResponseWriter, r *http.Request) error {
	s, err := d.sit(r)
	if err != nil {
		return err
	}
	page := picturePage{
		Frame: d.Frame(r, "Through "+s.state.way(s.arena)), Arena: s.arena.Name, Slug: s.book.Document.ID, Revision: s.book.Revision, Way: "picture",
		Address: shell.Address{Slug: s.book.Document.ID, Hole: s.state.Hole, Lens: s.state.Lens.ID, System: r.FormValue("units")},
		State:   s.state, Units: r.FormValue("units"), Last: Moments - 1, Back: shell.Address{Slug: s.book.Document.ID, Hole: s.state.Hole, System: r.FormValue("units")}.URL(),
	}
	page.Module = "lens.js"
	shot, err := s.shot()
	if err == nil {
		page.Numbers, err = s.state.Numbers(shot, s.arena, s.system)
		page.Wide, page.High = size(shot, pictureSide)
	}
	var say *shell.Refusal
	switch {
	case errors.As(err, &say):
		page.Problem = say.Cure
		page.Wide, page.High = pictureSide, pictureSide*2/3
		page.Numbers = Numbers{Pan: s.state.Pan.Or(0), Tilt: s.state.Tilt.Or(0), Focal: s.state.Focal, Stop: s.state.Stop, Focus: s.state.Focus.Or(10)}
	case err != nil:
		return err
	}
	page.fill(r, s, s.book.Maker.Kit)
	return d.Page(w, r, http.StatusOK, "picture.tmpl", page)
}

// link returns the page's own shell.Address, or that of a file beside it, with some
// fields of the query changed; "" takes one out.
func (p picturePage) link(q url.Values, file string, change ...string) string {
	to := url.Values{}
	for k, v := range q {
		to[k] = v
	}
	for i := 0; i+1 < len(change); i += 2 {
		to.Del(change[i])
		if change[i+1] != "" {
			to.Set(change[i], change[i+1])
		}
	}
	return "/arena/" + p.Slug + "/" + file + "?" + to.Encode()
}

func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// What the sliders reach; the fields of numbers take more.
const (
	mostSlideStop  = 16.0
	mostSlideFocus = 60.0
)

func (p *picturePage) controls(sys unit.System) {
	s, n := p.State, p.Numbers
	_, turned := s.Pan.Get()
	_, focused := s.Focus.Get()
	widest := float64(s.Lens.WidestAt(unit.Length(s.Focal / 1000)))
	focus, per := control{Name: "focus", Unit: "m"}, 1.0
	if sys == unit.Imperial {
		focus.Name, focus.Unit, per = focusFeet, "ft", unit.Foot.Metres()
	}
	focus.Label, focus.Step, focus.Given = "Focus", "0.1", focused
	focus.Value, focus.Most = plainNumber(round(n.Focus/per, 2)), plainNumber(math.Floor(mostSlideFocus/per))
	focus.Least = strconv.FormatFloat(s.Lens.MinFocus.Metres()/per, 'f', 2, 64)
	p.Controls = []control{
		{"pan", "Pan", "°", plainNumber(n.Pan), plainNumber(-MostPan), plainNumber(MostPan), "0.1", turned},
		{"tilt", "Tilt", "°", plainNumber(n.Tilt), "-40", "40", "0.1", turned},
		{"focal", "Focal length", "mm", plainNumber(s.Focal), plainNumber(s.Lens.FocalMin.Millimetres()), plainNumber(s.Lens.FocalMax.Millimetres()), "1", true},
		{"stop", "Stop", "f/", plainNumber(n.Stop), strconv.FormatFloat(widest, 'f', 2, 64), plainNumber(max(mostSlideStop, widest)), "0.1", true},
		focus,
	}
}

func phaseName(p play.Phase) string { return strings.ReplaceAll(p.String(), "-", " ") }
