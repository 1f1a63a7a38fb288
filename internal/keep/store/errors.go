package store

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"errors"
	"io"
	"net"
	"strings"

	"github.com/jackc/pgx/v5/pgconn"
	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"example.org/rinkpane/internal/keep/revision"
)

// What PostgreSQL answers with (manual, appendix A).
const (
	uniqueViolation = "23505"
	diskFull        = "53100"
	// The beginnings of what a server says that starts, stops, or has no room
	// for another connection.
	connectionLost    = "08"
	tooMany           = "53300"
	operatorIntervene = "57P0"
)

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

// Plain turns a full disk into [revision.ErrFull] and a database that does not
// answer into [revision.ErrDown], and leaves other errors alone. Once a
// connection is lost it cannot be known whether the last act was done.
func Plain(err error) error {
	var lite *sqlite.Error
	var pg *pgconn.PgError
	var connect *pgconn.ConnectError
	var line net.Error
	switch {
	case err == nil || errors.Is(err, context.Canceled):
		return err
	case errors.As(err, &lite):
		switch lite.Code() & 0xff {
		case sqlite3.SQLITE_FULL:
			return revision.ErrFull
		case sqlite3.SQLITE_BUSY:
			return revision.ErrDown
		}
	case errors.As(err, &pg):
		if pg.Code == diskFull {
			return revision.ErrFull
		}
		for _, begin := range []string{connectionLost, tooMany, operatorIntervene} {
			if strings.HasPrefix(pg.Code, begin) {
				return revision.ErrDown
			}
		}
	case errors.As(err, &connect), errors.As(err, &line), errors.Is(err, driver.ErrBadConn), errors.Is(err, sql.ErrConnDone),
		errors.Is(err, io.ErrUnexpectedEOF), errors.Is(err, io.EOF):
		return revision.ErrDown
	}
	return err
}
