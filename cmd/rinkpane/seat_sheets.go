package main

import (
	"cmp"
	"context"
	"fmt"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/draw/card"
	"example.org/rinkpane/internal/draw/sheet"
)

// sheetFlags say where sheets of the seats go.
type sheetFlags struct{ dir, paper string }

func (f *sheetFlags) flags(c *cobra.Command) {
	c.Flags().StringVar(&f.dir, "out", "", "write cards, seat sheets and calendars to this folder")
	c.Flags().StringVar(&f.paper, "paper", "", "with --out: paper to print on, a4 or larger (default: a4 or letter by the units)")
}

// make makes the sheets of the games that were seated: of the one that was asked for, or
// of all.
func (f sheetFlags) make(ctx context.Context, s game.Season, a seat.Answer) ([]outFile, error) {
	if f.dir == "" {
		return nil, nil
	}
	paper, err := sheet.ParsePaper(cmp.Or(f.paper, sheet.UsualPaper(s.Arena.Units)))
	if err != nil {
		return nil, fmt.Errorf("--paper: %w", err)
	}
	rink, err := card.Prepare(ctx, s)
	if err != nil {
		return nil, err
	}
	var nights []card.Night
	for _, n := range a.Season.Nights {
		if g, ok := s.Game(n.Game); ok && (a.Only == "" || a.Only == n.Game) {
			nights = append(nights, card.Night{Game: g, Seats: n.Seats})
		}
	}
	made, err := card.Files(ctx, rink, nights, paper, card.Options{Units: s.Arena.Units, Creator: "rinkpane " + release}, time.Now().UTC())
	files := make([]outFile, len(made))
	for i, m := range made {
		files[i] = outFile{filepath.FromSlash(m.Name), m.Data}
	}
	return files, err
}

// write writes the folder and says so where people read.
func (f sheetFlags) write(a *app, files []outFile, force bool) error {
	if f.dir == "" {
		return nil
	}
	if err := writeFolder(f.dir, files, force); err != nil {
		return err
	}
	fmt.Fprintf(a.err, "%d files in %s%c\n", len(files), f.dir, filepath.Separator)
	return nil
}
