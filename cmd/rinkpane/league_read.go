package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/keep/work"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// read reads the files and prepares their jobs. A file that cannot be read has its cause.
func (r *leagueRun) read(files leagueFiles) error {
	given, others, err := r.f.given(r.a)
	if err != nil {
		return err
	}
	quiet := *r.a
	quiet.err, quiet.units = io.Discard, ""
	one := leagueReading{leagueRun: r, quiet: &quiet, given: given, others: others}
	r.l.Rows = make([]league.Row, len(files.arenas))
	for i, path := range files.arenas {
		if err := one.arena(path, &r.l.Rows[i]); err != nil {
			return err
		}
	}
	r.l.Seasons = make([]league.Of[league.Played], len(files.seasons))
	for i, path := range files.seasons {
		if err := one.season(path, &r.l.Seasons[i]); err != nil {
			return err
		}
	}
	r.l.Looks = make([]league.Of[league.Looked], len(files.looks))
	for i, path := range files.looks {
		if err := one.look(path, &r.l.Looks[i]); err != nil {
			return err
		}
	}
	return nil
}

// leagueReading is what is known while a league's files are read.
type leagueReading struct {
	*leagueRun
	quiet  *app
	given  league.Question // what flags say of every arena
	others []league.Document
	seated []leagueSeason
}

// leagueSeason is a season that could be read.
type leagueSeason struct {
	league.Season
	games []string // ids
}

func (r *leagueReading) add(j leagueJob) { r.jobs = append(r.jobs, j) }

// failed notes why a file has no answer; the error that stops the command is returned.
func failed(cause *string, err error) error {
	if errors.Is(err, errStopped) {
		return err
	}
	*cause = err.Error()
	return nil
}

// arena reads an arena. Kit and rule sets that no flag names are its own.
func (r *leagueReading) arena(path string, row *league.Row) (err error) {
	row.File = filepath.Base(path)
	s := source{asksKit: r.f.kitPath == "", asksRules: len(r.f.ruleNames) == 0}
	if err := s.open(r.quiet, path); err != nil {
		return failed(&row.Cause, err)
	}
	row.Arena = unit.Known(s.arena)
	if len(r.l.Rules) == 0 {
		r.l.Units = s.arena.Units
	}
	q := r.given
	q.Arena = league.Document{Name: row.File, Text: string(s.doc.Bytes())}
	if s.kitPath != "" {
		if q.Kit, err = document(s.kitPath); err != nil {
			return err
		}
	}
	if s.asksRules {
		if q.Rules, err = ruleDocuments(s.ruleNames); err != nil {
			return err
		}
	}
	r.l.Rules = league.RuleIDs(r.l.Rules, q.Rules)
	r.add(jobOf(work.Choose(), row.Name(), q, &row.Cause, func(a league.Answer) { row.Answer = unit.Known(a) }))
	if len(r.others) > 0 {
		other := q
		other.Rules = r.others
		r.l.Other = league.RuleIDs(r.l.Other, r.others)
		j := jobOf(work.Choose(), row.Name(), other, &row.Cause, func(a league.Answer) { row.Other = unit.Known(a) })
		j.name = "choose-other"
		r.add(j)
	}
	book := len(r.jobs)
	r.add(jobOf(work.Book(""), row.Name(), work.BookQuestion{Question: q, Paper: r.f.paper}, &row.Cause, func(b work.BookAnswer) {
		if row.Pages = b.Pages; b.Without == "" {
			r.set = append(r.set, leagueBook{b, row.File, book})
		}
	}))
	return nil
}

// season reads a games document with all that it names. Rule sets that no flag names are
// its arena's own.
func (r *leagueReading) season(path string, row *league.Of[league.Played]) (err error) {
	row.File = filepath.Base(path)
	q := league.Season{Drawn: r.f.games}
	if q.Drawn > 0 {
		q.Seed = r.f.seed
	}
	s := source{ruleNames: r.f.ruleNames}
	season, err := s.openGames(r.quiet, path, noting(besideGames(path), &q.Beside))
	if err != nil {
		return failed(&row.Cause, err)
	}
	if q.Games, err = document(path); err != nil {
		return err
	}
	if q.Rules, err = ruleDocuments(s.ruleNames); err != nil {
		return err
	}
	known := leagueSeason{Season: q}
	for _, g := range season.Games {
		known.games = append(known.games, g.ID)
	}
	r.seated = append(r.seated, known)
	r.add(jobOf(work.Season(), cmp.Or(season.Name, row.File), q, &row.Cause, func(p league.Played) { row.Answer = unit.Known(p) }))
	return nil
}

// noting opens files and notes what they hold.
func noting(open game.Files, notes *[]league.Document) game.Files {
	return func(path string) (io.ReadCloser, error) {
		f, err := open(path)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		text, err := io.ReadAll(f)
		*notes = append(*notes, league.Document{Name: path, Text: string(text)})
		return io.NopCloser(bytes.NewReader(text)), err
	}
}

// look reads what was read of the frames of a game, which the file is called as.
func (r *leagueReading) look(path string, row *league.Of[league.Looked]) error {
	row.File = filepath.Base(path)
	err := withInput(r.quiet, path, func(name string, in io.Reader) error {
		_, err := recap.ReadReadings(name, in)
		return err
	})
	if err != nil {
		return failed(&row.Cause, err)
	}
	q := league.Look{}
	if q.Readings, err = document(path); err != nil {
		return err
	}
	name := strings.TrimSuffix(row.File, filepath.Ext(row.File))
	for _, s := range r.seated {
		of := strings.TrimSuffix(s.Games.Name, filepath.Ext(s.Games.Name))
		for _, id := range s.games {
			if id != name && of+"."+id != name {
				continue
			}
			if q.Game != "" {
				row.Cause = fmt.Sprintf("several seasons of the folder have a game %s; call the file SEASON.GAME.csv, as %s.%s.csv", id, of, id)
				return nil
			}
			q.Season, q.Game = s.Season, id
		}
	}
	if q.Game == "" {
		row.Cause = fmt.Sprintf("no season of the folder has a game %s; call the file as the game whose frames it tells of: GAME.csv", form.Quote(name))
		return nil
	}
	q.Drawn, q.Seed = 0, 0
	r.add(jobOf(work.Recap(), q.Game+", "+q.Games.Name, q, &row.Cause, func(a league.Looked) { row.Answer = unit.Known(a) }))
	return nil
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
