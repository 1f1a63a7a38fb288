package store

import (
	"context"
	"database/sql"
	"fmt"
	"time"

	"example.org/rinkpane/internal/keep/people"
)

const personColumns = `person.name, person.role, person.password, person.since_us`

// People lists everybody by name; see [people.Register].
func (s *Store) People(ctx context.Context) ([]people.Person, error) {
	rows, err := s.db.QueryContext(ctx, `SELECT `+personColumns+` FROM person ORDER BY name`)
	if err != nil {
		return nil, fmt.Errorf("listing people: %w", err)
	}
	defer rows.Close()
	var out []people.Person
	for rows.Next() {
		p, err := scanPerson(rows)
		if err != nil {
			return nil, err
		}
		out = append(out, p)
	}
	return out, rows.Err()
}

// Person returns one person; see [people.Register].
func (s *Store) Person(ctx context.Context, name string) (people.Person, error) {
	return scanPerson(s.db.QueryRowContext(ctx, `SELECT `+personColumns+` FROM person WHERE name = $1`, name))
}

// AddPerson keeps a new person; see [people.Register].
func (s *Store) AddPerson(ctx context.Context, p people.Person) error {
	if err := people.CheckName(p.Name); err != nil {
		return err
	}
	_, err := s.db.ExecContext(ctx, `INSERT INTO person (name, role, password, since_us) VALUES ($1, $2, $3, $4)`,
		p.Name, string(p.Role), p.Password, p.Since.UnixMicro())
	if isDuplicate(err) {
		return fmt.Errorf("%q: %w", p.Name, people.ErrTaken)
	}
	if err != nil {
		return plain(fmt.Errorf("adding %q: %w", p.Name, err))
	}
	return nil
}

// ChangePerson sets role and password and closes the person's sessions; see [people.Register].
func (s *Store) ChangePerson(ctx context.Context, p people.Person) error {
	return s.inTx(ctx, func(tx *sql.Tx) error {
		res, err := tx.ExecContext(ctx, `UPDATE person SET role = $1, password = $2 WHERE name = $3`, string(p.Role), p.Password, p.Name)
		if err != nil {
			return plain(fmt.Errorf("changing %q: %w", p.Name, err))
		}
		if err := oneRow(res, people.ErrNone); err != nil {
			return err
		}
		_, err = tx.ExecContext(ctx, `DELETE FROM session WHERE person = $1`, p.Name)
		return err
	})
}

// RemovePerson removes a person with all sessions; see [people.Register].
func (s *Store) RemovePerson(ctx context.Context, name string) error {
	res, err := s.db.ExecContext(ctx, `DELETE FROM person WHERE name = $1`, name)
	if err != nil {
		return plain(fmt.Errorf("removing %q: %w", name, err))
	}
	return oneRow(res, people.ErrNone)
}

// OpenSession keeps a session; see [people.Register].
func (s *Store) OpenSession(ctx context.Context, open people.Session, now time.Time) error {
	return s.inTx(ctx, func(tx *sql.Tx) error {
		if _, err := tx.ExecContext(ctx, `DELETE FROM session WHERE expires_us <= $1`, now.UnixMicro()); err != nil {
			return plain(err)
		}
		res, err := tx.ExecContext(ctx, `INSERT INTO session (token_key, person, expires_us)
			SELECT $1, name, CAST($2 AS BIGINT) FROM person WHERE name = $3`, open.Key, open.Expires.UnixMicro(), open.Person)
		if err != nil {
			return plain(fmt.Errorf("opening a session: %w", err))
		}
		return oneRow(res, people.ErrNone)
	})
}

// Session returns the person of a live session; see [people.Register].
func (s *Store) Session(ctx context.Context, key string, now time.Time) (people.Person, error) {
	return scanPerson(s.db.QueryRowContext(ctx, `SELECT `+personColumns+`
		FROM session JOIN person ON person.name = session.person
		WHERE session.token_key = $1 AND session.expires_us > $2`, key, now.UnixMicro()))
}

// CloseSession ends a session; see [people.Register].
func (s *Store) CloseSession(ctx context.Context, key string) error {
	if _, err := s.db.ExecContext(ctx, `DELETE FROM session WHERE token_key = $1`, key); err != nil {
		return fmt.Errorf("closing a session: %w", err)
	}
	return nil
}

func scanPerson(row scanner) (people.Person, error) {
	var p people.Person
	var role string
	var since int64
	if err := row.Scan(&p.Name, &role, &p.Password, &since); err != nil {
		return people.Person{}, orNone(err, people.ErrNone)
	}
	p.Role, p.Since = people.Role(role), time.UnixMicro(since).UTC()
	return p, nil
}
