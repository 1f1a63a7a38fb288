package queue

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/riverqueue/river"
	"github.com/riverqueue/river/rivertype"

	"example.org/rinkpane/internal/keep/store"
)

// Asker is who asks.
type Asker struct {
	Owner string // "" where nobody signs in
	Waits bool   // somebody sits there and waits: the piece goes before those that nobody waits for
}

// State is how far a piece is.
type State string

// The states of a piece. The last three are ends; a piece that failed or was given up is
// begun anew when it is asked for again.
const (
	Waiting State = "waiting"
	AtWork  State = "at work"
	Done    State = "done"
	Failed  State = "failed"
	GivenUp State = "given up"
)

// Ended reports whether nothing more is done.
func (s State) Ended() bool { return s != Waiting && s != AtWork }

// Piece is one piece of work that was asked for.
type Piece struct {
	ID          string // SHA-256 of its question, in hexadecimal
	Kind, About string
	Owner       string
	State       State
	Stage       string  // of the work, "" before the first report
	Share       float64 // of the stage that is done, from 0 to 1
	Cause       string  // why the last try failed, "" when none did
	Tries       int     // begun so far
	// When it was asked for first, when its last try began, and when its answer came; zero
	// for what has not happened, or happened under an earlier program.
	Asked, Begun, Answered time.Time

	job int64
}

// Took is how long the work took, or has taken so far; 0 where nobody knows.
func (p Piece) Took(now time.Time) time.Duration {
	switch {
	case p.Begun.IsZero():
		return 0
	case p.State == AtWork:
		return max(0, now.Sub(p.Begun))
	}
	return max(0, p.Answered.Sub(p.Begun))
}

// ErrNone is returned for a piece that nobody asked for, or an answer that is not there yet.
var ErrNone = errors.New("no such job, or it is not done yet")

// args is what River keeps of a piece: everything else stands in the table of pieces.
type args struct {
	Piece string `json:"piece" river:"unique"`
}

func (args) Kind() string { return "piece" }

// tries is how often a piece is begun before it has failed; own choice. A worker that is
// killed costs a try, since the piece may be what kills it.
const tries = 20

// errorTries is how often a piece may fail by an error of its own; own choice.
const errorTries = 4

// The priorities of River, 1 first.
const (
	waitedFor = 1
	usual     = 2
)

// ask keeps a question unless it is kept already, and has it worked unless it is done,
// waits or is at work. A crash in between leaves a piece that the next ask mends.
func (q *Queue) ask(ctx context.Context, by Asker, p Piece, question []byte) (Piece, error) {
	_, err := q.db.ExecContext(ctx, `INSERT INTO piece (id, kind, about, owner, question, asked_us) VALUES ($1, $2, $3, $4, $5, $6) ON CONFLICT (id) DO NOTHING`,
		p.ID, p.Kind, p.About, p.Owner, string(question), time.Now().UnixMicro())
	if err != nil {
		return p, store.Plain(err)
	}
	kept, err := q.Piece(ctx, p.ID)
	if err != nil || kept.State == Done || kept.job != 0 && !kept.State.Ended() {
		return kept, err
	}
	// What is left of an earlier try goes first: a worker may begin before this returns.
	if err := q.set(ctx, `job = 0, cause = '', stage = '', share = 0, failures = 0, given_up = 0`, p.ID); err != nil {
		return kept, err
	}
	tag, err := q.nextTag(ctx, by.Owner)
	if err != nil {
		return kept, err
	}
	o := &river.InsertOpts{MaxAttempts: tries, Priority: usual, Queue: q.line(by.Waits), UniqueOpts: river.UniqueOpts{ByArgs: true, ByState: notOver()}}
	if by.Waits {
		o.Priority = waitedFor
	}
	got, err := q.asks.Insert(context.WithValue(ctx, tagKey{}, tag), args{p.ID}, o)
	if err != nil {
		return kept, store.Plain(err)
	}
	kept.job, kept.State, kept.Cause = got.Job.ID, Waiting, ""
	return kept, q.set(ctx, `job = $2`, p.ID, got.Job.ID)
}

// notOver are River's states of a job that is not over: a piece has one such job at most. By
// default a job that is done would be in the way of one for an answer that was forgotten.
func notOver() []rivertype.JobState {
	return []rivertype.JobState{rivertype.JobStateAvailable, rivertype.JobStatePending, rivertype.JobStateRetryable, rivertype.JobStateRunning, rivertype.JobStateScheduled}
}

// Forget takes a piece's answer away: what it names is gone. Asked for again, the piece is
// worked again.
func (q *Queue) Forget(ctx context.Context, id string) error {
	_, err := q.db.ExecContext(ctx, `UPDATE piece SET answer = '', answered_us = 0, job = 0 WHERE id = $1`, id)
	return store.Plain(err)
}

// set changes a piece that has no answer yet; more are the values of $2, $3 ...
func (q *Queue) set(ctx context.Context, what, id string, more ...any) error {
	_, err := q.db.ExecContext(ctx, `UPDATE piece SET `+what+` WHERE id = $1 AND answered_us = 0`, append([]any{id}, more...)...)
	return store.Plain(err)
}

// line names the queue of this program's version in which a piece waits.
func (q *Queue) line(waited bool) string {
	name := "work-"
	if waited {
		name = "ask-"
	}
	return name + strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' {
			return r
		}
		return '-'
	}, q.Program)
}

// GiveUp cancels a piece, whether it waits or is at work; one that has ended stays as it is.
func (q *Queue) GiveUp(ctx context.Context, id string) error {
	p, err := q.Piece(ctx, id)
	if err != nil || p.State.Ended() {
		return err
	}
	if err := q.set(ctx, `given_up = 1`, id); err != nil || p.job == 0 { // a worker that begins it sees that
		return err
	}
	_, err = q.asks.JobCancel(ctx, p.job)
	return store.Plain(err)
}

func (q *Queue) answer(ctx context.Context, id string) ([]byte, error) {
	var text string
	err := q.db.QueryRowContext(ctx, `SELECT answer FROM piece WHERE id = $1 AND answered_us > 0`, id).Scan(&text)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, ErrNone
	}
	return []byte(text), store.Plain(err)
}

const pieceRows = `SELECT p.id, p.kind, p.about, p.owner, p.job, p.stage, p.share, p.cause, p.asked_us, p.begun_us, p.answered_us, p.given_up = 1, COALESCE(CAST(r.state AS TEXT), ''), COALESCE(r.attempt, 0)
	FROM piece p LEFT JOIN river_job r ON r.id = p.job `

// Piece returns a piece by its id.
func (q *Queue) Piece(ctx context.Context, id string) (Piece, error) {
	all, err := q.pieces(ctx, `WHERE p.id = $1`, id)
	if err == nil && len(all) == 0 {
		err = ErrNone
	}
	if err != nil {
		return Piece{}, err
	}
	return all[0], nil
}

// Pieces returns pieces by their ids, in no order; those that nobody asked for are left out.
func (q *Queue) Pieces(ctx context.Context, ids []string) ([]Piece, error) {
	if len(ids) == 0 {
		return nil, nil
	}
	var marks []string
	var values []any
	for i, id := range ids {
		marks, values = append(marks, fmt.Sprintf("$%d", i+1)), append(values, id)
	}
	return q.pieces(ctx, `WHERE p.id IN (`+strings.Join(marks, ", ")+`)`, values...)
}

// Listed returns those pieces that are at work, then those without an answer, then the
// others, each the newest first.
func (q *Queue) Listed(ctx context.Context, most int) ([]Piece, error) {
	return q.pieces(ctx, `ORDER BY CASE WHEN p.answered_us > 0 THEN 2 WHEN r.state = 'running' THEN 0 ELSE 1 END, p.asked_us DESC, p.id LIMIT $1`, most)
}

func (q *Queue) pieces(ctx context.Context, which string, values ...any) (out []Piece, err error) {
	rows, err := q.db.QueryContext(ctx, pieceRows+which, values...)
	if err != nil {
		return nil, store.Plain(err)
	}
	defer rows.Close()
	for rows.Next() {
		var p Piece
		var asked, begun, answered int64
		var givenUp bool
		var state string
		if err := rows.Scan(&p.ID, &p.Kind, &p.About, &p.Owner, &p.job, &p.Stage, &p.Share, &p.Cause, &asked, &begun, &answered, &givenUp, &state, &p.Tries); err != nil {
			return nil, store.Plain(err)
		}
		p.Asked, p.Begun, p.Answered = moment(asked), moment(begun), moment(answered)
		p.State = stateOf(answered > 0, givenUp, rivertype.JobState(state))
		out = append(out, p)
	}
	return out, store.Plain(rows.Err())
}

// moment reads a time as it is kept, in microseconds; 0 is none.
func moment(us int64) time.Time {
	if us == 0 {
		return time.Time{}
	}
	return time.UnixMicro(us)
}

// stateOf reads River's state. A job that River calls completed and that has no answer had
// one that was forgotten: the next ask begins it anew.
func stateOf(answered, givenUp bool, s rivertype.JobState) State {
	switch {
	case answered:
		return Done
	case s == rivertype.JobStateRunning:
		return AtWork
	case s == rivertype.JobStateCancelled && givenUp:
		return GivenUp
	case s == rivertype.JobStateDiscarded, s == rivertype.JobStateCancelled, s == rivertype.JobStateCompleted:
		return Failed
	}
	return Waiting
}
