package game

import (
	"strings"
	"testing"
)

func TestBodiesAndClocksAreRead(t *testing.T) {
	s := read(t, strings.Replace(small, "requests:", `bodies: [{body: "0042", who: ann}, {body: Model X, hole: A1}]
clocks: [{game: g1, frame: a.jpg, shows: 2/12:34}, {game: g2, frame: b.jpg, shows: "19:05:09"}]
requests:`, 1), nil)
	if len(s.Bodies) != 2 || s.Bodies[0] != (Body{"0042", "ann", ""}) || s.Bodies[1] != (Body{"Model X", "", "A1"}) {
		t.Errorf("bodies: %+v", s.Bodies)
	}
	var shown []string
	for _, c := range s.Clocks {
		shown = append(shown, c.Game+" "+c.Frame+" "+c.String())
	}
	if got, want := strings.Join(shown, ", "), "g1 a.jpg 2/12:34, g2 b.jpg 19:05:09"; got != want {
		t.Errorf("clocks: %s, want %s", got, want)
	}
}

func TestWhatNoScoreboardShowsIsRefused(t *testing.T) {
	for _, s := range []string{"", "12:34", "0/12:34", "10/12:34", "2/12:60", "2/-1:00", "x/1:00", "24:00:00", "19:60:00", "2/1:2:3", "99:99:99"} {
		if got, err := ParseShown(s); err == nil {
			t.Errorf("%q: %v", s, got)
		}
	}
}
