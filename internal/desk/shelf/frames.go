package shelf

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"strings"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/survey/arena"
)

// mostRecaps is how many games' frames, and what they said, are kept ready: some 15 MB for
// a game of 20,000 frames.
const mostRecaps = 4

// Frames is what the desk keeps of what was read of a game's frames.
type Frames struct {
	recap.Readings
	Version revision.Version // its number is 0 where nothing is kept yet
}

// framesID is the id of the readings of a season's game: what of both people can read, and
// a sum that keeps alike names apart.
func framesID(season, game string) string {
	const readable = 48
	id := revision.IDFrom("frames " + season + " " + game)
	sum := sha256.Sum256([]byte(season + "/" + game))
	return strings.Trim(id[:min(len(id), readable)], "-") + "-" + hex.EncodeToString(sum[:4])
}

// Frames returns what is kept of a game's frames. A kept text that no longer reads is an error.
func (s *Shelf) Frames(ctx context.Context, g Games, id string) (f Frames, err error) {
	_, f.Version, err = s.Own(ctx, revision.Frames, framesID(g.Document.ID, id))
	if errors.Is(err, revision.ErrNone) {
		return Frames{}, nil
	}
	if err != nil {
		return f, err
	}
	f.Readings, err = s.readings.get(ctx, arena.Revision([]byte(f.Version.Text)), func(context.Context) (recap.Readings, error) {
		return recap.ReadReadings(f.Version.Document, strings.NewReader(f.Version.Text))
	})
	return f, err
}

// KeepFrames keeps the readings of a file beside those of a game that are kept already, or
// instead of them. Errors are those of [recap.ReadReadings] and of [revision.Keeper], and
// [*form.Problem] for a file without frames and for more than a game may have.
func (s *Shelf) KeepFrames(ctx context.Context, g Games, of game.Game, sent string, instead bool, who string) error {
	const file = "readings.csv"
	read, err := recap.ReadReadings(file, strings.NewReader(sent))
	if err != nil {
		return err
	}
	if len(read.Frames) == 0 {
		return &form.Problem{File: file, Line: 1, Text: "no frame stands in this file; was the right folder read?"}
	}
	id, name := framesID(g.Document.ID, of.ID), g.Season.Name+": frames of "+of.Teams()
	for range mostJoins {
		before, err := s.Frames(ctx, g, of.ID)
		if err != nil {
			return err
		}
		all := read
		if !instead {
			all = before.With(read)
		}
		var text strings.Builder
		if err := all.CSV(&text); err != nil {
			return err
		}
		if len(all.Frames) > recap.MaxFrames || text.Len() > recap.MaxReadings {
			return &form.Problem{File: file, Line: 1, Text: fmt.Sprintf("with these the game has %d frames, %d kB; at most %d and %d kB are kept: leave some out", len(all.Frames), text.Len()/1000, recap.MaxFrames, recap.MaxReadings/1000)}
		}
		if text.String() == before.Version.Text {
			return nil
		}
		next := revision.Draft{At: s.now(), Who: who, What: "readings of " + say.Count(len(read.Frames), "frame") + ", " + fmt.Sprint(len(all.Frames)) + " in all", Text: text.String()}
		if before.Version.Number == 0 {
			_, err = s.keeper.Add(ctx, revision.Frames, id, name, next)
		} else {
			_, err = s.keeper.Save(ctx, id, name, before.Version.Number, next)
		}
		var stale *revision.Stale
		if !errors.Is(err, revision.ErrTaken) && !errors.As(err, &stale) {
			return err
		}
	}
	return revision.ErrDown
}

// Recap is what a game's frames said. Astray is why the frames that shall show the
// scoreboard tell no clock; the answer is then without them.
type Recap struct {
	recap.Answer
	Astray error
}

// Recap answers from what is kept of a game's frames. Seats that nobody gave by hand are
// those of [Shelf.Night]; at a game that cannot be seated there are only those by hand.
func (s *Shelf) Recap(ctx context.Context, g Games, of game.Game, f Frames, o recap.Options) (Recap, error) {
	key := fmt.Sprint(g.key(), of.ID, arena.Revision([]byte(f.Version.Text)), o.KeptFrom, o.Open)
	return s.recaps.get(ctx, key, func(ctx context.Context) (Recap, error) {
		q := recap.About(g.Season, of)
		q.Frames, q.Options = f.Frames, o
		if q.Evening.Unseated(g.Season, of) {
			night, err := s.Night(ctx, g, of.ID)
			switch {
			case ctx.Err() != nil:
				return Recap{}, ctx.Err()
			case err == nil:
				q.Evening = q.Evening.Seated(g.Season, night.Seating)
			}
		}
		_, astray := q.Evening.Clocks(q.Frames, q.Marks)
		if astray != nil {
			q.Marks = nil
		}
		a, err := recap.Ask(ctx, q)
		a.Unread = f.Unread
		return Recap{a, astray}, err
	})
}

// BestBy returns the best sets of holes by what a game's frames said and before, at the
// newest version of the arena that the season fits.
func (s *Shelf) BestBy(ctx context.Context, g Games, l recap.Learnt) (recap.Best, error) {
	key := g.Arena.stamp() + string(l.YAML())
	return s.bests.get(ctx, key, func(ctx context.Context) (recap.Best, error) {
		return l.Choose(ctx, g.Season.Arena, g.Arena.Maker.Rules, g.Season.Kit, recap.BestOptions())
	})
}
