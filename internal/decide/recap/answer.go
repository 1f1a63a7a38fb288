package recap

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/kit"
)

// Answer is all that the frames of a game said.
type Answer struct {
	Evening  Evening
	Arena    arena.Arena
	Clocks   map[string]Clock // by body, of those that the scoreboard told
	Frames   []Matched        // in the order in which they were taken
	Uses     []Use
	ISOs     []AtISO
	Light    []Seen
	Readings []edit.Edit // that note the light, for somebody to accept
	Learnt   Learnt
	Unread   []Unread // files that are no frames, by cause
}

// Unread is how many files are no frames for one cause, with the first of them.
type Unread struct {
	Cause string
	Files int
	First string
}

// Question is what is asked of frames.
type Question struct {
	Arena   arena.Arena
	Kit     kit.Kit
	Evening Evening
	Frames  []Frame
	Marks   []ClockMark
	Owners  map[string]Owner // by body; "" is all others
	Options Options
}

// About returns what a season says of one of its games for the question: the rink, the
// kit, the stages, the seats that it gives by hand, whose bodies are whose, and the frames
// that show the scoreboard.
func About(s game.Season, g game.Game) Question {
	q := Question{Arena: s.Arena, Kit: s.Kit, Evening: EveningOf(s, g), Owners: map[string]Owner{}}
	for _, b := range s.Bodies {
		q.Owners[b.Body] = Owner{Who: b.Who, Hole: b.Hole}
	}
	for _, c := range s.Clocks {
		if c.Game == g.ID {
			q.Marks = append(q.Marks, ClockMark{c.Frame, c.Shown})
		}
	}
	return q
}

// Seated is [About] where seats that nobody gave by hand are those of the season's rule.
// Errors are those of [game.Season.Seated].
func Seated(ctx context.Context, s game.Season, g game.Game) (Question, error) {
	q := About(s, g)
	if !q.Evening.Unseated(s, g) {
		return q, nil
	}
	by, err := s.Seated(ctx, g.ID)
	q.Evening = q.Evening.Seated(s, by)
	return q, err
}

// Ask answers. Errors: a clock mark that tells nothing, ctx's.
func Ask(ctx context.Context, q Question) (Answer, error) {
	clocks, err := q.Evening.Clocks(q.Frames, q.Marks)
	if err != nil {
		return Answer{}, err
	}
	a := Answer{Evening: q.Evening, Arena: q.Arena, Clocks: clocks, Frames: q.Evening.Match(q.Frames, clocks, q.Owners)}
	o, err := Look(ctx, q.Arena, q.Kit, holesOf(a.Frames))
	if err != nil {
		return Answer{}, err
	}
	o.See(a.Frames)
	here := a.Here()
	a.Uses = q.Evening.Used(here, q.Options)
	a.ISOs = ByISO(here, q.Options)
	a.Light = Light(q.Arena, here)
	a.Readings = LightReadings(q.Arena, a.Light)
	a.Learnt = Learn(o, a.Uses)
	return a, nil
}

// Here returns the frames that may be the game's: all, or where its stages are known those
// that were taken in one of them. What is told of the rest is that they are not.
func (a Answer) Here() []Matched {
	if len(a.Evening.Stages) == 0 {
		return a.Frames
	}
	return slices.DeleteFunc(slices.Clone(a.Frames), func(m Matched) bool { return m.Stage == "" })
}

// Lux is the light by the exposures of all frames, in lux.
func (a Answer) Lux() (out Spread) {
	for _, s := range a.Light {
		if s.Stage == "" && s.End == "" {
			out = s.Lux
		}
	}
	return out
}

// holesOf lists the holes that frames were taken through.
func holesOf(frames []Matched) (out []string) {
	for _, m := range frames {
		if !slices.Contains(out, m.Hole) {
			out = append(out, m.Hole)
		}
	}
	return out
}

// Count returns how many frames are matched so surely.
func (a Answer) Count(s Sure) (n int) {
	for _, m := range a.Frames {
		if m.Sure == s {
			n++
		}
	}
	return n
}
