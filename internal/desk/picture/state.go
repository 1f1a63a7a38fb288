// Package picture is the view through the lens of a hole: which picture does an
// address of the desk ask for, and what does a photographer read beside it?
//
//	?hole=B1&lens=70-200&focal=120&pan=-20&moment=3   ->   State   ->   frame.Shot, Numbers
//
// The model: everything about a picture stands in its shell.Address, so that it can be
// bookmarked and mailed. What is left out is chosen: the body and lens of the
// kit that are named first among those in use, the short end of the zoom, the
// widest stop, 1/1000 s, the subject of the moment in the middle and in focus.
//
// Assumptions: the moments are the first [Moments] of the sampler at seed 1, so
// that two people who speak of moment 3 speak of the same. Skaters move at 5 m/s.
package picture

import (
	"context"
	"fmt"
	"math"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// Moments is how many moments there are to choose from.
const Moments = 60

const momentSeed = 1

// Bounds of what an address may ask for.
const (
	MostPan   = 85.0  // degrees, to either side
	MostTilt  = 60.0  // degrees, up or down
	LeastStop = 0.7   // f-number
	MostStop  = 45.0  // f-number
	MostFocus = 120.0 // metres
)

// Shutters are the shutter times offered, in seconds.
func Shutters() []unit.Shutter {
	return []unit.Shutter{1.0 / 60, 1.0 / 125, 1.0 / 250, 1.0 / 500, 1.0 / 1000, 1.0 / 1600, 1.0 / 2000, 1.0 / 4000}
}

// State is a picture as an address asks for it. Unknown pan and tilt aim at the
// moment's subject, an unknown focus lies on it.
type State struct {
	Hole      string
	Lens      kit.Lens
	Body      kit.Body
	Focal     float64 // mm
	Stop      float64 // f-number
	Shutter   unit.Shutter
	Pan, Tilt unit.Maybe[float64] // degrees; both known or both unknown
	Focus     unit.Maybe[float64] // metres along the axis
	Portrait  bool
	Planes    bool // lines of focus on the ice
	Empty     bool // nobody on the ice
	Pane      bool // through the pane, as if there were no hole
	Moment    int  // from 0
}

// Read reads the state from an address's query for an arena. A value that
// cannot be is an error that says what would do.
func Read(q url.Values, a arena.Arena, k kit.Kit) (State, error) {
	s := State{Hole: q.Get("hole"), Shutter: light.UsualShutter}
	if s.Hole == "" {
		s.Hole = firstHole(a)
	}
	if !slices.Contains(a.Openings(), s.Hole) {
		return s, fmt.Errorf("this arena has no hole or low window of that name; it has %s", strings.Join(a.Openings(), ", "))
	}
	var err error
	if s.Lens, s.Body, err = kitOf(k, a, q.Get("lens"), q.Get("body")); err != nil {
		return s, err
	}
	if err := s.numbers(q); err != nil {
		return s, err
	}
	s.Portrait, s.Planes, s.Empty, s.Pane = q.Get("hold") == "portrait", q.Get("planes") == "1", q.Get("empty") == "1", q.Get("through") == "pane"
	return s, nil
}

func (s *State) numbers(q url.Values) error {
	lo, hi := s.Lens.FocalMin.Millimetres(), s.Lens.FocalMax.Millimetres()
	focal, err := number(q, "focal", "focal length in mm", 1, 2000)
	if err != nil {
		return err
	}
	s.Focal = min(hi, max(lo, focal.Or(lo))) // another lens keeps what it can of the zoom's setting
	widest := float64(s.Lens.WidestAt(unit.Length(s.Focal / 1000)))
	stop, err := number(q, "stop", "stop", LeastStop, MostStop)
	if err != nil {
		return err
	}
	s.Stop = max(widest, stop.Or(widest))
	if v := q.Get("shutter"); v != "" {
		if s.Shutter, err = unit.ParseShutter(v); err != nil {
			return fmt.Errorf("shutter: %w", err)
		}
	}
	if s.Pan, err = number(q, "pan", "pan in degrees", -MostPan, MostPan); err != nil {
		return err
	}
	if s.Tilt, err = number(q, "tilt", "tilt in degrees", -MostTilt, MostTilt); err != nil {
		return err
	}
	if s.Pan != s.Tilt { // one alone: the other is level or straight ahead
		s.Pan, s.Tilt = unit.Known(s.Pan.Or(0)), unit.Known(s.Tilt.Or(0))
	}
	least := max(s.Lens.MinFocus.Metres(), 2*s.Focal/1000)
	if s.Focus, err = number(q, "focus", "focus in metres", 0, MostFocus); err != nil {
		return err
	}
	feet, err := number(q, focusFeet, "focus in feet", 0, MostFocus/unit.Foot.Metres())
	if err != nil {
		return err
	}
	if f, ok := feet.Get(); ok {
		s.Focus = unit.Known(f * unit.Foot.Metres())
	}
	if f, ok := s.Focus.Get(); ok {
		s.Focus = unit.Known(max(least, f))
	}
	moment, err := number(q, "moment", "moment", 0, Moments-1)
	s.Moment = int(moment.Or(0))
	return err
}

// focusFeet is the field of the focus where the visitor reads feet; addresses that
// are made here have it in metres.
const focusFeet = "focus-ft"

func number(q url.Values, name, says string, lo, hi float64) (unit.Maybe[float64], error) {
	v := q.Get(name)
	if v == "" {
		return unit.Maybe[float64]{}, nil
	}
	x, err := strconv.ParseFloat(v, 64)
	if err != nil || !(x >= lo && x <= hi) {
		return unit.Maybe[float64]{}, fmt.Errorf("%s: write a number from %g to %g", says, lo, hi)
	}
	return unit.Known(x), nil
}

// Query writes the state as an address's query; [Read] of it gives the same state.
func (s State) Query() url.Values {
	q := url.Values{}
	put := func(name string, v float64, decimals int) {
		q.Set(name, strconv.FormatFloat(round(v, decimals), 'f', -1, 64))
	}
	q.Set("hole", s.Hole)
	q.Set("lens", s.Lens.ID)
	q.Set("body", s.Body.ID)
	put("focal", s.Focal, 1)
	put("stop", s.Stop, 2)
	q.Set("shutter", s.Shutter.Format())
	if pan, ok := s.Pan.Get(); ok {
		put("pan", pan, 2)
		put("tilt", s.Tilt.Or(0), 2)
	}
	if f, ok := s.Focus.Get(); ok {
		put("focus", f, 2)
	}
	q.Set("moment", strconv.Itoa(s.Moment))
	if s.Portrait {
		q.Set("hold", "portrait")
	}
	if s.Planes {
		q.Set("planes", "1")
	}
	if s.Empty {
		q.Set("empty", "1")
	}
	if s.Pane {
		q.Set("through", "pane")
	}
	return q
}

func round(v float64, decimals int) float64 {
	k := math.Pow10(decimals)
	return math.Round(v*k) / k
}

// way says what is looked through: "hole B1", "the pane at hole B1".
func (s State) way(a arena.Arena) string {
	if s.Pane {
		return "the pane at " + Opening(a, s.Hole)
	}
	return Opening(a, s.Hole)
}

// Shot sets the camera up.
func (s State) Shot(a arena.Arena, moments *play.Set) (*frame.Shot, error) {
	m := moments.At(s.Moment)
	q := frame.Request{
		Hole: s.Hole, Lens: s.Lens, Body: s.Body,
		Use:     fit.Setting{Focal: unit.Length(s.Focal / 1000), Stop: unit.Stop(s.Stop), Portrait: s.Portrait},
		Target:  frame.Chest(m),
		Shutter: s.Shutter, Speed: frame.UsualSpeed, Paced: true, Planes: s.Planes,
	}
	if !s.Empty {
		q.Moment = &m
	}
	if s.Pane {
		q.Through = frame.ByPane
	}
	if f, ok := s.Focus.Get(); ok {
		q.Focus = unit.Known(unit.Length(f))
	}
	if pan, ok := s.Pan.Get(); ok {
		away := unit.Length(math.Hypot(q.Target.X, q.Target.Y))
		if o, err := a.Opening(s.Hole); err == nil {
			away = frame.MountOf(a, o).AimAt(q.Target).Distance
		}
		q.Turn = unit.Known(frame.Aim{Pan: degrees(pan), Tilt: degrees(s.Tilt.Or(0)), Distance: q.Focus.Or(away)})
	}
	return frame.NewShot(a, q)
}

func degrees(v float64) unit.Angle { return unit.Angle(v * math.Pi / 180) }

// Sample makes the moments of a rink.
func Sample(ctx context.Context, a arena.Arena) (*play.Set, error) {
	return play.Sample(ctx, a.Rink, a.Playing(), momentSeed, Moments)
}
