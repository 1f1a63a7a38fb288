package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/user"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/keep/queue"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/wire"
)

// leagueEntry is one file of a league, what is asked about it, and its jobs.
type leagueEntry struct {
	row             league.Row
	question, other league.Question
	jobs            []leagueJob
}

// leagueJob is a job and what it is called here.
type leagueJob struct {
	kind string // "choose", "choose-other", "book"
	queue.Piece
}

// given is what flags say of every arena, as a question without one, and the other rule
// sets. What they name wrongly is an error.
func (f leagueFlags) given(a *app) (q league.Question, others []league.Document, err error) {
	q = league.Question{Day: time.Now().Format(time.DateOnly), Moments: f.moments}
	if len(f.ruleNames) > 0 {
		if err := f.readRules(a); err != nil {
			return q, nil, err
		}
		if q.Rules, err = ruleDocuments(f.ruleNames); err != nil {
			return q, nil, err
		}
	}
	if len(f.otherRules) > 0 {
		if err := (&source{ruleNames: f.otherRules}).readRules(a); err != nil {
			return q, nil, fmt.Errorf("--other-%s", strings.TrimPrefix(err.Error(), "--"))
		}
		if others, err = ruleDocuments(f.otherRules); err != nil {
			return q, nil, err
		}
	}
	if f.kitPath != "" {
		if err := f.readKit(a); err != nil {
			return q, nil, fmt.Errorf("--kit: %w", err)
		}
		q.Kit, err = document(f.kitPath)
	}
	return q, others, err
}

// entries reads the files. One that cannot be read has its cause. Kit and rule sets that
// no flag names are the arena's own.
func (f leagueFlags) entries(a *app, files []string) (out []*leagueEntry, err error) {
	given, others, err := f.given(a)
	if err != nil {
		return nil, err
	}
	quiet := *a
	quiet.err, quiet.units = io.Discard, ""
	for _, path := range files {
		e := &leagueEntry{row: league.Row{File: filepath.Base(path)}}
		out = append(out, e)
		s := source{asksKit: f.kitPath == "", asksRules: len(f.ruleNames) == 0}
		if err := s.open(&quiet, path); err != nil {
			if errors.Is(err, errStopped) {
				return nil, err
			}
			e.row.Cause = err.Error()
			continue
		}
		e.row.Arena = unit.Known(s.arena)
		e.question = given
		e.question.Arena = league.Document{Name: e.row.File, Text: string(s.doc.Bytes())}
		if s.kitPath != "" {
			if e.question.Kit, err = document(s.kitPath); err != nil {
				return nil, err
			}
		}
		if s.asksRules {
			if e.question.Rules, err = ruleDocuments(s.ruleNames); err != nil {
				return nil, err
			}
		}
		e.other = e.question
		e.other.Rules = others
	}
	return out, nil
}

// document reads a file whole.
func document(path string) (league.Document, error) {
	text, err := os.ReadFile(path)
	return league.Document{Name: filepath.Base(path), Text: string(text)}, plainPathError(err)
}

// ruleDocuments are the texts of rule sets, without that of those that the program carries.
func ruleDocuments(names []string) (out []league.Document, err error) {
	if len(names) == 0 {
		names = []string{rules.Default}
	}
	for _, n := range names {
		d := league.Document{Name: strings.TrimSpace(n)}
		if _, err := rules.Shipped(d.Name); err != nil {
			if d, err = document(d.Name); err != nil {
				return nil, err
			}
		}
		out = append(out, d)
	}
	return out, nil
}

// leagueRun is one run of the command.
type leagueRun struct {
	a       *app
	q       *queue.Queue
	f       leagueFlags
	entries []*leagueEntry
}

// owner is for whom jobs are asked, where several people share a database.
func owner() string {
	if u, err := user.Current(); err == nil {
		return u.Username
	}
	return ""
}

// ask asks for the jobs of every file that can be read.
func (r leagueRun) ask(ctx context.Context) error {
	by := queue.Asker{Owner: owner()}
	for _, e := range r.entries {
		if e.row.Cause != "" {
			continue
		}
		add := func(kind string, p queue.Piece, err error) error {
			e.jobs = append(e.jobs, leagueJob{kind, p})
			return err
		}
		p, err := chooseKind().Ask(ctx, r.q, by, e.row.Name(), e.question)
		if err := add("choose", p, err); err != nil {
			return err
		}
		if len(r.f.otherRules) > 0 {
			p, err := chooseKind().Ask(ctx, r.q, by, e.row.Name(), e.other)
			if err := add("choose-other", p, err); err != nil {
				return err
			}
		}
		p, err = bookKind().Ask(ctx, r.q, by, e.row.Name(), bookQuestion{e.question, r.f.paper})
		if err := add("book", p, err); err != nil {
			return err
		}
	}
	return nil
}

// How often the jobs are looked at, and how long a database may be away meanwhile.
const (
	jobsEvery = 250 * time.Millisecond
	jobsAway  = 2 * time.Minute
)

// work works jobs, if this command is to, and tells how far they are until all have ended.
func (r leagueRun) work(ctx context.Context) error {
	working, stop := context.WithCancel(ctx)
	ended := make(chan error, 1)
	if r.f.workers > 0 {
		go func() { ended <- r.q.Work(working, r.f.workers, kinds()...) }()
	} else {
		ended <- nil
	}
	err := r.await(ctx)
	stop()
	return errors.Join(err, <-ended)
}

// await looks at the jobs until all have ended.
func (r leagueRun) await(ctx context.Context) error {
	bar := newProgress(r.a.err)
	defer bar.end()
	tick := time.NewTicker(jobsEvery)
	defer tick.Stop()
	begun, answered := time.Now(), time.Now()
	first := -1
	for {
		err := r.look(ctx)
		switch {
		case ctx.Err() != nil:
			return r.stopped()
		case errors.Is(err, revision.ErrDown) && time.Since(answered) < jobsAway:
		case err != nil:
			return err
		default:
			answered = time.Now()
		}
		left, all, now := r.left()
		if left == 0 && err == nil {
			return nil
		}
		if first < 0 {
			first = left
		}
		bar.tell(choose.Report{Stage: leftWords(left, all, first, time.Since(begun)) + now, Share: float64(all-left) / float64(all)})
		select {
		case <-tick.C:
		case <-ctx.Done():
			return r.stopped()
		}
	}
}

// stopped says that nothing is lost.
func (r leagueRun) stopped() error {
	left, all, _ := r.left()
	return fmt.Errorf("stopped with %d of %d jobs left; the same command goes on from there", left, all)
}

// look asks how far the jobs are.
func (r leagueRun) look(ctx context.Context) error {
	at := map[string][]*leagueJob{}
	var ids []string
	for _, e := range r.entries {
		for i := range e.jobs {
			if j := &e.jobs[i]; !j.State.Ended() {
				at[j.ID] = append(at[j.ID], j)
				ids = append(ids, j.ID)
			}
		}
	}
	found, err := r.q.Pieces(ctx, ids)
	for _, p := range found {
		for _, j := range at[p.ID] {
			j.Piece = p
		}
	}
	return err
}

// left counts the jobs that have not ended, and names one that is at work.
func (r leagueRun) left() (left, all int, now string) {
	for _, e := range r.entries {
		for _, j := range e.jobs {
			all++
			if !j.State.Ended() {
				left++
			}
			if j.State == queue.AtWork {
				now = fmt.Sprintf("; %s %s", j.kind, e.row.Name())
			}
		}
	}
	return left, all, now
}

// leftWords says how many jobs are left, and about for how long once that can be told.
func leftWords(left, all, first int, since time.Duration) string {
	words := fmt.Sprintf("%d of %d jobs left", left, all)
	if done := first - left; done > 0 && left > 0 {
		words += fmt.Sprintf(", about %v", (since / time.Duration(done) * time.Duration(left)).Round(time.Second))
	}
	return words
}

// gather reads the answers, and the books if they are asked for.
func (r leagueRun) gather(ctx context.Context) (l league.League, books []outFile, err error) {
	for _, e := range r.entries {
		for _, j := range e.jobs {
			if j.State != queue.Done {
				e.row.Cause = fmt.Sprintf("%s %s: %s", j.kind, j.State, cmp.Or(j.Cause, "by hand"))
				continue
			}
			switch j.kind {
			case "choose":
				a, err := chooseKind().Answer(ctx, r.q, j.ID)
				if err != nil {
					return l, nil, err
				}
				e.row.Answer = unit.Known(a)
			case "choose-other":
				a, err := chooseKind().Answer(ctx, r.q, j.ID)
				if err != nil {
					return l, nil, err
				}
				e.row.Other = unit.Known(a)
			case "book":
				b, err := bookKind().Answer(ctx, r.q, j.ID)
				if err != nil {
					return l, nil, err
				}
				e.row.Pages = b.Pages
				if r.f.out.path == "" || b.Without != "" {
					continue
				}
				data, err := r.q.Files.Get(ctx, b.File)
				if err != nil {
					return l, nil, err
				}
				books = append(books, outFile{bookFile(e.row.File, books), data})
			}
		}
		if a, ok := e.row.Arena.Get(); ok && len(l.Rules) == 0 {
			l.Units = a.Units
		}
		l.Rows = append(l.Rows, e.row)
		l.Rules, l.Other = ruleIDs(l.Rules, e.question.Rules), ruleIDs(l.Other, e.other.Rules)
	}
	return l, books, nil
}

// ruleIDs adds the names of rule sets, each once.
func ruleIDs(list []string, docs []league.Document) []string {
	for _, d := range docs {
		name := strings.TrimSuffix(d.Name, filepath.Ext(d.Name))
		if !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	return list
}

// jobs are the jobs as scripts read them.
func (r leagueRun) jobs() []wire.LeagueJob {
	out := []wire.LeagueJob{}
	for _, e := range r.entries {
		for _, j := range e.jobs {
			out = append(out, wire.LeagueJob{ID: j.ID, Arena: e.row.Name(), Kind: j.kind, State: string(j.State), Cause: j.Cause})
		}
	}
	return out
}
