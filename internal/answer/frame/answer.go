package frame

import (
	"example.org/rinkpane/internal/answer/optics"
)

// Answer is a picture in numbers.
type Answer struct {
	*Shot
	Request
	Subject float64      // height of the subject, in pixels
	Blur    float64      // of a skater who crosses the view, in pixels
	Points  []CheckPoint // numbered places, of a picture with checks
	Pane    *PaneSeen    // what the pane does, of a picture through it; else nil
}

// PaneSeen is what a pane does to the middle of a picture that is taken through it.
type PaneSeen struct {
	optics.Seen
	GhostPx float64 // how far off the second image stands, in pixels
}

// Measure returns a picture in numbers. Errors are those of [NewShot], and a subject
// that cannot be measured.
func Measure(s *Shot, q Request) (a Answer, err error) {
	a = Answer{Shot: s, Request: q}
	if a.Subject, err = s.SubjectPixels(); err != nil {
		return a, err
	}
	if a.Blur, err = s.MotionPixels(); err != nil {
		return a, err
	}
	if seen, ok := s.Seen(0, 0); ok {
		a.Pane = &PaneSeen{Seen: seen}
		a.Pane.GhostPx, err = s.GhostPixels()
	}
	return a, err
}
