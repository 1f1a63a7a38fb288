package frame

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// A picture is worth taking about this far away and not far aside: what is shown first
// (own judgement).
const (
	likedAway = 12.0 // metres
	likedTurn = 35.0 // degrees, to either side
	likedFill = 0.6  // of the frame's height that the subject takes, a ratio
)

// BestMoment returns the moment to show first at a hole: the one whose subject
// stands nearest to 12 m away, turned by 35 degrees at most where there is one, of those
// that are worth it; nil: of all.
func BestMoment(a arena.Arena, moments *play.Set, hole string, worth func(moment int) bool) int {
	o, err := a.Opening(hole)
	if err != nil {
		return 0
	}
	at := MountOf(a, o)
	best, least := 0, math.Inf(1)
	for i := range moments.Len() {
		if worth != nil && !worth(i) {
			continue
		}
		m := moments.At(i)
		aim := at.AimAt(Chest(m))
		off := math.Abs(aim.Distance.Metres() - likedAway)
		if math.Abs(aim.Pan.Degrees()) > likedTurn {
			off += likedAway
		}
		if off < least {
			best, least = i, off
		}
	}
	return best
}

// FramedFocal returns the lens's focal length at which the moment's subject fills six
// tenths of the frame's height seen from a hole, within the lens's range:
//
//	f = 0.6 x distance x sensor's height / subject's height
func FramedFocal(a arena.Arena, hole string, m play.Moment, l kit.Lens, b kit.Body, portrait bool) unit.Length {
	o, err := a.Opening(hole)
	if err != nil {
		return l.FocalMin
	}
	tall := b.Sensor.H
	if portrait {
		tall = b.Sensor.W
	}
	f := likedFill * MountOf(a, o).AimAt(Chest(m)).Distance.Metres() * tall.Metres() / m.People[m.Subject].Height
	whole := unit.Length(math.Round(f*1000)) * unit.Millimetre
	return min(l.FocalMax, max(l.FocalMin, whole))
}

// darkFrame is the mean light, a share of that of a free lens, below which a picture is as good as
// black: five stops under (own choice).
const darkFrame = 1.0 / 32

// Dark says why a picture would be black or nearly so; nil when it is none. It is the
// mean of what hole, panel and ledge let through over the frame.
func (s *Shot) Dark() error {
	const across, down = 9, 7
	free, sum, ledge := 0.0, 0.0, 0.0
	for j := range down {
		for i := range across {
			x, y := 2*(float64(i)+0.5)/across-1, 2*(float64(j)+0.5)/down-1
			t, over := s.Transmission(x, y), s.LedgeFree(x, y)
			free, ledge, sum = free+t, ledge+over, sum+t*over
		}
	}
	const n = across * down
	if sum/n >= darkFrame {
		return nil
	}
	at := fmt.Sprintf("%.0f mm, pan %.0f deg, tilt %.0f deg", s.Focal.Millimetres(), s.Aim.Pan.Degrees(), s.Aim.Tilt.Degrees())
	switch {
	case ledge/n < darkFrame:
		return fmt.Errorf("the picture is black at %s: the boards' ledge covers the view; aim higher", at)
	case free/n < darkFrame:
		return fmt.Errorf("the picture is black at %s: the hole lets %.1f %% of the light through there; aim nearer to straight ahead, or take a longer or slimmer lens", at, 100*free/n)
	}
	return fmt.Errorf("the picture is nearly black at %s: hole and ledge leave %.1f %% of the light; aim higher or nearer to straight ahead", at, 100*sum/n)
}
