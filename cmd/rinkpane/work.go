package main

import (
	"cmp"
	"context"
	"fmt"
	"log/slog"
	"os"
	"path/filepath"
	"runtime/debug"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/keep/queue"
	"example.org/rinkpane/internal/keep/work"
)

// jobsPlace is where jobs wait and where their files lie, as flags name it.
type jobsPlace struct {
	storePlace
	files string
}

func (p *jobsPlace) flags(c *cobra.Command) {
	c.Flags().StringVar(&p.folder, "data", "", "folder in which jobs are kept (default: rinkpane in the user's data folder)")
	c.Flags().StringVar(&p.dsn, "db", "", "keep jobs in this PostgreSQL database instead, where other machines work them: postgres://user@host/name")
	c.Flags().StringVar(&p.files, "files", "", "where books lie: a folder, or https://HOST/BUCKET that speaks S3 (default: jobs in the folder of --data)")
}

// open opens the queue, and makes the built-in one and its folder when they are absent.
func (p *jobsPlace) open(ctx context.Context, log *slog.Logger) (*queue.Queue, error) {
	folder, err := p.inFolder()
	if err != nil {
		return nil, err
	}
	files, err := queue.OpenFiles(cmp.Or(p.files, filepath.Join(folder, "jobs")), nil)
	if err != nil {
		return nil, fmt.Errorf("--%w", err)
	}
	o := queue.Options{Program: version(), Files: files, Log: log}
	if p.dsn != "" {
		return queue.OpenDSN(ctx, p.dsn, o)
	}
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return nil, fmt.Errorf("--data: %w", plainPathError(err))
	}
	return queue.OpenFolder(ctx, folder, o)
}

func workCommand(a *app) *cobra.Command {
	var place jobsPlace
	var workers int
	var list bool
	var giveUp string
	c := &cobra.Command{
		Use:   "work --db DSN",
		Short: "Work the jobs of a league, beside other machines",
		Long: `Works jobs that rinkpane league asks for, until Ctrl-C: on as many machines as share the
database and the place for files. One job uses all cores of a machine, so that more
workers mostly help while one of them waits. A job at work when the command stops is
given back and costs nothing; one whose machine is switched off is another's after
12 seconds. Jobs of another version of the program are left to that.`,
		Example: `  rinkpane work --db postgres://db.example/rinkpane --files /srv/rinkpane

  # what waits, is at work, or has ended; and one job that nobody wants any more
  rinkpane work --db postgres://db.example/rinkpane --list
  rinkpane work --db postgres://db.example/rinkpane --give-up 1f04c2

  # books in a bucket, two jobs at once
  rinkpane work --db postgres://db.example/rinkpane --files https://s3.example/league --workers 2`,
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if workers < 1 {
				return fmt.Errorf("--workers %d: write a number from 1", workers)
			}
			q, err := place.open(c.Context(), slog.New(slog.NewTextHandler(a.err, &slog.HandlerOptions{Level: slog.LevelWarn})))
			if err != nil {
				return err
			}
			defer q.Close()
			switch {
			case giveUp != "":
				return giveJobUp(c.Context(), a, q, giveUp)
			case list:
				return listJobs(c.Context(), a, q)
			}
			defer debug.SetGCPercent(debug.SetGCPercent(chooseGarbage))
			fmt.Fprintf(a.err, "rinkpane: working jobs of version %s, %d at once; Ctrl-C gives back what is at work\n", version(), workers)
			return q.Work(c.Context(), workers, kinds()...)
		},
	}
	place.flags(c)
	c.Flags().IntVar(&workers, "workers", 1, "how many jobs at once")
	c.Flags().BoolVar(&list, "list", false, "list the jobs that were asked for last, and work none")
	c.Flags().StringVar(&giveUp, "give-up", "", "give up the job whose id begins so, and work none")
	return c
}

// kinds are the kinds of jobs that this program works.
func kinds() []queue.Doer { return work.Kinds("rinkpane " + release) }
