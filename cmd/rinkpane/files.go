package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// A file that a command writes appears whole or not at all: it is written
// beside its place under a temporary name and renamed when it is complete.

// outFile is one file to be written below a folder.
type outFile struct {
	name string // relative to the folder, slashes; no "..", not absolute
	data []byte
}

// writeFile writes one file; an existing one is kept unless force is set.
func writeFile(path string, data []byte, force bool) error {
	return writeFolder(filepath.Dir(path), []outFile{{filepath.Base(path), data}}, force)
}

// writeFolder writes files below dir, which it makes when it is absent. When
// any of them exists and force is not set, it writes none of them.
func writeFolder(dir string, files []outFile, force bool) error {
	for _, f := range files {
		if !filepath.IsLocal(f.name) {
			return fmt.Errorf("%q: a file's name must stay inside its folder", f.name)
		}
		if err := mayWrite(filepath.Join(dir, f.name), force); err != nil {
			return err
		}
	}
	for _, f := range files {
		path := filepath.Join(dir, f.name)
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			return plainPathError(err)
		}
	}
	staged, err := stage(dir, files)
	if err != nil {
		discard(staged)
		return err
	}
	for i, f := range files {
		if err := os.Rename(staged[i], filepath.Join(dir, f.name)); err != nil {
			discard(staged[i:])
			return plainPathError(err)
		}
	}
	return nil
}

// writeBoth writes two files that belong together, in folders that it makes, or
// neither of them: each is complete under a temporary name before any is renamed.
func writeBoth(first, second string, one, two []byte, force bool) error {
	paths, data := []string{first, second}, [][]byte{one, two}
	var staged []string
	for i, path := range paths {
		err := mayWrite(path, force)
		if err == nil {
			err = plainPathError(os.MkdirAll(filepath.Dir(path), 0o777))
		}
		if err == nil {
			var part []string
			part, err = stage(filepath.Dir(path), []outFile{{filepath.Base(path), data[i]}})
			staged = append(staged, part...)
		}
		if err != nil {
			discard(staged)
			return err
		}
	}
	for i, path := range paths {
		if err := os.Rename(staged[i], path); err != nil {
			discard(staged[i:])
			return plainPathError(err)
		}
	}
	return nil
}

// mayWrite refuses a folder, and an existing file unless force is set.
func mayWrite(path string, force bool) error {
	if path == "-" {
		return errors.New(`"-": a result is not written to standard output; name a file`)
	}
	info, err := os.Lstat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return plainPathError(err)
	case info.IsDir():
		return fmt.Errorf("%s is a folder; name a file", path)
	case !force:
		return fmt.Errorf("%s exists already; choose another place, or say --force to replace it", path)
	}
	return nil
}

// stage writes every file under a temporary name beside its place and returns those names.
func stage(dir string, files []outFile) ([]string, error) {
	staged := make([]string, 0, len(files))
	for _, f := range files {
		path := filepath.Join(dir, f.name)
		tmp, err := os.CreateTemp(filepath.Dir(path), ".rinkpane-*")
		if err != nil {
			return staged, unmadeError(path, err)
		}
		staged = append(staged, tmp.Name())
		_, werr := tmp.Write(f.data)
		if err := errors.Join(werr, tmp.Chmod(0o644), tmp.Close()); err != nil {
			return staged, plainPathError(err)
		}
	}
	return slices.Clip(staged), nil
}

func discard(names []string) {
	for _, n := range names {
		_ = os.Remove(n) // best effort: the error that led here matters more
	}
}

// unmadeError names the file that was to be written, not its temporary name.
func unmadeError(path string, err error) error {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return fmt.Errorf("%s: cannot be written: %w", path, pe.Err)
	}
	return err
}

// plainPathError says which path failed and why, without the system call's name.
func plainPathError(err error) error {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return fmt.Errorf("%s: %w", pe.Path, pe.Err)
	}
	return err
}
