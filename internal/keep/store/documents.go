package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"example.org/rinkpane/internal/keep/revision"
)

// Documents lists the documents of a kind by id; see [revision.Keeper].
func (s *Store) Documents(ctx context.Context, kind revision.Kind, away bool) ([]revision.Document, error) {
	return list(ctx, s.db, scanDocument, `SELECT id, kind, name, head, away FROM document WHERE kind = $1 AND away <= $2 ORDER BY id`, kind, flag(away))
}

// Document returns one document; see [revision.Keeper].
func (s *Store) Document(ctx context.Context, id string) (revision.Document, error) {
	if !storable(id) {
		return revision.Document{}, revision.ErrNone
	}
	return scanDocument(s.db.QueryRowContext(ctx, `SELECT id, kind, name, head, away FROM document WHERE id = $1`, id))
}

// Add keeps a new document with its first version; see [revision.Keeper].
func (s *Store) Add(ctx context.Context, kind revision.Kind, id, name string, first revision.Draft) (revision.Version, error) {
	if err := errors.Join(revision.CheckID(id), first.Check()); err != nil {
		return revision.Version{}, err
	}
	v := versionOf(id, 1, 0, first)
	err := s.inTx(ctx, func(tx *sql.Tx) error {
		if _, err := tx.ExecContext(ctx, `INSERT INTO document (id, kind, name, head) VALUES ($1, $2, $3, 1)`, id, kind, name); err != nil {
			return err
		}
		return insertVersion(ctx, tx, v)
	})
	if isDuplicate(err) {
		return revision.Version{}, fmt.Errorf("%q: %w", id, revision.ErrTaken)
	}
	if err != nil {
		return revision.Version{}, Plain(fmt.Errorf("adding %q: %w", id, err))
	}
	return v, nil
}

// Save puts a version on top of version base; see [revision.Keeper].
func (s *Store) Save(ctx context.Context, id, name string, base int, next revision.Draft) (revision.Version, error) {
	if !storable(id) {
		return revision.Version{}, revision.ErrNone
	}
	if err := next.Check(); err != nil {
		return revision.Version{}, err
	}
	v := versionOf(id, base+1, base, next)
	moved := false
	err := s.inTx(ctx, func(tx *sql.Tx) error {
		// The condition on head guards against a second save from the same base.
		res, err := tx.ExecContext(ctx, `UPDATE document SET head = $1, name = CASE WHEN $2 = '' THEN name ELSE $2 END
			WHERE id = $3 AND head = $4`, v.Number, name, id, base)
		if err != nil {
			return err
		}
		n, err := res.RowsAffected()
		if err != nil || n == 0 {
			return err
		}
		moved = true
		return insertVersion(ctx, tx, v)
	})
	if err != nil {
		return revision.Version{}, Plain(fmt.Errorf("saving %q: %w", id, err))
	}
	if moved {
		return v, nil
	}
	head, err := s.Version(ctx, id, 0)
	if err != nil {
		return revision.Version{}, err
	}
	return revision.Version{}, &revision.Stale{Base: base, Head: head}
}

// Version returns one version with its text; see [revision.Keeper].
func (s *Store) Version(ctx context.Context, id string, number int) (revision.Version, error) {
	if !storable(id) {
		return revision.Version{}, revision.ErrNone
	}
	// Without the casts PostgreSQL takes the number for 32 bits.
	return scanVersion(s.db.QueryRowContext(ctx, `SELECT v.document, v.number, v.parent, v.at_us, v.who, v.what, v.body, v.renames, v.once
		FROM version v JOIN document d ON d.id = v.document
		WHERE v.document = $1 AND v.number = CASE WHEN CAST($2 AS BIGINT) = 0 THEN d.head ELSE CAST($2 AS BIGINT) END`, id, number))
}

// History lists the newest versions first; see [revision.Keeper].
func (s *Store) History(ctx context.Context, id string, limit int) ([]revision.Version, error) {
	if !storable(id) {
		return nil, nil
	}
	return list(ctx, s.db, scanVersion, `SELECT document, number, parent, at_us, who, what, '', renames, once
		FROM version WHERE document = $1 ORDER BY number DESC LIMIT $2`, id, limit)
}

// SetAway puts a document away or brings it back; see [revision.Keeper].
func (s *Store) SetAway(ctx context.Context, id string, away bool) error {
	if !storable(id) {
		return revision.ErrNone
	}
	res, err := s.db.ExecContext(ctx, `UPDATE document SET away = $1 WHERE id = $2`, flag(away), id)
	if err != nil {
		return Plain(fmt.Errorf("putting %q away: %w", id, err))
	}
	return oneRow(res, revision.ErrNone)
}

func versionOf(id string, number, parent int, d revision.Draft) revision.Version {
	return revision.Version{Document: id, Number: number, Parent: parent,
		At: d.At.UTC().Truncate(time.Microsecond), Who: revision.Line(d.Who), What: revision.Line(d.What), Text: d.Text, Renames: d.Renames, Once: d.Once}
}

func insertVersion(ctx context.Context, tx *sql.Tx, v revision.Version) error {
	renames := ""
	if len(v.Renames) > 0 {
		text, err := json.Marshal(v.Renames)
		if err != nil {
			return err
		}
		renames = string(text)
	}
	_, err := tx.ExecContext(ctx, `INSERT INTO version (document, number, parent, at_us, who, what, body, renames, once)
		VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)`, v.Document, v.Number, v.Parent, v.At.UnixMicro(), v.Who, v.What, v.Text, renames, v.Once)
	return err
}

func scanDocument(row scanner) (revision.Document, error) {
	var d revision.Document
	var away int
	if err := row.Scan(&d.ID, &d.Kind, &d.Name, &d.Head, &away); err != nil {
		return revision.Document{}, orNone(err, revision.ErrNone)
	}
	d.Away = away == 1
	return d, nil
}

func scanVersion(row scanner) (revision.Version, error) {
	var v revision.Version
	var at int64
	var renames string
	if err := row.Scan(&v.Document, &v.Number, &v.Parent, &at, &v.Who, &v.What, &v.Text, &renames, &v.Once); err != nil {
		return revision.Version{}, orNone(err, revision.ErrNone)
	}
	if renames != "" {
		if err := json.Unmarshal([]byte(renames), &v.Renames); err != nil {
			return revision.Version{}, fmt.Errorf("store: renames of %s, version %d: %w", v.Document, v.Number, err)
		}
	}
	v.At = time.UnixMicro(at).UTC()
	return v, nil
}
