package store

import (
	"errors"

	"github.com/jackc/pgx/v5/pgconn"
	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// uniqueViolation is SQLSTATE 23505 (PostgreSQL manual, appendix A).
const uniqueViolation = "23505"

// diskFull is SQLSTATE 53100.
const diskFull = "53100"

// ErrFull says that the disk has no room: nothing was written, nothing lost.
var ErrFull = errors.New("the disk is full: nothing was saved; free some room and save again")

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
