package fit

import (
	"math/rand/v2"
	"testing"
)

// TestCentreAloneAgainstSearch: no allowed pose lets more light through along
// the axis than the one evaluation that the usable limit rests on.
func TestCentreAloneAgainstSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	told := 0
	for i := range 60 {
		c := randomCase(r)
		if i%3 == 0 {
			c.PupilDepth *= 0.1 // a pupil that may reach into the pane
		}
		if i%4 == 0 {
			c.Pivot = Centre
		}
		c.Pupil = c.Nose * (0.6 + 0.4*r.Float64())
		pan, tilt := 0.4+0.9*r.Float64(), 0.6*r.Float64()*float64(i%2)
		a := aimAt(pan, tilt)
		want := c.centre(&a)
		b := newBlind(c, pan, tilt)
		b.us = b.us[:1]
		got, at := b.search(r)
		if got > want+1e-9 || got < want-1e-3 {
			t.Errorf("%+v at %g, %g: T %.9f, a search reached %.9f at %+v", c, pan, tilt, want, got, at)
		}
		if want > 0.01 && want < 0.99 {
			told++
		}
	}
	if told < 20 {
		t.Errorf("only %d of the cases told anything", told)
	}
}
