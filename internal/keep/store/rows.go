package store

import (
	"context"
	"database/sql"
	"errors"
	"strings"
	"unicode/utf8"
)

// A querier is a database or a transaction on it.
type querier interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
}

// A scanner is a row or a row of many.
type scanner interface{ Scan(into ...any) error }

// list reads every row of a query.
func list[T any](ctx context.Context, db querier, scan func(scanner) (T, error), query string, args ...any) ([]T, error) {
	rows, err := db.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, Plain(err)
	}
	defer rows.Close()
	var out []T
	for rows.Next() {
		v, err := scan(rows)
		if err != nil {
			return nil, err
		}
		out = append(out, v)
	}
	return out, Plain(rows.Err())
}

// do makes one statement that changes rows, if there are any.
func (s *Store) do(ctx context.Context, query string, args ...any) error {
	_, err := s.db.ExecContext(ctx, query, args...)
	return Plain(err)
}

func orNone(err, none error) error {
	if errors.Is(err, sql.ErrNoRows) {
		return none
	}
	return Plain(err)
}

func oneRow(res sql.Result, none error) error {
	n, err := res.RowsAffected()
	if err == nil && n == 0 {
		return none
	}
	return err
}

// storable reports whether a text can stand in a key: PostgreSQL holds no NUL
// and nothing but UTF-8, so such a key is nobody's.
func storable(key string) bool {
	return utf8.ValidString(key) && !strings.ContainsRune(key, 0)
}

func flag(b bool) int {
	if b {
		return 1
	}
	return 0
}
