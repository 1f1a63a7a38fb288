package store

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"time"

	"example.org/rinkpane/internal/keep/people"
)

const personColumns = `person.name, person.role, person.password, person.since_us`

// People lists everybody by name; see [people.Register].
func (s *Store) People(ctx context.Context) ([]people.Person, error) { return everybody(ctx, s.db) }

func everybody(ctx context.Context, db querier) ([]people.Person, error) {
	return list(ctx, db, scanPerson, `SELECT `+personColumns+` FROM person ORDER BY name`)
}

// Person returns one person; see [people.Register].
func (s *Store) Person(ctx context.Context, name string) (people.Person, error) {
	if !storable(name) {
		return people.Person{}, people.ErrNone
	}
	return scanPerson(s.db.QueryRowContext(ctx, `SELECT `+personColumns+` FROM person WHERE name = $1`, name))
}

// Alter makes an edit of the people; see [people.Register].
func (s *Store) Alter(ctx context.Context, edit people.Edit, note people.Entry) error {
	return s.inTx(ctx, func(tx *sql.Tx) error {
		if !s.sqlite { // whose transactions that write wait for one another anyway
			if _, err := tx.ExecContext(ctx, `LOCK TABLE person IN SHARE ROW EXCLUSIVE MODE`); err != nil {
				return err
			}
		}
		before, err := everybody(ctx, tx)
		if err != nil {
			return err
		}
		after, err := edit(before)
		if err != nil {
			return err
		}
		for _, p := range before {
			if !slices.Contains(after, p) { // with all sessions
				if _, err := tx.ExecContext(ctx, `DELETE FROM person WHERE name = $1`, p.Name); err != nil {
					return err
				}
			}
		}
		for _, p := range after {
			if !slices.Contains(before, p) {
				if _, err := tx.ExecContext(ctx, `INSERT INTO person (name, role, password, since_us) VALUES ($1, $2, $3, $4)`,
					p.Name, string(p.Role), p.Password, p.Since.UnixMicro()); err != nil {
					return err
				}
			}
		}
		return writeEntry(ctx, tx, note)
	})
}

// OpenSession keeps a session; see [people.Register].
func (s *Store) OpenSession(ctx context.Context, open people.Session, before string, note people.Entry) error {
	return s.inTx(ctx, func(tx *sql.Tx) error {
		if _, err := tx.ExecContext(ctx, `DELETE FROM session WHERE expires_us <= $1 OR token_key = $2`, note.At.UnixMicro(), before); err != nil {
			return err
		}
		res, err := tx.ExecContext(ctx, `INSERT INTO session (token_key, person, since_us, expires_us, address, device)
			SELECT $1, name, CAST($2 AS BIGINT), CAST($3 AS BIGINT), $4, $5 FROM person WHERE name = $6`,
			open.Key, open.Since.UnixMicro(), open.Expires.UnixMicro(), open.From, string(open.Device), open.Person)
		if err != nil {
			return fmt.Errorf("opening a session: %w", err)
		}
		if err := oneRow(res, people.ErrNone); err != nil {
			return err
		}
		return writeEntry(ctx, tx, note)
	})
}

// Session returns the person of a live session; see [people.Register].
func (s *Store) Session(ctx context.Context, key string, now time.Time) (people.Person, error) {
	return scanPerson(s.db.QueryRowContext(ctx, `SELECT `+personColumns+`
		FROM session JOIN person ON person.name = session.person
		WHERE session.token_key = $1 AND session.expires_us > $2`, key, now.UnixMicro()))
}

// Sessions lists a person's live sessions; see [people.Register].
func (s *Store) Sessions(ctx context.Context, name string, now time.Time) ([]people.Session, error) {
	return list(ctx, s.db, scanSession, `SELECT token_key, person, since_us, expires_us, address, device FROM session
		WHERE person = $1 AND expires_us > $2 ORDER BY since_us DESC, token_key LIMIT $3`, name, now.UnixMicro(), people.SessionsListed)
}

func scanSession(row scanner) (people.Session, error) {
	var open people.Session
	var since, expires int64
	err := row.Scan(&open.Key, &open.Person, &since, &expires, &open.From, &open.Device)
	if since != 0 {
		open.Since = time.UnixMicro(since).UTC()
	}
	open.Expires = time.UnixMicro(expires).UTC()
	return open, err
}

// CloseSession ends a session; see [people.Register].
func (s *Store) CloseSession(ctx context.Context, key string) error {
	return s.do(ctx, `DELETE FROM session WHERE token_key = $1`, key)
}

// CloseSessions ends all sessions of a person; see [people.Register].
func (s *Store) CloseSessions(ctx context.Context, name string) error {
	return s.do(ctx, `DELETE FROM session WHERE person = $1`, name)
}

// Secret returns the store's secret; see [people.Register].
func (s *Store) Secret(ctx context.Context, fresh string) (kept string, err error) {
	if err := s.do(ctx, `INSERT INTO secret (name, value) VALUES ('browser', $1) ON CONFLICT DO NOTHING`, fresh); err != nil {
		return "", err
	}
	err = s.db.QueryRowContext(ctx, `SELECT value FROM secret WHERE name = 'browser'`).Scan(&kept)
	return kept, Plain(err)
}

func scanPerson(row scanner) (people.Person, error) {
	var p people.Person
	var since int64
	if err := row.Scan(&p.Name, &p.Role, &p.Password, &since); err != nil {
		return people.Person{}, orNone(err, people.ErrNone)
	}
	p.Since = time.UnixMicro(since).UTC()
	return p, nil
}
