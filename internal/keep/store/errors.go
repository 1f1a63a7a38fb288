package store

import (
	"errors"

	"github.com/jackc/pgx/v5/pgconn"
	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"example.org/rinkpane/internal/keep/revision"
)

// uniqueViolation is SQLSTATE 23505 (PostgreSQL manual, appendix A).
const uniqueViolation = "23505"

// diskFull is SQLSTATE 53100.
const diskFull = "53100"

// ErrFull is [revision.ErrFull], which people and sessions meet as well.
var ErrFull = revision.ErrFull

// isDuplicate reports whether a row with this key was there already, by the
// drivers' codes.
func isDuplicate(err error) bool {
	var lite *sqlite.Error
	if errors.As(err, &lite) {
		return lite.Code() == sqlite3.SQLITE_CONSTRAINT_PRIMARYKEY || lite.Code() == sqlite3.SQLITE_CONSTRAINT_UNIQUE
	}
	var pg *pgconn.PgError
	return errors.As(err, &pg) && pg.Code == uniqueViolation
}

// plain turns a full disk into ErrFull and leaves other errors alone.
func plain(err error) error {
	var lite *sqlite.Error
	if errors.As(err, &lite) && lite.Code()&0xff == sqlite3.SQLITE_FULL {
		return ErrFull
	}
	var pg *pgconn.PgError
	if errors.As(err, &pg) && pg.Code == diskFull {
		return ErrFull
	}
	return err
}
