package learn

import (
	"bytes"
	"cmp"
	"fmt"
	"image/jpeg"
	"io"
	"math"
	"net/http"
	"slices"
	"strconv"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// The invented frame: how it is taken and drawn; own choice.
const (
	exampleLens    = "24-70"
	exampleFocal   = 50 * unit.Millimetre
	exampleWide    = 2400 // px
	exampleHigh    = 1600
	exampleMarks   = 9
	exampleBefore  = 2.0 // metres before the goal that is aimed at
	exampleQuality = 85  // of the JPEG
)

// example is a frame of the empty rink, drawn as the lens would, and marks in it.
type example struct {
	shot  *frame.Shot
	marks []resect.Pin
}

// exampleOf invents the frame of a hole: from there toward the nearer goal.
func exampleOf(a arena.Arena, hole string) (example, error) {
	k, err := kit.Default()
	if err != nil {
		return example{}, err
	}
	l, _ := k.Lens(exampleLens)
	h, ok := a.Hole(hole)
	if !ok || len(a.Rink.Goals()) == 0 {
		return example{}, fmt.Errorf("hole %s: it needs a hole, and a rink with its markings", hole)
	}
	x := math.Copysign(a.Rink.GoalX()-exampleBefore, a.Rink.Point(h.Station).X)
	s, err := frame.NewShot(a, frame.Request{Hole: hole, Lens: l, Body: k.Bodies[0], Use: fit.Setting{Focal: exampleFocal, Stop: l.Stop}, Target: geom.Vec3{X: x, Z: 0.8}, Shutter: 0.001})
	if err != nil {
		return example{}, err
	}
	out := example{shot: s}
	var seen []resect.Pin
	for _, m := range resect.Landmarks(a) {
		if x, y, _, ok := s.Camera.Project(m.At); ok && math.Abs(x) < 0.98 && math.Abs(y) < 0.98 {
			// A hand is off by part of a pixel, each mark otherwise.
			n := float64(len(seen))
			seen = append(seen, resect.Pin{Landmark: m.Name, X: (1+x)*exampleWide/2 + 0.4*math.Sin(5*n), Y: (1-y)*exampleHigh/2 + 0.4*math.Cos(3*n)})
		}
	}
	slices.SortStableFunc(seen, func(a, b resect.Pin) int { return cmp.Compare(kindOf(a.Landmark), kindOf(b.Landmark)) }) // posts before panes
	out.marks = seen[:min(len(seen), exampleMarks)]
	return out, nil
}

// sent is the form that somebody would send who had marked the frame.
func (e example) sent(hole string) sent {
	var text bytes.Buffer
	fmt.Fprintln(&text, "landmark,x_px,y_px,frame")
	for _, m := range e.marks {
		fmt.Fprintf(&text, "%s,%.1f,%.1f,%s\n", m.Landmark, m.X, m.Y, exampleName)
	}
	return sent{Hole: hole, Text: text.String(), Shots: []shot{{exampleName, strconv.Itoa(exampleWide), strconv.Itoa(exampleHigh), strconv.FormatFloat(exampleFocal.Millimetres(), 'f', -1, 64), "about", usualSensor}}}
}

const exampleName = "invented.jpg"

// examplePicture draws the invented frame.
func (d area) examplePicture(w http.ResponseWriter, r *http.Request) error {
	b, _, err := d.Newest(r)
	if err != nil {
		return err
	}
	a, err := b.Arena.Check()
	if err != nil {
		return err
	}
	e, err := exampleOf(a, r.FormValue("hole"))
	if err != nil {
		return shell.Because(http.StatusUnprocessableEntity, "No frame can be invented for this hole.", err)
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, e.shot.Picture(exampleWide, exampleHigh), &jpeg.Options{Quality: exampleQuality}); err != nil {
		return err
	}
	w.Header().Set("Cache-Control", "no-cache")
	shell.Send(w, r, http.StatusOK, "image/jpeg", out.Bytes(), nil)
	return nil
}

// sentBytes is a body as bytes.
func sentBytes(r *http.Request) *bytes.Reader {
	data, _ := io.ReadAll(r.Body) // what arrived whole was read before
	return bytes.NewReader(data)
}
