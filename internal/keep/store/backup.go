package store

import (
	"bufio"
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
)

// A backup is one file: a line that says what it is, with the SHA-256 of the rest, and
// then the whole store as an SQLite file, whichever database it was kept in.
const backupLine = "rinkpane backup 1, sha256 %s\n"

var backupForm = regexp.MustCompile(`^rinkpane backup 1, sha256 ([0-9a-f]{64})\n$`)

// The errors of a backup that cannot be used.
var (
	ErrNoBackup = errors.New("this is no backup that rinkpane wrote")
	ErrSpoilt   = errors.New("the backup is damaged: its content is not what its first line says; nothing was restored")
	ErrNotEmpty = errors.New("something is kept there already; a restore overwrites nothing: name an empty folder or database")
)

// tables lists what is copied from one database to another, owners before what they own.
func tables() []string {
	return []string{"document", "version", "person", "session", "log_entry", "secret", "event_head", "event", "photo"}
}

// Backup writes the store as it is at one moment, while others go on using it. Scratch
// is a folder with room for a copy.
func (s *Store) Backup(ctx context.Context, scratch string, w io.Writer) error {
	folder, err := os.MkdirTemp(scratch, ".rinkpane-backup-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	path := filepath.Join(folder, FileName)
	if s.sqlite {
		_, err = s.db.ExecContext(ctx, `VACUUM INTO '`+strings.ReplaceAll(path, `'`, `''`)+`'`)
	} else {
		err = s.copyTo(ctx, folder)
	}
	if err != nil {
		return fmt.Errorf("backup: %w", Plain(err))
	}
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, f); err != nil {
		return err
	}
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return err
	}
	_, err1 := fmt.Fprintf(w, backupLine, hex.EncodeToString(sum.Sum(nil)))
	_, err2 := io.Copy(w, f)
	return errors.Join(err1, err2)
}

// copyTo copies everything into a new SQLite store in a folder.
func (s *Store) copyTo(ctx context.Context, folder string) error {
	to, err := OpenFolder(ctx, folder)
	if err != nil {
		return err
	}
	return errors.Join(s.copyInto(ctx, to), to.Close())
}

// Unpack reads a backup into a folder, which has no store yet, and opens it there: it is
// what was backed up, to the bit, or an error.
func Unpack(ctx context.Context, backup io.Reader, folder string) (*Store, error) {
	r := bufio.NewReader(backup)
	head, err := r.ReadString('\n')
	is := backupForm.FindStringSubmatch(head)
	if err != nil || is == nil {
		return nil, ErrNoBackup
	}
	f, err := os.OpenFile(filepath.Join(folder, FileName), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return nil, err
	}
	sum := sha256.New()
	_, err = io.Copy(io.MultiWriter(f, sum), r)
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		return nil, err
	}
	if hex.EncodeToString(sum.Sum(nil)) != is[1] {
		return nil, ErrSpoilt
	}
	s, err := OpenFolder(ctx, folder)
	if err != nil {
		return nil, err
	}
	var says string
	if err := s.db.QueryRowContext(ctx, "PRAGMA integrity_check").Scan(&says); err != nil || says != "ok" {
		return nil, errors.Join(ErrSpoilt, s.Close())
	}
	return s, nil
}

// Restore takes over everything of another store, all or nothing. ErrNotEmpty when
// something is kept already.
func (s *Store) Restore(ctx context.Context, from *Store) error {
	for _, t := range tables() {
		var n int
		if err := s.db.QueryRowContext(ctx, `SELECT COUNT(*) FROM `+t).Scan(&n); err != nil {
			return Plain(err)
		}
		if n > 0 {
			return ErrNotEmpty
		}
	}
	return from.copyInto(ctx, s)
}

// copyInto copies what is kept at one moment into another store, in one transaction.
func (s *Store) copyInto(ctx context.Context, to *Store) error {
	options := &sql.TxOptions{ReadOnly: true, Isolation: sql.LevelRepeatableRead}
	if s.sqlite {
		options = nil // its transactions see one moment anyway
	}
	from, err := s.db.BeginTx(ctx, options)
	if err != nil {
		return Plain(err)
	}
	err = to.inTx(ctx, func(tx *sql.Tx) error {
		for _, t := range tables() {
			if err := copyTable(ctx, from, tx, t); err != nil {
				return fmt.Errorf("table %s: %w", t, err)
			}
		}
		return nil
	})
	return errors.Join(err, rolledBack(from))
}

func copyTable(ctx context.Context, from, to *sql.Tx, name string) error {
	rows, err := from.QueryContext(ctx, `SELECT * FROM `+name)
	if err != nil {
		return err
	}
	defer rows.Close()
	columns, err := rows.Columns()
	if err != nil {
		return err
	}
	insert, err := to.PrepareContext(ctx, `INSERT INTO `+name+` (`+strings.Join(columns, ", ")+`) VALUES `+places(0, len(columns)))
	if err != nil {
		return err
	}
	defer insert.Close()
	values, into := make([]any, len(columns)), make([]any, len(columns))
	for i := range values {
		into[i] = &values[i]
	}
	for rows.Next() {
		if err := rows.Scan(into...); err != nil {
			return err
		}
		if _, err := insert.ExecContext(ctx, values...); err != nil {
			return err
		}
	}
	return rows.Err()
}
