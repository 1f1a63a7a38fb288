package main

import (
	"fmt"
	"io"
	"os"

	"example.org/rinkpane/internal/survey/arena"
)

// stdinName stands for standard input in messages.
const stdinName = "standard input"

// withInput opens the file that a user named, "-" for standard input, and hands
// it on with the name that messages use. A user who stops the program need not
// wait for a terminal or a pipe that says nothing.
func withInput(a *app, path string, use func(name string, r io.Reader) error) error {
	done := make(chan error, 1)
	go func() { done <- openInput(a, path, use) }()
	select {
	case err := <-done:
		return err
	case <-a.stop:
		return errStopped
	}
}

func openInput(a *app, path string, use func(name string, r io.Reader) error) error {
	if path == "-" {
		return use(stdinName, a.in)
	}
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return plainPathError(err)
	case info.IsDir():
		return fmt.Errorf("%s is a folder; name a file", path)
	}
	f, err := os.Open(path)
	if err != nil {
		return plainPathError(err)
	}
	defer f.Close()
	return use(path, f)
}

// readArena reads and checks the arena file that a user named, "-" for
// standard input, and settles the units to print in.
func readArena(a *app, path string) (arena.Arena, error) {
	_, out, err := readDocument(a, path)
	return out, err
}

// readDocument is readArena with the document's own text beside the arena.
func readDocument(a *app, path string) (*arena.Document, arena.Arena, error) {
	var doc *arena.Document
	var out arena.Arena
	err := withInput(a, path, func(name string, r io.Reader) (err error) {
		if doc, err = arena.Read(name, r); err != nil {
			return err
		}
		out, err = doc.Check()
		return err
	})
	if err != nil {
		return nil, arena.Arena{}, err
	}
	out.Units, err = a.system(out.Units)
	return doc, out, err
}
