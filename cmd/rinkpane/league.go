package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"log/slog"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/decide/recap"
	drawn "example.org/rinkpane/internal/draw/league"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

type leagueFlags struct {
	source
	place      jobsPlace
	out        target
	otherRules []string
	paper      string
	workers    int
	moments    int
	games      int
	seed       uint64
}

func leagueCommand(a *app) *cobra.Command {
	var f leagueFlags
	c := &cobra.Command{
		Use:   "league DIR",
		Short: "Check, choose and book every arena of a folder, seat its seasons, and compare them",
		Long: `Answers every arena file of a folder: which rules fail, what its holes are worth today
and at best, the weakest hole, what to cut; and sets each arena's book. With
--other-rules it also tells what the same league is worth under other rule sets, and so
what one costs against the other. A file that cannot be read is a row with its cause.

Each games document of the folder is seated from its first game to its last, as seat
does: requests met, what all had of their best, who has no seat and why; --games draws a
longer season from its games. Readings of a game's frames (recap --readings) that are
called as the game, GAME.csv, are looked back on.

The work is kept as jobs. What was answered once is answered at once the next time;
after Ctrl-C the same command goes on where it was. With --db the jobs wait in a
database, where rinkpane work on other machines takes its share.

Exit 0 when every arena has its answer, 1 when a file or a job failed, 2 on bad input.`,
		Example: `  rinkpane league arenas/ --out league/
  rinkpane league arenas/ --rules common-practice --other-rules international-2014

  # the folder's seasons, each as one of 1312 games
  rinkpane league arenas/ --games 1312

  # three machines: the same database and place for files on each
  rinkpane league arenas/ --db postgres://db.example/rinkpane --files /srv/rinkpane --out league/`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fmt.Errorf("league needs one folder with arena files, as in: %s arenas/", c.CommandPath())
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error { return runLeague(c.Context(), a, args[0], f) },
	}
	f.kitFlag(c)
	f.rulesFlag(c)
	fl := c.Flags()
	fl.StringSliceVar(&f.otherRules, "other-rules", nil, "rule sets under which the league is chosen as well, to tell what --rules cost against them")
	f.out.flags(c, "out", "folder to write the books to: one of each arena, and league.pdf over all")
	fl.StringVar(&f.paper, "paper", "", "paper of the books: a4, letter ... (default: a4, letter in imperial plans)")
	fl.IntVar(&f.moments, "moments", 0, "moments of a game to look at in each arena (default: as for a plan's folder)")
	fl.IntVar(&f.games, "games", 0, "seat each season as one of so many games drawn from its own (default: its own)")
	fl.Uint64Var(&f.seed, "seed", 1, "seed of the games that are drawn")
	fl.IntVar(&f.workers, "workers", 1, "how many jobs this command works at once; 0 leaves them to rinkpane work elsewhere")
	f.place.flags(c)
	return c
}

func (f leagueFlags) sound() error {
	switch {
	case f.workers < 0:
		return fmt.Errorf("--workers %d: write a number from 0", f.workers)
	case f.workers == 0 && f.place.dsn == "":
		return errors.New("--workers 0 needs --db: nobody else works what is kept on this machine")
	case f.moments < 0:
		return fmt.Errorf("--moments %d: write a number from 1", f.moments)
	case f.games < 0 || f.games > most:
		return fmt.Errorf("--games %d: write a number from 1 to %d", f.games, most)
	case slices.Contains(slices.Concat(f.ruleNames, f.otherRules, []string{f.kitPath}), "-"):
		return errors.New("league reads no standard input: name files for --rules, --other-rules and --kit")
	case f.paper != "":
		if _, err := sheet.ParsePaper(f.paper); err != nil {
			return fmt.Errorf("--paper: %w", err)
		}
	}
	return nil
}

func runLeague(ctx context.Context, a *app, dir string, f leagueFlags) error {
	if err := f.sound(); err != nil {
		return err
	}
	files, err := leagueFilesIn(dir)
	if err != nil {
		return err
	}
	run := leagueRun{a: a, f: f}
	if err := run.read(files); err != nil {
		return err
	}
	if run.q, err = f.place.open(ctx, slog.New(slog.DiscardHandler)); err != nil {
		return err
	}
	defer run.q.Close()
	defer debug.SetGCPercent(debug.SetGCPercent(chooseGarbage))
	for _, step := range []func(context.Context) error{run.ask, run.work, run.gather} {
		if err := step(ctx); err != nil {
			return err
		}
	}
	l := run.l
	if l.Units, err = a.system(l.Units); err != nil {
		return err
	}
	names, err := f.write(ctx, l, run.books)
	if err != nil {
		return err
	}
	return a.verdict(l.Whole(), wire.League(l, run.told(), names), func() string {
		text := words.LeagueText(l)
		if len(names) > 0 {
			text += fmt.Sprintf("\nWrote %s%c: %d files, first look at %s\n", f.out.path, filepath.Separator, len(names), leagueFile)
		}
		return text
	})
}

// What the book over all arenas is called, and its file.
const (
	leagueTitle = "The league's arenas"
	leagueFile  = "league.pdf"
)

// bookFile is what an arena's book is called: as its file, whose ending stays where
// another book has the name.
func bookFile(arena string, before []outFile) string {
	name := strings.TrimSuffix(arena, filepath.Ext(arena)) + ".pdf"
	taken := func(w outFile) bool { return strings.EqualFold(w.name, name) }
	if slices.ContainsFunc(append(before, outFile{name: leagueFile}), taken) {
		return arena + ".pdf"
	}
	return name
}

// write writes each arena's book and the one over all.
func (f leagueFlags) write(ctx context.Context, l league.League, books []outFile) (names []string, err error) {
	names = []string{}
	if f.out.path == "" {
		return names, nil
	}
	paper, err := sheet.ParsePaper(cmp.Or(f.paper, sheet.UsualPaper(l.Units)))
	if err != nil {
		return nil, err
	}
	over, _, err := drawn.Book{League: l, Title: leagueTitle, Paper: paper, Creator: "rinkpane " + release}.PDF(ctx)
	if err != nil {
		return nil, err
	}
	files := append(books, outFile{leagueFile, over})
	for _, w := range files {
		names = append(names, w.name)
	}
	return names, writeFolder(f.out.path, files, f.out.force)
}

// leagueFiles are the paths of a folder's files by what they are about.
type leagueFiles struct{ arenas, seasons, looks []string }

// leagueFilesIn lists the files of a folder that a league is about: games documents;
// readings of frames; and YAML files that are no kit, rule set or other document of the
// program's, which are arenas or may have been meant to be.
func leagueFilesIn(dir string) (out leagueFiles, err error) {
	list, err := os.ReadDir(dir)
	if err != nil {
		return out, plainPathError(err)
	}
	for _, e := range list {
		path, end := filepath.Join(dir, e.Name()), strings.ToLower(filepath.Ext(e.Name()))
		if e.IsDir() || !slices.Contains([]string{".yaml", ".yml", ".csv"}, end) {
			continue
		}
		text, err := os.ReadFile(path)
		kind, ok := documentKind(text)
		switch {
		case end == ".csv":
			if recap.AreReadings(text) {
				out.looks = append(out.looks, path)
			}
		case kind == "games":
			out.seasons = append(out.seasons, path)
		case kind == "arena", !ok, err != nil:
			out.arenas = append(out.arenas, path)
		}
	}
	if len(out.arenas)+len(out.seasons) == 0 {
		return out, fmt.Errorf("%s holds no arena file and no games document (.yaml); name the folder in which the league's lie", form.Quote(dir))
	}
	return out, nil
}

// documentKind is what a document says that it is, in its line "rinkpane: arena 1".
func documentKind(text []byte) (kind string, ok bool) {
	for line := range strings.Lines(string(text)) {
		if rest, found := strings.CutPrefix(line, "rinkpane:"); found {
			kind, _, _ = strings.Cut(strings.TrimSpace(rest), " ")
			return strings.Trim(kind, `"'`), true
		}
	}
	return "", false
}
