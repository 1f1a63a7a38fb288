package queue

import (
	"context"
	"time"

	"github.com/riverqueue/river"
	"github.com/riverqueue/river/rivertype"

	"example.org/rinkpane/internal/keep/store"
)

// River works what waits in the order of its scheduled time, as long as that has passed.
// A tag stands there as so many seconds after 1970: the past, for two thousand million
// pieces. A piece that comes back after a failed try, or is given back by a worker that
// stops, has a real time there; it gets the tag 0, so that it goes first.

// inTurn gives a job that is inserted its tag. River's own option for the time would
// have a job wait for the next look at scheduled ones, seconds later.
type inTurn struct{ river.HookDefaults }

type tagKey struct{}

func (*inTurn) InsertBegin(ctx context.Context, p *rivertype.JobInsertParams) error {
	if tag, ok := ctx.Value(tagKey{}).(int64); ok {
		at := timeOf(tag)
		p.ScheduledAt = &at
	}
	return nil
}

func timeOf(tag int64) time.Time { return time.Unix(tag, 0).UTC() }

// lastTag bounds tags from real times: the year 2001.
const lastTag = 1_000_000_000

// nobody and served are the rows of the table of turns that are no owner's name.
const (
	nobody = ":"
	served = "."
)

// nextTag is the tag of an owner's next piece: one above the later of the owner's last tag
// and the tag that is being worked.
func (q *Queue) nextTag(ctx context.Context, owner string) (tag int64, err error) {
	err = q.db.QueryRowContext(ctx, `INSERT INTO turn (owner, tag) VALUES ($1, 1 + COALESCE((SELECT tag FROM turn WHERE owner = $2), 0))
		ON CONFLICT (owner) DO UPDATE SET tag = 1 + CASE WHEN turn.tag > excluded.tag - 1 THEN turn.tag ELSE excluded.tag - 1 END RETURNING tag`, ownerRow(owner), served).Scan(&tag)
	return tag, store.Plain(err)
}

// ownerRow is an owner's row in the table of turns; no name can meet the other rows.
func ownerRow(owner string) string {
	if owner == "" {
		return nobody
	}
	return "=" + owner
}

// begun says that a piece of a tag is being worked.
func (q *Queue) begun(ctx context.Context, tag int64) error {
	if tag >= lastTag {
		return nil
	}
	_, err := q.db.ExecContext(ctx, `INSERT INTO turn (owner, tag) VALUES ($1, $2)
		ON CONFLICT (owner) DO UPDATE SET tag = CASE WHEN turn.tag > excluded.tag THEN turn.tag ELSE excluded.tag END`, served, tag)
	return store.Plain(err)
}
