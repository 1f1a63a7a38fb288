package queue

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Name is the name of a large result: the SHA-256 of its bytes, in hexadecimal. To keep
// the same bytes again changes nothing.
type Name string

func nameOf(data []byte) Name {
	sum := sha256.Sum256(data)
	return Name(hex.EncodeToString(sum[:]))
}

// Files keeps large results. Its methods may be called by several goroutines at once.
type Files interface {
	// Put keeps bytes.
	Put(ctx context.Context, data []byte) (Name, error)
	// Get returns what was kept, whole, or an error: [ErrGone] where there is none.
	Get(ctx context.Context, n Name) ([]byte, error)
}

// ErrGone is returned for a file that is not where files are kept.
var ErrGone = errors.New("a job's file is not there: workers and whoever asks must keep files in the same place (--files)")

// Folder keeps files in a folder, each under its name.
type Folder string

// Put keeps bytes; the file appears whole or not at all.
func (f Folder) Put(_ context.Context, data []byte) (Name, error) {
	n := nameOf(data)
	if err := os.MkdirAll(string(f), 0o700); err != nil {
		return n, err
	}
	out, err := os.CreateTemp(string(f), ".new-")
	if err != nil {
		return n, err
	}
	_, err = out.Write(data)
	if err = errors.Join(err, out.Sync(), out.Close()); err == nil {
		err = os.Rename(out.Name(), f.path(n))
	}
	if err != nil {
		return n, errors.Join(err, os.Remove(out.Name()))
	}
	return n, nil
}

// Get returns what was kept.
func (f Folder) Get(_ context.Context, n Name) ([]byte, error) {
	data, err := os.ReadFile(f.path(n))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("%s: %w", string(f), ErrGone)
	}
	if err == nil {
		err = n.check(data)
	}
	return data, err
}

func (f Folder) path(n Name) string { return filepath.Join(string(f), filepath.Base(string(n))) }

// check refuses bytes that are not those that were kept.
func (n Name) check(data []byte) error {
	if nameOf(data) != n {
		return fmt.Errorf("file %s is damaged: remove it and ask again", n)
	}
	return nil
}
