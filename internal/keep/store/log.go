package store

import (
	"context"
	"database/sql"
	"time"

	"example.org/rinkpane/internal/keep/people"
)

// Write writes an entry into the log; see [people.Register].
func (s *Store) Write(ctx context.Context, note people.Entry) error {
	return s.inTx(ctx, func(tx *sql.Tx) error { return writeEntry(ctx, tx, note) })
}

// Log returns the newest entries first; see [people.Register].
func (s *Store) Log(ctx context.Context, most int) ([]people.Entry, error) {
	return list(ctx, s.db, scanEntry, `SELECT at_us, kind, who, what, origin FROM log_entry ORDER BY at_us DESC LIMIT $1`, most)
}

// writeEntry adds an entry and drops the oldest of its kind beyond those kept.
func writeEntry(ctx context.Context, tx *sql.Tx, e people.Entry) error {
	if _, err := tx.ExecContext(ctx, `INSERT INTO log_entry (at_us, kind, who, what, origin) VALUES ($1, $2, $3, $4, $5)`,
		e.At.UnixMicro(), string(e.Kind), e.Who, e.What, e.From); err != nil {
		return err
	}
	_, err := tx.ExecContext(ctx, `DELETE FROM log_entry WHERE kind = $1 AND at_us <=
		(SELECT at_us FROM log_entry WHERE kind = $1 ORDER BY at_us DESC LIMIT 1 OFFSET $2)`, string(e.Kind), people.LogLength)
	return err
}

func scanEntry(row scanner) (people.Entry, error) {
	var e people.Entry
	var at int64
	err := row.Scan(&at, &e.Kind, &e.Who, &e.What, &e.From)
	e.At = time.UnixMicro(at).UTC()
	return e, Plain(err)
}
