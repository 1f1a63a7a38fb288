package jobs

import (
	"context"
	"errors"
	"net/http"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/queue"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/keep/work"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/words"
)

// asked is one arena of the desk, and what is asked about it.
type asked struct {
	row      league.Row
	question league.Question
}

// arenas are the desk's arenas, newest versions; one that no longer reads has its cause.
func (d area) arenas(ctx context.Context) (out []asked, err error) {
	docs, err := d.Shelf.Keeper().Documents(ctx, revision.Arena, false)
	if err != nil {
		return nil, err
	}
	for _, doc := range docs {
		one := asked{row: league.Row{File: doc.Name}}
		b, err := d.Shelf.Open(ctx, doc.ID, 0)
		if err == nil {
			err = d.open(ctx, b, &one)
		}
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if err != nil {
			one.row.Cause = err.Error()
		}
		out = append(out, one)
	}
	return out, nil
}

func (d area) open(ctx context.Context, b shelf.Book, one *asked) error {
	a, err := b.Arena.Check()
	if err != nil {
		return err
	}
	one.row.Arena = unit.Known(a)
	one.question, err = d.question(ctx, b)
	return err
}

// question is what is asked about an arena: with the kit and the rule sets that it names,
// of the desk's own or the program's, else the desk's usual ones.
func (d area) question(ctx context.Context, b shelf.Book) (q league.Question, err error) {
	q = league.Question{Arena: league.Document{Name: b.Document.ID + ".yaml", Text: b.Version.Text}, Rules: d.Rules, Day: b.Day}
	if id := b.Arena.Value("kit"); id != "" {
		if q.Kit, err = d.own(ctx, revision.Kit, id); err != nil {
			return q, err
		}
	}
	named := b.Arena.Items("rules")
	if len(named) > 0 {
		q.Rules = nil
	}
	for _, at := range named {
		id := b.Arena.Value(at)
		doc, err := d.own(ctx, revision.RuleSet, id)
		if errors.Is(err, revision.ErrNone) {
			_, err = rules.Shipped(id)
			doc = league.Document{Name: id}
		}
		if err != nil {
			return q, err
		}
		q.Rules = append(q.Rules, doc)
	}
	return q, nil
}

func (d area) own(ctx context.Context, kind revision.Kind, id string) (league.Document, error) {
	doc, v, err := d.Shelf.Own(ctx, kind, id)
	if err == nil && doc.Away {
		err = revision.ErrNone
	}
	return league.Document{Name: id + ".yaml", Text: v.Text}, err
}

// league fills in how all arenas compare, as far as they were asked about as they stand.
func (d area) league(ctx context.Context, q *queue.Queue, p *page) error {
	all, err := d.arenas(ctx)
	if err != nil {
		return err
	}
	p.Arenas = len(all)
	at := map[string]*league.Row{}
	var ids []string
	l := league.League{}
	for i := range all {
		if all[i].row.Cause != "" {
			continue
		}
		id, err := work.Choose().ID(q, all[i].question)
		if err != nil {
			return err
		}
		at[id] = &all[i].row
		ids = append(ids, id)
		l.Rules = league.RuleIDs(l.Rules, all[i].question.Rules)
	}
	found, err := q.Pieces(ctx, ids)
	if err != nil {
		return err
	}
	for _, piece := range found {
		p.Asked++
		switch row := at[piece.ID]; piece.State {
		case queue.Done:
			a, err := work.Choose().Answer(ctx, q, piece.ID)
			if err != nil {
				return err
			}
			row.Answer = unit.Known(a)
		case queue.Failed, queue.GivenUp:
			row.Cause = string(piece.State) + ": " + piece.Cause
		default:
			p.Left++
		}
	}
	for _, one := range all {
		_, done := one.row.Answer.Get()
		if a, ok := one.row.Arena.Get(); ok && len(l.Rows) == 0 {
			l.Units = a.Units
		}
		if done || one.row.Cause != "" {
			l.Rows = append(l.Rows, one.row)
		}
	}
	if p.Asked > 0 {
		p.Notes = words.LeagueNotes(l)
		for _, t := range words.LeagueTables(l) {
			p.Tables = append(p.Tables, t.Shown())
		}
	}
	return nil
}

// ask answers POST /jobs.
func (d area) ask(w http.ResponseWriter, r *http.Request) error {
	q, err := d.queue(r.Context())
	if err != nil {
		return noJobs(err)
	}
	all, err := d.arenas(r.Context())
	if err != nil {
		return err
	}
	by := asker(r.Context())
	for _, one := range all {
		if one.row.Cause != "" {
			continue
		}
		if _, err := work.Choose().Ask(r.Context(), q, by, one.row.Name(), one.question); err != nil {
			return err
		}
	}
	return d.Goto(w, r, "/jobs")
}
