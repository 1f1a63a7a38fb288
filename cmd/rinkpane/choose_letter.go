package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/draw/letter"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/arena"
)

// letterFlags ask for the page for the rink's manager.
type letterFlags struct {
	target
	paper string
	best  bool
}

func (f *letterFlags) flags(c *cobra.Command) {
	fl := c.Flags()
	fl.StringVar(&f.path, "letter", "", "PDF to write: one page that asks the rink's manager for the best step that keeps every hole")
	fl.BoolVar(&f.best, "letter-best", false, "let --letter ask for the best set though it gives holes up")
	fl.StringVar(&f.paper, "paper", "", "paper of --letter: a4, letter ... (default: a4, letter in imperial plans)")
}

// check says before the work what cannot be written.
func (f *letterFlags) check(force, plain bool) error {
	f.flag, f.force = "letter", force
	if f.path == "" {
		if f.best || f.paper != "" {
			return errors.New("--letter-best and --paper belong to --letter; name the file with it")
		}
		return nil
	}
	if plain {
		return errors.New("--letter tells the steps that --plain leaves out; leave one of them out")
	}
	if f.paper != "" {
		paper, err := sheet.ParsePaper(f.paper)
		if err == nil {
			err = letter.Room(paper)
		}
		if err != nil {
			return fmt.Errorf("--paper: %w", err)
		}
	}
	return f.may(".pdf")
}

// send writes the letter, when one is asked for.
func (f letterFlags) send(ctx context.Context, a *app, ans choose.Answer, s *source) error {
	if f.path == "" || len(ans.Holes) == 0 {
		return nil
	}
	print, err := f.page(ctx, ans, s)
	if err != nil {
		return fmt.Errorf("--letter: %w", err)
	}
	lacking(a, print.Lack)
	return f.write(print.Data)
}

func (f letterFlags) page(ctx context.Context, ans choose.Answer, s *source) (letter.Print, error) {
	paper, err := sheet.ParsePaper(cmp.Or(f.paper, sheet.UsualPaper(s.arena.Units)))
	if err != nil {
		return letter.Print{}, err
	}
	step, err := letter.Asked(ans, f.best)
	if err != nil {
		return letter.Print{}, err
	}
	content, err := letter.Gather(ctx, ans, step, s.Kit, letter.Options{
		Units: s.arena.Units, Paper: paper, Mark: arena.Mark(s.doc.Bytes()), Creator: "rinkpane " + release,
	})
	if err != nil {
		return letter.Print{}, err
	}
	return content.PDF(ctx)
}
