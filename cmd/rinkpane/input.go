package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"time"
)

// stdinName stands for standard input in messages.
const stdinName = "standard input"

// pipePatience is how long a named pipe may be without a writer.
const pipePatience = 10 * time.Second

// withInput opens the file that a user named, "-" for standard input, and hands
// it on with the name that messages use. A user who stops the program need not
// wait for a terminal or a pipe that says nothing.
func withInput(a *app, path string, use func(name string, r io.Reader) error) error {
	if path == "-" {
		return await(a, nil, func() error { return use(stdinName, a.in) })
	}
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return plainPathError(err)
	case info.IsDir():
		return fmt.Errorf("%s is a folder; name a file", path)
	}
	var late <-chan time.Time
	if info.Mode()&os.ModeNamedPipe != 0 {
		late = time.After(pipePatience)
	}
	var f *os.File
	err = await(a, late, func() (err error) { f, err = os.Open(path); return err })
	if errors.Is(err, errLate) {
		return fmt.Errorf("%s is a pipe into which nobody has written for %v; start what writes into it, or name a file", path, pipePatience)
	}
	if err != nil {
		return plainPathError(err)
	}
	return await(a, nil, func() error { defer f.Close(); return use(path, f) })
}

var errLate = errors.New("late")

// await does something beside the user, who may stop the program, and the clock.
func await(a *app, late <-chan time.Time, do func() error) error {
	done := make(chan error, 1)
	go func() { done <- do() }()
	select {
	case err := <-done:
		return err
	case <-late:
		return errLate
	case <-a.stop:
		return errStopped
	}
}
