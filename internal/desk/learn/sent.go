package learn

import (
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// shot is what a form says of one frame, as it was typed.
type shot struct {
	Name, Wide, High string // pixels
	Focal, Know      string // millimetres, and how well it is known: "", "about" or "exact"
	Sensor           string // across the picture, millimetres
}

// usualSensor is the side across of the usual sensor (36 x 24 mm), when nothing is said.
const usualSensor = "36"

// sent is a form of the marking page.
type sent struct {
	Hole  string
	Text  string // the marks as a table
	Shots []shot // of each frame; one without a name is of all that are not named
}

// readSent reads the form; frames beyond the most are refused by their reader.
func readSent(r *http.Request) (s sent, err error) {
	if s.Text, err = shell.SentDocument(r); err != nil {
		return s, err
	}
	s.Hole = r.PostFormValue("hole")
	at := func(name string, i int) string {
		if list := r.PostForm[name]; i < len(list) {
			return strings.TrimSpace(list[i])
		}
		return ""
	}
	for i := range r.PostForm["frame"] {
		s.Shots = append(s.Shots, shot{at("frame", i), at("wide", i), at("high", i), at("focal", i), at("know", i), at("sensor", i)})
	}
	return s, nil
}

// frames returns what was marked, with what is said of each frame.
func (s sent) frames() ([]resect.Frame, error) {
	marked, err := resect.ReadPins("marks", strings.NewReader(s.Text))
	if err != nil {
		return nil, err
	}
	for i := range marked {
		if err := s.describe(&marked[i]); err != nil {
			return marked, err
		}
	}
	return marked, nil
}

// describe says of a frame its size, sensor and focal length.
func (s sent) describe(f *resect.Frame) error {
	k := slices.IndexFunc(s.Shots, func(o shot) bool { return o.Name == f.Name })
	if k < 0 {
		k = slices.IndexFunc(s.Shots, func(o shot) bool { return o.Name == "" || f.Name == "" })
	}
	if k < 0 {
		return fmt.Errorf("nothing is said of the frame %s: open it, or give its size in pixels", form.Quote(f.Name))
	}
	of := s.Shots[k]
	for i, text := range [2]string{of.Wide, of.High} {
		n, err := strconv.Atoi(text)
		if err != nil {
			return errors.New("the frame's size in pixels is missing: open the frame, or write it, as 6000 across and 4000 down")
		}
		f.Pixels[i] = n
	}
	sensor, err := millimetres("the sensor's side across the picture", of.Sensor)
	if err != nil {
		return err
	}
	f.Sensor = sensor
	if of.Know == "" {
		return nil
	}
	focal, err := millimetres("the focal length", of.Focal)
	switch {
	case err != nil:
		return err
	case of.Know == "exact":
		f.Focal = resect.FocalExactly(focal)
	default:
		f.Focal = resect.FocalAbout(focal)
	}
	return nil
}

// Bounds of focal lengths and sensors, millimetres: no camera has others.
const (
	leastMillimetres = 1
	mostMillimetres  = 3000
)

func millimetres(what, text string) (unit.Length, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(text, "mm")), 64)
	if err != nil || !(v >= leastMillimetres && v <= mostMillimetres) {
		return 0, fmt.Errorf("%s is not known: write millimetres, from %d to %d", what, leastMillimetres, mostMillimetres)
	}
	return unit.Length(v) * unit.Millimetre, nil
}
