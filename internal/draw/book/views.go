package book

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"image/jpeg"
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/tell/words"
)

// Pictures through the holes: how many moments are tried for each hole's best and by
// which seed, as for a single picture; the pictures' pixels and how well they are
// packed. Own choice.
const (
	viewMoments = 400
	viewSeed    = 1
	coverAcross = 1500
	mainAcross  = 900
	sideAcross  = 450
	viewQuality = 85
	clearShare  = 0.9 // of the best score among the moments that a moment shown has at least
)

// View is a picture through a hole.
type View struct {
	photo        sheet.Image // at the picture's own proportions
	caption, alt string
}

// usualFocals are the focal lengths of the bags that most bring, wide to long. Own choice.
var usualFocals = [...]unit.Length{24 * unit.Millimetre, 70 * unit.Millimetre, 200 * unit.Millimetre}

// usual returns the hole's recommended lens, then those nearest to the other usual
// focal lengths, of the lenses that fit, each once.
func usual(h plan.Hole) []plan.LensFit {
	best, ok := h.BestFit()
	if !ok {
		return nil
	}
	apart := func(f plan.LensFit, focal unit.Length) float64 { return math.Abs(math.Log(float64(f.Focal / focal))) }
	out := []plan.LensFit{best}
	left := slices.SortedFunc(slices.Values(usualFocals[:]), func(a, b unit.Length) int { return cmp.Compare(apart(best, a), apart(best, b)) })
	fits := slices.DeleteFunc(slices.Clone(h.Fits), func(f plan.LensFit) bool { return !f.Fits })
	if len(fits) == 0 { // they look through from behind the pane
		return out
	}
	slices.Sort(left[1:])
	for _, focal := range left[1:] { // the first is what the recommended lens stands for
		near := slices.MinFunc(fits, func(a, b plan.LensFit) int { return cmp.Compare(apart(a, focal), apart(b, focal)) })
		if !slices.ContainsFunc(out, func(o plan.LensFit) bool { return o.Lens.ID == near.Lens.ID && o.Focal == near.Focal }) {
			out = append(out, near)
		}
	}
	return out
}

// takePictures takes the pictures through every hole, each at the moment that shows
// the hole first, and the arena's best for the cover.
func (c *Content) takePictures(ctx context.Context) error {
	c.Views = make(map[string][]View, len(c.Plan.Holes))
	set, err := play.Sample(ctx, c.Arena.Rink, c.Arena.Playing(), viewSeed, viewMoments)
	if err != nil {
		return nil // a rink that is too small for a game: a book without pictures
	}
	scorer, err := sight.NewScorer(c.Arena, c.Plan.Kit, sight.DefaultJudgement())
	if err != nil {
		return err
	}
	scores, err := scorer.Score(ctx, c.Arena.Working(), set, nil)
	if err != nil {
		return err
	}
	holes := c.Arena.Working()
	shown := make([]showing, len(holes))
	if err := cores.EachUntil(ctx, "taking the pictures", len(holes), func(i int) {
		row, it := scores.Row(i), &shown[i]
		least := clearShare * slices.Max(row)
		at := frame.BestMoment(c.Arena, set, holes[i].ID, func(m int) bool { return row[m] >= least })
		it.moment, it.score = set.At(at), row[at]
		it.views, it.err = c.through(c.Plan.Holes[i], it.moment)
	}); err != nil {
		return err
	}
	best := -1
	for i, it := range shown {
		if it.err != nil {
			return it.err
		}
		c.Views[holes[i].ID] = it.views
		if len(it.views) > 0 && (best < 0 || it.score > shown[best].score) {
			best = i
		}
	}
	if best < 0 {
		return nil
	}
	h := c.Plan.Holes[best]
	v, ok, err := c.view(h, usual(h)[0], shown[best].moment, true, coverAcross)
	if ok {
		v.caption = "Hole " + h.ID + ", " + v.caption
		c.Cover = unit.Known(v)
	}
	return err
}

// showing is the moment that a hole is shown at, its score, and the pictures of it.
type showing struct {
	moment play.Moment
	score  float32
	views  []View
	err    error
}

// through takes the pictures of one moment through one hole, the recommended lens's
// larger and zoomed to the moment's subject, the others as they are.
func (c *Content) through(h plan.Hole, m play.Moment) ([]View, error) {
	var out []View
	for i, f := range usual(h) {
		across := sideAcross
		if i == 0 {
			across = mainAcross
		}
		v, ok, err := c.view(h, f, m, i == 0, across)
		if err != nil {
			return nil, err
		}
		if ok {
			out = append(out, v)
		}
	}
	return out, nil
}

// view takes one picture; framed zooms the lens to the moment's subject. ok is false
// where the lens cannot be aimed there, or the picture would be black.
func (c *Content) view(h plan.Hole, f plan.LensFit, m play.Moment, framed bool, across int) (v View, ok bool, err error) {
	body, known := c.Plan.Kit.Body(f.Lens.Body)
	if !known {
		body = c.Plan.Kit.Bodies[0]
	}
	use := f.Setting
	if framed {
		if use, err = c.framed(h.ID, f.Lens, body, m); err != nil {
			return v, false, err
		}
	}
	s, err := frame.NewShot(c.Arena, frame.Request{
		Hole: h.ID, Lens: f.Lens, Body: body, Use: use, Moment: &m, Target: frame.Chest(m),
		Shutter: light.UsualShutter, Speed: frame.UsualSpeed,
	})
	if err != nil || s.Dark() != nil {
		return v, false, nil // the other lenses still show the moment
	}
	down := int(float64(across)*s.Case.TanY/s.Case.TanX + 0.5)
	img := s.Picture(across, down)
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: viewQuality}); err != nil {
		return v, false, fmt.Errorf("hole %s: pack the picture: %w", h.ID, err)
	}
	f.Setting = use
	away := words.Far(s.Aim.Distance, c.Options.Units)
	return View{
		photo:   sheet.Image{Rect: sheet.Rect{W: 1, H: float64(down) / float64(across)}, Img: img, JPEG: b.Bytes()},
		caption: fmt.Sprintf("%s, %s, the player %s away", words.Lens(f), use.Stop.Format(), away),
		alt:     fmt.Sprintf("Drawn, not photographed: a sampled moment of a game as %s sees it through hole %s, aimed at a player %s away.", words.Lens(f), h.ID, away),
	}, true, nil
}

// framed sets a lens wide open so that it frames a moment's subject.
func (c *Content) framed(hole string, l kit.Lens, b kit.Body, m play.Moment) (fit.Setting, error) {
	return fit.Use(l, unit.Known(frame.FramedFocal(c.Arena, hole, m, l, b, false)), unit.Maybe[unit.Stop]{}, false, false)
}

// statuses are the verdicts of the holes.
func (c Content) statuses() map[string]rules.Status {
	out := make(map[string]rules.Status, len(c.Plan.Holes))
	for _, h := range c.Plan.Holes {
		out[h.ID] = h.Status
	}
	return out
}
