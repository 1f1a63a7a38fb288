package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/draw/lookback"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

type recapFlags struct {
	source
	store storePlace

	game, games, arena, journal, learn, accept, paper string
	readings                                          target
	covers                                            string
	clocks, bodies                                    []string
	stars                                             int
	sidecars, best                                    bool
	out                                               target
}

func recapCommand(a *app) *cobra.Command {
	var f recapFlags
	c := &cobra.Command{
		Use:   "recap DIR|READINGS.csv",
		Short: "See from a game's frames which hole gave what, in which light",
		Long: `Reads how the frames in folders were taken (JPEG, HEIF, raw files, XMP sidecars) and
changes none of them. Each is matched to a stage of the game and a hole by its time, the
seats in the games document, and whose body it is. Told are focal lengths, shutter,
stop, ISO, keepers with their exact intervals, blur, the light by exposures beside the
survey, plan against fact, and what that says about moments.

--readings writes what was read, a frame a line, so that a desk, or this command on
another machine, tells the same without the pictures.`,
		Example: `  # the seats are in the games document; two bodies are Ada's
  rinkpane recap card/ --games season.yaml --game g12 --body 0042=ada --body 0043=ada \
    --clock DSC_0815.JPG=2/12:34 --out g12.pdf --learn learnt.yaml

  # on the photographer's machine, for the game's page on a desk; and again without the card
  rinkpane recap card/ --readings g12.csv
  rinkpane recap g12.csv --games season.yaml --game g12 --body "*=ada"

  # no document: all frames were taken through one hole
  rinkpane recap card/ --arena my.yaml --body "*=:B1"`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return fmt.Errorf("recap needs a folder of frames, as in: %s card/ --games season.yaml --game g12", c.CommandPath())
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error { return runRecap(c.Context(), a, args, f) },
	}
	fl := c.Flags()
	fl.StringVar(&f.game, "game", "", "the game, by its id in the games document (default: its only one), or a document that has one")
	fl.StringVar(&f.games, "games", "", "games document with the game, its seats and its arena")
	fl.StringVar(&f.arena, "arena", "", "arena file, when there is no games document")
	f.kitFlag(c)
	fl.StringVar(&f.covers, "covers", "", "the arena's id on the desk: keepers are told per minute that its covers were out, too")
	f.store.flags(c)
	fl.StringArrayVar(&f.clocks, "clock", nil, "a frame that shows the scoreboard: FILE=PERIOD/MM:SS left, or FILE=HH:MM:SS of the day; repeat it for other bodies, or for one body's drift")
	fl.StringArrayVar(&f.bodies, "body", nil, "whose a body is, by serial number or model: BODY=WHO, BODY=WHO:HOLE or BODY=:HOLE; * is all others; repeat it")
	fl.IntVar(&f.stars, "stars", 1, "from how many stars a frame is a keeper")
	fl.StringVar(&f.journal, "journal", "", "file that keeps what was read, so that a run that was stopped goes on")
	f.readings.flag = "readings"
	fl.StringVar(&f.readings.path, "readings", "", "write what was read of the frames to this file (.csv), to tell the same again without the pictures")
	f.out.flags(c, "out", "write the report with its plots to this file (.pdf)")
	fl.StringVar(&f.paper, "paper", "", "paper of the report: a4, letter ... (default: a4, letter in imperial plans)")
	fl.StringVar(&f.learn, "learn", "", "write the assumptions that the frames suggest to this file (.yaml), for choose --play")
	fl.BoolVar(&f.best, "best", false, "tell the best legal set of holes by the assumptions that the frames suggest, beside the one by those of before")
	fl.StringVar(&f.accept, "accept-light", "", "write the arena with the light by exposures among its readings to this file (.yaml)")
	fl.BoolVar(&f.sidecars, "write-sidecars", false, "write a caption beside each matched frame as XMP; one that exists is never replaced")
	return c
}

func runRecap(ctx context.Context, a *app, dirs []string, f recapFlags) error {
	f.readings.force = f.out.force
	learn, accept := target{flag: "learn", path: f.learn, force: f.out.force}, target{flag: "accept-light", path: f.accept, force: f.out.force}
	if err := errors.Join(f.out.may(".pdf"), f.readings.may(".csv"), learn.may(".yaml", ".yml"), accept.may(".yaml", ".yml")); err != nil {
		return err
	}
	q, err := f.question(ctx, a)
	if err != nil {
		return err
	}
	paper, err := sheet.ParsePaper(cmp.Or(f.paper, sheet.UsualPaper(f.source.arena.Units)))
	if err != nil {
		return fmt.Errorf("--paper: %w", err)
	}
	watched, done := a.watched(ctx)
	read, err := f.read(watched, a, dirs)
	if err == nil {
		err = f.readings.writeBy(read.CSV)
	}
	if err != nil {
		done()
		return err
	}
	q.Frames = read.Frames
	got, err := recap.Ask(watched, q)
	done()
	if err != nil {
		return fmt.Errorf("--clock: %w", err)
	}
	got.Unread = read.Unread
	if err := f.write(ctx, got, learn, accept, paper); err != nil {
		return err
	}
	if !f.best {
		return a.print(wire.Recap(got), func() string { return words.RecapText(got, f.source.arena.Units) })
	}
	best, err := f.bestBy(ctx, a, got.Learnt)
	if err != nil {
		return fmt.Errorf("--best: %w", err)
	}
	return a.print(append(wire.Recap(got), wire.RecapBest(best, f.source.arena.Units)...), func() string {
		return words.RecapText(got, f.source.arena.Units) + words.RecapBestText(best, f.source.arena.Units)
	})
}

// errLearnt says that frames told nothing about moments.
var errLearnt = errors.New("no frame is matched to a hole that somebody worked, so nothing is learnt")

// bestBy chooses by what was learnt, and by what was assumed before.
func (f recapFlags) bestBy(ctx context.Context, a *app, l recap.Learnt) (recap.Best, error) {
	if l.Bursts == 0 {
		return recap.Best{}, errLearnt
	}
	watched, done := a.watched(ctx)
	defer done()
	return l.Choose(watched, f.source.arena, f.Rules, f.Kit, recap.BestOptions())
}

// write writes the files that are asked for.
func (f recapFlags) write(ctx context.Context, got recap.Answer, learn, accept target, paper sheet.Paper) error {
	if f.out.path != "" {
		pdf, err := lookback.Report{Answer: got, Units: f.source.arena.Units, Paper: paper, Creator: "rinkpane " + release}.PDF(ctx)
		if err == nil {
			err = f.out.write(pdf)
		}
		if err != nil {
			return err
		}
	}
	if f.accept != "" {
		if len(got.Readings) == 0 {
			return errors.New("--accept-light: too few frames of either end tell the light")
		}
		doc, _, err := edit.Editor{}.Apply(f.doc, got.Readings)
		if err == nil {
			err = accept.write(doc.Bytes())
		}
		if err != nil {
			return fmt.Errorf("--accept-light: %w", err)
		}
	}
	if f.learn != "" {
		if got.Learnt.Bursts == 0 {
			return fmt.Errorf("--learn: %w", errLearnt)
		}
		if err := learn.write(got.Learnt.YAML()); err != nil {
			return err
		}
	}
	if f.sidecars {
		return writeSidecars(got.Evening.Sidecars(got.Frames))
	}
	return nil
}

// writeSidecars writes captions; what exists already is passed over.
func writeSidecars(list []recap.Sidecar) error {
	var files []outFile
	for _, s := range list {
		if _, err := os.Lstat(s.Path); err == nil || slices.ContainsFunc(files, func(f outFile) bool { return f.name == s.Path }) {
			continue
		}
		files = append(files, outFile{s.Path, s.Data})
	}
	return writeFiles(files, false)
}

// question gathers what is asked from the flags and the documents that they name.
func (f *recapFlags) question(ctx context.Context, a *app) (q recap.Question, err error) {
	q.Options = recap.Options{KeptFrom: f.stars}
	if f.stars < 1 || f.stars > 5 {
		return q, fmt.Errorf("--stars %d: write 1 to 5", f.stars)
	}
	if q.Marks, err = clockMarks(f.clocks); err != nil {
		return q, err
	}
	if q.Owners, err = owners(f.bodies); err != nil {
		return q, err
	}
	if info, err := os.Stat(f.game); f.games == "" && f.game != "" {
		if err != nil || info.IsDir() {
			return q, errors.New("--game needs --games, the document that has the game")
		}
		f.games, f.game = f.game, "" // a document with one game
	}
	if f.games != "" && f.arena != "" {
		return q, errors.New("--games and --arena together: the games document names its arena")
	}
	if f.covers != "" && f.games == "" {
		return q, errors.New("--covers needs --games: the game's times say for how long")
	}
	f.asksRules = f.best
	switch {
	case f.games == "" && f.arena == "": // what needs no rink is told
		f.source.arena.Units, err = a.system(unit.Metric)
		q.Arena = f.source.arena
		return q, err
	case f.games == "":
		err = f.open(a, f.arena)
		q.Arena, q.Kit = f.source.arena, f.Kit
		return q, err
	}
	season, g, err := f.season(a)
	if err != nil {
		return q, err
	}
	known, err := recap.Seated(ctx, season, g)
	if err != nil {
		return q, err
	}
	maps.Copy(known.Owners, q.Owners)
	known.Marks, known.Options = append(known.Marks, q.Marks...), q.Options
	q = known
	if f.covers != "" {
		if q.Options.Open, err = f.opened(ctx, q.Evening); err != nil {
			return q, fmt.Errorf("--covers: %w", err)
		}
	}
	f.source.arena = season.Arena
	f.source.arena.Units, err = a.system(season.Arena.Units)
	return q, err
}

// opened reads from the desk's store how long each hole was open.
func (f *recapFlags) opened(ctx context.Context, e recap.Evening) (map[string]time.Duration, error) {
	kept, err := f.store.look(ctx)
	if err != nil {
		return nil, err
	}
	defer kept.Close()
	h, err := custody.ReadHistory(ctx, kept, f.covers)
	if err != nil {
		return nil, err
	}
	if len(h) == 0 {
		return nil, fmt.Errorf("nothing is kept about %s; see rinkpane covers for the arenas' ids", form.Quote(f.covers))
	}
	return e.Open(h, time.Local), nil
}

// season reads the games document and picks the game.
func (f *recapFlags) season(a *app) (s game.Season, g game.Game, err error) {
	var from source
	if s, err = from.openGames(a, f.games, besideGames(f.games)); err == nil {
		f.Rules, f.Kit = from.Rules, s.Kit
		g, err = pickGame(s, f.games, f.game)
	}
	return s, g, err
}

// owners reads BODY=WHO:HOLE.
func owners(list []string) (map[string]recap.Owner, error) {
	out := map[string]recap.Owner{}
	for _, s := range list {
		body, of, ok := strings.Cut(s, "=")
		who, hole, _ := strings.Cut(of, ":")
		if !ok || body == "" || who == "" && hole == "" {
			return nil, fmt.Errorf("--body %s: write BODY=WHO, BODY=WHO:HOLE or BODY=:HOLE", form.Quote(s))
		}
		if body == "*" {
			body = ""
		}
		out[body] = recap.Owner{Who: who, Hole: hole}
	}
	return out, nil
}
