package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"example.org/rinkpane/arena"
)

// stdinName stands for standard input in messages.
const stdinName = "standard input"

// open opens a file of the user's for reading; "-" is standard input. A
// folder, a missing file and one that may not be read are told in one line.
func (a *app) open(path string) (io.ReadCloser, string, error) {
	if path == "-" {
		return io.NopCloser(a.in), stdinName, nil
	}
	info, err := os.Stat(path)
	if err != nil {
		return nil, path, plainPathError(err)
	}
	if info.IsDir() {
		return nil, path, fmt.Errorf("%s is a folder; name a file", path)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, path, plainPathError(err)
	}
	return f, path, nil
}

// readArena reads and checks the arena file that a command was given. The
// document comes with it: its text is what the plan's revision is made of.
func (a *app) readArena(path string) (*arena.Document, arena.Arena, error) {
	r, name, err := a.open(path)
	if err != nil {
		return nil, arena.Arena{}, err
	}
	doc, err := arena.Read(name, r)
	if err = errors.Join(err, r.Close()); err != nil {
		return nil, arena.Arena{}, err
	}
	checked, err := doc.Check()
	if err != nil {
		return nil, arena.Arena{}, err
	}
	return doc, checked, nil
}
