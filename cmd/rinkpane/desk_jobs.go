package main

import (
	"context"
	"fmt"
	"log/slog"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"example.org/rinkpane/internal/desk"
	"example.org/rinkpane/internal/desk/jobs"
	"example.org/rinkpane/internal/keep/queue"
)

// deskJobs is how a desk has jobs, beside its store.
type deskJobs struct {
	workers int
	said    func() bool // the user said how many
	files   string
}

func (j *deskJobs) flags(c *cobra.Command) {
	c.Flags().IntVar(&j.workers, "workers", 1, "how many jobs the desk works at once, each on one core; with --db none unless it is said here, since rinkpane work does")
	c.Flags().StringVar(&j.files, "files", "", "where the books of jobs lie, as for rinkpane work")
	j.said = func() bool { return c.Flags().Changed("workers") }
}

func (j *deskJobs) check() error {
	if j.workers < 0 {
		return fmt.Errorf("--workers %d: write a number from 0", j.workers)
	}
	_, err := queue.OpenFiles(j.files, nil)
	if err != nil {
		err = fmt.Errorf("--%w", err)
	}
	return err
}

// jobsOf gives a desk its jobs. They are opened at once where some may be left to
// work, else when somebody first looks at them; that it cannot be opened stops no desk.
func (f *deskFlags) jobsOf(ctx context.Context, o *desk.Options) (err error) {
	if o.Rules, err = ruleDocuments(f.from.ruleNames); err != nil {
		return err
	}
	at := jobsPlace{storePlace: f.place, files: f.jobs.files}
	o.Jobs = &jobs.Backlog{Workers: f.jobs.workers, Kinds: kinds(), Log: o.Log, Open: func(ctx context.Context) (*queue.Queue, error) {
		return at.open(ctx, slog.New(warnings{o.Log.Handler()}))
	}}
	if f.place.dsn != "" && !f.jobs.said() {
		o.Jobs.Workers = 0
	}
	if o.Jobs.Workers > 0 && at.begun() {
		if _, err := o.Jobs.Queue(ctx); err != nil {
			o.Log.Warn("jobs", slog.Any("error", err))
		}
	}
	return nil
}

// begun reports whether somebody may have asked for jobs there.
func (p *jobsPlace) begun() bool {
	if p.dsn != "" {
		return true
	}
	folder, err := p.inFolder()
	if err == nil {
		_, err = os.Stat(filepath.Join(folder, queue.FileName))
	}
	return err == nil
}

// warnings passes on what is a warning or worse: a queue tells of every rest it takes.
type warnings struct{ slog.Handler }

func (w warnings) Enabled(ctx context.Context, l slog.Level) bool {
	return l >= slog.LevelWarn && w.Handler.Enabled(ctx, l)
}

func (w warnings) WithAttrs(a []slog.Attr) slog.Handler { return warnings{w.Handler.WithAttrs(a)} }
func (w warnings) WithGroup(name string) slog.Handler   { return warnings{w.Handler.WithGroup(name)} }
