package letter

import (
	"context"
	"errors"
	"fmt"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/answer/gain"
	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// Options are the choices of who writes the letter.
type Options struct {
	Units   unit.System
	Paper   sheet.Paper
	Mark    string // of the arena's text
	Creator string // the program and its version
}

// Content is everything that the letter says.
type Content struct {
	Answer  choose.Answer
	Step    choose.Step // what is asked for
	Gains   []gain.Answer
	Guards  []puck.Guard // of the holes that are open once the step is done
	Options Options
}

// Gather works out what a step of an answer brings and risks. It refuses a step that
// asks for nothing.
func Gather(ctx context.Context, ans choose.Answer, step choose.Step, k kit.Kit, o Options) (Content, error) {
	if len(step.Cut()) == 0 {
		return Content{}, errors.New("nothing to ask for: the step cuts no new hole")
	}
	c := Content{Answer: ans, Step: step, Options: o}
	after := ans.With(step.Holes)
	after.Windows = nil // no part of what is asked
	var err error
	if c.Guards, err = puck.Assess(ctx, after, puck.DefaultOptions()); err != nil {
		return Content{}, err
	}
	return c, c.gain(ctx, after, k)
}

// Asked picks the step that a letter asks for: the best that keeps every hole that is
// cut, or the best of all. It refuses an answer whose steps are not proved.
func Asked(ans choose.Answer, best bool) (choose.Step, error) {
	switch n := len(ans.Ladder); {
	case len(ans.Holes) == 0:
		return choose.Step{}, errors.New("there is no set of holes to ask for")
	case n == 0:
		return choose.Step{}, fmt.Errorf("the steps that a letter tells are not proved (gap %.2f %%): allow the search more time, or fewer moments", 100*ans.Gap())
	case n == 1:
		return choose.Step{}, errors.New("nothing to ask for: no set is worth more than the holes that are cut")
	}
	if keep, ok := ans.Keeping(); ok && !best {
		return keep, nil
	}
	return ans.Ladder[len(ans.Ladder)-1], nil
}

// gain works out what each new hole brings over its pane. A pane whose material
// nobody recorded has no answer.
func (c *Content) gain(ctx context.Context, after arena.Arena, k kit.Kit) error {
	lens, err := k.PickLens("", after.Lenses)
	if err != nil {
		return err
	}
	body, err := k.PickBody(lens.Body)
	if err != nil {
		return err
	}
	use, err := fit.Use(lens, unit.Maybe[unit.Length]{}, unit.Maybe[unit.Stop]{}, false, false)
	if err != nil {
		return err
	}
	moments, err := play.Sample(ctx, after.Rink, after.Playing(), c.Answer.Seed, gain.UsualMoments)
	if err != nil {
		return err
	}
	for _, h := range c.Step.Cut() {
		pane, _ := after.Pane(h.Hole.Pane)
		if _, known := pane.Material.Get(); !known {
			continue
		}
		g, err := gain.Of(after, frame.Request{Hole: h.Hole.ID, Lens: lens, Body: body, Use: use}, moments)
		if err != nil {
			return err
		}
		c.Gains = append(c.Gains, g)
	}
	return nil
}
