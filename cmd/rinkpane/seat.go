package main

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// seatFlags are the flags of command seat.
type seatFlags struct {
	source
	game      string
	season    bool
	games     int
	seed      uint64
	fix, wish []string
	plot      target
	changed   string
	sheets    sheetFlags
}

func seatCommand(a *app) *cobra.Command {
	var f seatFlags
	c := &cobra.Command{
		Use:   "seat GAMES",
		Short: "Say who works which hole at each game, provably the best and fair over the season",
		Long: `Reads a games document: who asks for which games, whom they follow and with which
lenses. Each game gets the seating that is worth most to all together, each one's share
of the best that they could have had alone; who is a night behind by the season's ledger
counts double. Firm requests go before every wish, seats given by hand stay, late requests
take what is left. Every seating is proved. --game tells one game: shares, why somebody has
no seat, the next best seating, and with --wish what a wish would cost whom. --season
tells the ledger, how even the season is beside first come, first served and a lottery,
and how even any rule could be.`,
		Example: "  rinkpane seat games.yaml --out sheets\n" +
			"  rinkpane seat games.yaml --game g12 --wish 'ann B1'\n" +
			"  rinkpane seat games.yaml --season --games 1312 --plot season.svg",
		Args: oneGames,
		RunE: func(c *cobra.Command, args []string) error { return runSeat(c.Context(), a, args[0], f) },
	}
	fl := c.Flags()
	fl.StringVar(&f.game, "game", "", "tell one game, by its id")
	fl.BoolVar(&f.season, "season", false, "tell the ledger, and how even the season is by this and other rules")
	fl.IntVar(&f.games, "games", 0, "with --season: a season of so many games drawn from the document's (default: its own)")
	fl.Uint64Var(&f.seed, "seed", 1, "seed of what is drawn: the lottery, and the games of --games")
	fl.StringArrayVar(&f.fix, "fix", nil, "with --game: give a seat by hand, as 'ann B1' or 'ann B1 2' for period 2; repeat it for more")
	fl.StringArrayVar(&f.wish, "wish", nil, "with --game: say what a seat would cost the others, written as for --fix; with --season: what it costs to have it in every game")
	fl.StringVar(&f.changed, "changed", "", "list the seats that a changed plan of the arena, in this file, touches: nothing is moved")
	f.rulesFlag(c)
	f.sheets.flags(c)
	f.plot.flags(c, "plot", "with --season: draw the shares game by game to this file (.svg or .png)")
	return c
}

func oneGames(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("%d arguments; name one games document, as in: rinkpane seat games.yaml", len(args))
	}
	return nil
}

// most is how many games may be drawn.
const most = 20_000

// sound refuses flags that do not go together.
func (f seatFlags) sound() error {
	switch {
	case f.season && f.game != "":
		return errors.New("--season and --game together: one tells all games, the other one")
	case f.game == "" && len(f.fix) > 0, f.game == "" && !f.season && len(f.wish) > 0:
		return errors.New("--fix needs --game, and --wish --game or --season")
	case !f.season && (f.games != 0 || f.plot.path != ""):
		return errors.New("--games and --plot need --season")
	case f.games != 0 && f.sheets.dir != "":
		return errors.New("--games and --out together: drawn games are not played, and nobody needs a card")
	case f.games < 0 || f.games > most:
		return fmt.Errorf("--games %d: write a number from 1 to %d", f.games, most)
	}
	return f.plot.may(".svg", ".png")
}

func runSeat(ctx context.Context, a *app, path string, f seatFlags) error {
	if err := f.sound(); err != nil {
		return err
	}
	season, err := f.openGames(a, path, besideGames(path))
	if err != nil {
		return err
	}
	q, fixed, err := f.question(season)
	if err != nil {
		return err
	}
	ctx, done := a.watched(ctx)
	defer done()
	table, err := season.Score(ctx)
	if err != nil {
		return err
	}
	for _, s := range fixed {
		season.Fixed = append(season.Fixed, game.Fixed{Game: f.game, Who: s.Who, Hole: s.Hole, Periods: []int{s.Period}})
	}
	nights, err := f.nights(season, table, q)
	if err != nil {
		return err
	}
	answer, err := seat.Solve(ctx, nights, q)
	if err != nil {
		return err
	}
	if f.changed != "" {
		if err := f.touch(a, season, &answer); err != nil {
			return err
		}
	}
	made, err := f.sheets.make(ctx, season, answer)
	if err != nil {
		return err
	}
	done()
	if err := f.sheets.write(a, made, f.plot.force); err != nil {
		return err
	}
	if f.plot.path != "" {
		if err := f.plot.draw(a, chart.Shares(slices.Concat([]seat.Season{answer.Season}, answer.Compare)).Draw(plotWidthMM, plotHeightMM)); err != nil {
			return err
		}
	}
	return a.print(wire.Seats(answer), func() string { return words.SeatsText(answer, season.Arena.Units) })
}

// The plot's size in millimetres.
const (
	plotWidthMM  = 220
	plotHeightMM = 130
)

// question reads what flags ask of a season, and what seats they give by hand.
func (f seatFlags) question(s game.Season) (q seat.Question, fixed []seat.Seat, err error) {
	q = seat.Question{Only: f.game, Compare: f.season, Seed: f.seed}
	if f.game == "" {
		q.Wish, err = f.wishes(s)
		return q, nil, err
	}
	g, err := pickGame(s, "", f.game)
	if err != nil {
		return q, nil, err
	}
	if g.Off {
		return q, nil, fmt.Errorf("--game %s is called off: nobody is seated", form.Quote(g.ID))
	}
	if q.Wish, err = readSeats(s.Holes, g, s.Asks(g), "wish", f.wish); err == nil {
		fixed, err = readSeats(s.Holes, g, s.Asks(g), "fix", f.fix)
	}
	return q, fixed, err
}

// nights lays out the games that are played.
func (f seatFlags) nights(s game.Season, t *game.Table, q seat.Question) (nights []seat.Night, err error) {
	for _, g := range s.Games {
		if g.Off {
			continue
		}
		n := s.Night(t, g)
		if g.ID == f.game {
			for _, w := range slices.Concat(n.Fixed, q.Wish) {
				if err := possible(s, t, g, w); err != nil {
					return nil, err
				}
			}
		}
		nights = append(nights, n)
	}
	if f.games > 0 && len(nights) > 0 {
		nights = seat.Drawn(nights, f.games, f.seed)
	}
	return nights, nil
}

// possible refuses a seat that cannot be, and says why.
func possible(s game.Season, t *game.Table, g game.Game, w seat.Seat) error {
	for _, ask := range s.Asks(g) {
		if ask.ID != w.Who {
			continue
		}
		if why := s.Worth(t, g, ask, w.Period, w.Hole).Barred; !why.IsZero() {
			return fmt.Errorf("game %s, period %d: %s cannot be given hole %s: %s; give another", form.Quote(g.ID), w.Period, form.Quote(w.Who), w.Hole, why.In(s.Arena.Units))
		}
	}
	return nil
}
