package queue

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"log/slog"
	"path/filepath"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"
	"github.com/jackc/pgx/v5/stdlib"
	"github.com/riverqueue/river"
	"github.com/riverqueue/river/riverdriver"
	"github.com/riverqueue/river/riverdriver/riverpgxv5"
	"github.com/riverqueue/river/riverdriver/riversqlite"
	"github.com/riverqueue/river/rivermigrate"
	"github.com/riverqueue/river/rivertype"

	"example.org/rinkpane/internal/keep/store"
)

// Queue is an open queue, safe for many goroutines.
type Queue struct {
	db     *sql.DB
	sqlite bool
	asks   client // that only asks
	make   func(*river.Config) (client, error)
	close  []func() error
	Options
}

// Options are what whoever opens a queue brings along.
type Options struct {
	Program string // the program's version: another one's pieces are others'
	Files   Files  // where large results go
	Log     *slog.Logger

	hurry bool // tests: a worker is thought dead sooner
}

// hurried is how many times faster a test looks after workers.
const hurried = 16

func (o Options) beat() time.Duration  { return o.pace(beat) }
func (o Options) lease() time.Duration { return o.pace(lease) }

func (o Options) pace(d time.Duration) time.Duration {
	if o.hurry {
		return d / hurried
	}
	return d
}

// client is what is used of a River client, whichever database it is on.
type client interface {
	Insert(context.Context, river.JobArgs, *river.InsertOpts) (*rivertype.JobInsertResult, error)
	JobCancel(context.Context, int64) (*rivertype.JobRow, error)
	Start(context.Context) error
	StopAndCancel(context.Context) error
}

//go:embed migrations/*.sql
var migrations embed.FS

// FileName is the name of the SQLite file within a folder. It is not the desk's store:
// pieces are written several times a second, and nobody's save waits for that.
const FileName = "rinkpane-jobs.db"

// history is the table in which goose keeps which migrations of this package are done,
// beside the store's and River's own.
const history = "piece_db_version"

// OpenFolder opens the queue in a folder, which must exist.
func OpenFolder(ctx context.Context, folder string, o Options) (*Queue, error) {
	path := filepath.Join(folder, FileName)
	db, err := store.OpenFile(path)
	if err != nil {
		return nil, fmt.Errorf("jobs %s: %w", path, err)
	}
	q := &Queue{db: db, sqlite: true, close: []func() error{db.Close}, Options: o}
	return start(ctx, q, riversqlite.New(db), "jobs "+path)
}

// OpenDSN opens the queue in a PostgreSQL database, beside a desk's tables if there are
// any: "postgres://user@host/database".
func OpenDSN(ctx context.Context, dsn string, o Options) (*Queue, error) {
	if err := store.CheckDSN(dsn); err != nil {
		return nil, err
	}
	pool, err := pgxpool.New(ctx, dsn)
	if err != nil {
		return nil, store.ErrAddress
	}
	db := stdlib.OpenDBFromPool(pool)
	q := &Queue{db: db, close: []func() error{db.Close, func() error { pool.Close(); return nil }}, Options: o}
	return start(ctx, q, riverpgxv5.New(pool), "database")
}

// Close closes the queue. Pieces go on waiting.
func (q *Queue) Close() error {
	var all error
	for _, c := range q.close {
		all = errors.Join(all, c())
	}
	return all
}

func start[T any](ctx context.Context, q *Queue, driver riverdriver.Driver[T], where string) (*Queue, error) {
	if q.Log == nil {
		q.Log = slog.New(slog.NewTextHandler(io.Discard, nil))
	}
	q.make = func(c *river.Config) (client, error) { return river.NewClient(driver, c) }
	err := migrate(ctx, q, driver)
	if err == nil {
		q.asks, err = q.make(&river.Config{Logger: q.Log, Hooks: []rivertype.Hook{&inTurn{}}})
	}
	if err != nil {
		return nil, errors.Join(fmt.Errorf("%s: %w", where, store.Plain(err)), q.Close())
	}
	return q, nil
}

// migrating is the key of PostgreSQL's lock under which one program at a time brings the
// tables up to date; own choice.
const migrating = 7246217101

// migrate brings River's tables and this package's up to date. Several programs may open
// the queue at once: PostgreSQL has a lock for that; on SQLite a further try meets what
// the other one made.
func migrate[T any](ctx context.Context, q *Queue, driver riverdriver.Driver[T]) error {
	if q.sqlite {
		var err error
		for range 3 {
			if err = migrateBoth(ctx, q, driver); err == nil || ctx.Err() != nil {
				break
			}
		}
		return err
	}
	one, err := q.db.Conn(ctx)
	if err != nil {
		return err
	}
	defer one.Close()
	if _, err := one.ExecContext(ctx, `SELECT pg_advisory_lock($1)`, int64(migrating)); err != nil {
		return err
	}
	err = migrateBoth(ctx, q, driver)
	_, unlocked := one.ExecContext(context.WithoutCancel(ctx), `SELECT pg_advisory_unlock($1)`, int64(migrating))
	return errors.Join(err, unlocked)
}

func migrateBoth[T any](ctx context.Context, q *Queue, driver riverdriver.Driver[T]) error {
	m, err := rivermigrate.New(driver, &rivermigrate.Config{Logger: q.Log})
	if err != nil {
		return err
	}
	if all := m.AllVersions(); len(all) > 0 { // River itself meets a newer version with words for programmers
		var is int64
		row := q.db.QueryRowContext(ctx, `SELECT MAX(version) FROM river_migration WHERE line = 'main'`)
		if row.Scan(&is) == nil { // else there is no such table yet
			if err := store.Known(is, int64(all[len(all)-1].Version)); err != nil {
				return err
			}
		}
	}
	files, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return err
	}
	if err := store.Migrate(ctx, q.db, q.sqlite, files, history); err != nil {
		return err
	}
	_, err = m.Migrate(ctx, rivermigrate.DirectionUp, nil)
	return err
}
