package picture

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Fact is one line beside the picture.
type Fact struct {
	ID    string `json:"id"` // the same in every answer
	Name  string `json:"name"`
	Value string `json:"value"`
}

// Numbers are what a photographer reads beside a picture.
type Numbers struct {
	Facts []Fact   `json:"facts"`
	Notes []string `json:"notes"` // what is wrong or worth knowing
	Pan   float64  `json:"pan_deg"`
	Tilt  float64  `json:"tilt_deg"`
	Focus float64  `json:"focus_m"`
	Focal float64  `json:"focal_mm"`
	Stop  float64  `json:"stop"` // f-number
	ViewH float64  `json:"view_h_deg"`
	ViewV float64  `json:"view_v_deg"`
}

// Read the numbers of a shot in a system of units.
func (s State) Numbers(shot *frame.Shot, a arena.Arena, sys unit.System) (Numbers, error) {
	n := Numbers{
		Pan: round(shot.Aim.Pan.Degrees(), 2), Tilt: round(shot.Aim.Tilt.Degrees(), 2), Focus: round(shot.Focus.Metres(), 2),
		Focal: s.Focal, Stop: round(s.Stop, 2), Notes: []string{},
		ViewH: 2 * math.Atan(shot.Case.TanX) * 180 / math.Pi, ViewV: 2 * math.Atan(shot.Case.TanY) * 180 / math.Pi,
	}
	add := func(id, name, format string, args ...any) {
		n.Facts = append(n.Facts, Fact{id, name, fmt.Sprintf(format, args...)})
	}
	px, err := shot.SubjectPixels()
	if err != nil {
		return n, err
	}
	blur, err := shot.MotionPixels()
	if err != nil {
		return n, err
	}
	depth, err := shot.DepthOfField()
	if err != nil {
		return n, err
	}
	add("pan", "Turned", "%s", turned(n.Pan))
	add("tilt", "Tilted", "%s", tilted(n.Tilt))
	add("distance", "Subject", "%s away", shot.Aim.Distance.Format(sys))
	add("focus", "Focused at", "%s", shot.Focus.Format(sys))
	add("tall", "Player", "%.0f px tall, %.0f %% of the frame", px, 100*px/float64(shot.Pixels[1]))
	add("view", "View", "%.1f° × %.1f°", n.ViewH, n.ViewV)
	add("sharp", "Sharp", "%s", sharp(depth, sys))
	add("blur", "Skater's blur", "%.1f px across the view", blur)
	centre := shot.Transmission(0, 0)
	add("centre", "Light lost, middle", "%s", lost(centre))
	add("corner", "Light lost, corner", "%s", lost(worstCorner(shot)))
	lux, iso, notes := s.exposure(shot, a, centre, sys)
	add("light", "Light there", "%s", lux)
	add("iso", "ISO for faces", "%s", iso)
	n.Notes = append(n.Notes, notes...)
	if value, note := s.patch(shot, a, sys); value != "" {
		add("patch", "Clear patch", "%s", value)
		if note != "" {
			n.Notes = append(n.Notes, note)
		}
	}
	if seen, ok := shot.Seen(0, 0); ok {
		ghost, err := shot.GhostPixels()
		if err != nil {
			return n, err
		}
		add("pane", "The pane", "leaves %.0f %% of a dark jersey's contrast; second image %.0f px off", 100*seen.Contrast, ghost)
		n.Notes = append(n.Notes, fmt.Sprintf("Through the pane: haze %.0f %% (ASTM D1003; as surveyed, else a worn pane's), stands a tenth as bright as the scene, assumed. rinkpane gain sets hole and pane side by side.", 100*shot.Haze()))
	}
	if !s.Pane && !shot.ThroughPanel() {
		add("pane", "The pane", "not in the way")
	}
	s.note(&n, shot)
	return n, nil
}

func worstCorner(s *frame.Shot) float64 {
	worst := 1.0
	for _, x := range [2]float64{-1, 1} {
		for _, y := range [2]float64{-1, 1} {
			worst = min(worst, s.Transmission(x, y))
		}
	}
	return worst
}

func turned(deg float64) string {
	switch {
	case deg == 0:
		return "straight ahead"
	case deg > 0:
		return strconv.FormatFloat(deg, 'f', 1, 64) + "° to the right"
	}
	return strconv.FormatFloat(-deg, 'f', 1, 64) + "° to the left"
}

func tilted(deg float64) string {
	switch {
	case math.Abs(deg) < 0.05:
		return "level"
	case deg > 0:
		return strconv.FormatFloat(deg, 'f', 1, 64) + "° up"
	}
	return strconv.FormatFloat(-deg, 'f', 1, 64) + "° down"
}

func sharp(d optics.Depth, sys unit.System) string {
	if d.Infinite() {
		return "from " + d.Near.Format(sys)
	}
	return d.Near.Format(sys) + " to " + d.Far.Format(sys)
}

// lostNothing is the loss in stops below which one speaks of none.
const lostNothing = 0.05

// lost says a share of light as a loss in stops.
func lost(share float64) string {
	stops := -math.Log2(share)
	switch {
	case share <= 0:
		return "all of it: dark"
	case stops < lostNothing:
		return "nothing"
	}
	return fmt.Sprintf("%.1f stops", stops)
}

// exposure tells the light where the camera points, and the ISO for it: of upright
// faces, and of a flat meter beside it.
func (s State) exposure(shot *frame.Shot, a arena.Arena, pass float64, sys unit.System) (lux, iso string, notes []string) {
	l := shot.Lighting
	if !l.Surveyed {
		return "not surveyed", "-", nil
	}
	lux = l.Flat.Format(sys)
	if l.Guessed {
		lux += ", a guess"
	}
	needed, lit := l.ISO.Get()
	if !lit {
		return lux, "-", nil
	}
	asked := optics.DefaultCalibration.ISO(unit.Illuminance(l.Flat.Lux()*pass), s.Shutter, unit.Stop(s.Stop))
	iso = optics.NearestISO(needed).Text + ", flat meter " + optics.NearestISO(asked).Text
	notes = []string{"ISO: " + light.FaceNote(a).In(sys) + "."}
	if s.Body.ISOMax > 0 && float64(needed) > float64(s.Body.ISOMax) {
		notes = append(notes, fmt.Sprintf("This needs more than ISO %d, the most that the body's user accepts: open the stop or take a longer shutter time.", s.Body.ISOMax))
	}
	return lux, iso, notes
}

// note tells what the photographer should know.
func (s State) note(n *Numbers, shot *frame.Shot) {
	if !s.Pane && !shot.Case.Fits() && !shot.ThroughPanel() {
		n.Notes = append(n.Notes, "The nose of this lens is wider than the hole: it stays behind the pane, and the pane takes the picture's edges.")
	}
	if err := shot.Dark(); err != nil {
		n.Notes = append(n.Notes, strings.ToUpper(err.Error()[:1])+err.Error()[1:]+".")
	}
	if shot.Served < 1 {
		n.Notes = append(n.Notes, fmt.Sprintf("No pose lights every corner. The camera stands for the middle %.0f %% of the frame.", 100*shot.Served))
	}
	if f, ok := s.Focus.Get(); ok && f <= s.Lens.MinFocus.Metres() {
		n.Notes = append(n.Notes, "The lens focuses no nearer.")
	}
}
