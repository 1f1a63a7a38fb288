package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// A file that a command writes appears whole or not at all: it is written
// beside its place under a hidden name and renamed when it is complete.

// outFile is one file to be written.
type outFile struct {
	name string // a path; for [writeFolder] relative to the folder, slashes, no "..", not absolute
	data []byte
}

// writeFile writes one file; an existing one is kept unless force is set.
func writeFile(path string, data []byte, force bool) error {
	return writeFiles([]outFile{{path, data}}, force)
}

// writeFolder writes files below dir.
func writeFolder(dir string, files []outFile, force bool) error {
	placed := make([]outFile, len(files))
	for i, f := range files {
		if !filepath.IsLocal(f.name) {
			return fmt.Errorf("%q: a file's name must stay inside its folder", f.name)
		}
		placed[i] = outFile{filepath.Join(dir, f.name), f.data}
	}
	return writeFiles(placed, force)
}

// writeFiles writes files, in folders that it makes when they are absent. When
// any of them exists and force is not set, or cannot be written, it writes none
// of them and leaves no folder behind.
func writeFiles(files []outFile, force bool) (err error) {
	for _, f := range files {
		if err := mayWrite(f.name, force); err != nil {
			return err
		}
	}
	var made, staged []string
	defer func() {
		if err != nil {
			discard(staged)
			discard(made)
		}
	}()
	for _, f := range files {
		folders, err := makeFolders(filepath.Dir(f.name))
		made = append(folders, made...)
		if err != nil {
			return err
		}
		hidden, err := stage(f)
		staged = append(staged, hidden)
		if err != nil {
			return unwritten(f.name, err)
		}
	}
	for i, f := range files {
		if err := os.Rename(staged[i], f.name); err != nil {
			return unwritten(f.name, err)
		}
		if !force { // what stood there before cannot be had back
			staged[i] = f.name
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

// makeFolders makes a folder and those above it, and returns those that it made,
// the innermost first.
func makeFolders(dir string) (made []string, err error) {
	for up := dir; ; up = filepath.Dir(up) {
		if _, err := os.Stat(up); !errors.Is(err, fs.ErrNotExist) || up == filepath.Dir(up) {
			return made, plainPathError(os.MkdirAll(dir, 0o777))
		}
		made = append(made, up)
	}
}

// mostHidden is how many hidden files that were left behind are passed over.
const mostHidden = 1000

// stage writes a file under a hidden name beside its place, with the permissions
// that the user's umask gives new files, and returns that name.
func stage(f outFile) (hidden string, err error) {
	var out *os.File
	for n := range mostHidden {
		hidden = filepath.Join(filepath.Dir(f.name), fmt.Sprintf(".rinkpane-%d-%d", os.Getpid(), n))
		if out, err = os.OpenFile(hidden, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666); !errors.Is(err, fs.ErrExist) {
			break
		}
	}
	if err != nil {
		return "", err
	}
	_, err = out.Write(f.data)
	return hidden, errors.Join(err, out.Close())
}

// discard removes what is there of hidden files and of folders that are empty.
func discard(names []string) {
	for _, n := range names {
		_ = os.Remove(n) // best effort: the error that led here matters more
	}
}

// unwritten names the file that was to be written, not its hidden name, and the
// cure where the disk has no room.
func unwritten(path string, err error) error {
	var pe *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &pe):
		err = pe.Err
	case errors.As(err, &link):
		err = link.Err
	}
	if errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) {
		return fmt.Errorf("%s: cannot be written: %w; nothing was written: free some room, or choose another place", path, err)
	}
	return fmt.Errorf("%s: cannot be written: %w", path, err)
}

// plainPathError says which path failed and why, without the system call's name.
func plainPathError(err error) error {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return fmt.Errorf("%s: %w", pe.Path, pe.Err)
	}
	return err
}
