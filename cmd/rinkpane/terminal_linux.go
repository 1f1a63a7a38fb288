package main

import (
	"fmt"
	"os"

	"golang.org/x/sys/unix"
)

// isTerminal reports whether a file is a terminal.
func isTerminal(f *os.File) bool {
	_, err := unix.IoctlGetTermios(int(f.Fd()), unix.TCGETS)
	return err == nil
}

// quiet stops a terminal from showing what is typed; loud takes that back.
func quiet(f *os.File) (loud func(), err error) {
	fd := int(f.Fd())
	was, err := unix.IoctlGetTermios(fd, unix.TCGETS)
	if err != nil {
		return nil, fmt.Errorf("the terminal: %w", err)
	}
	unseen := *was
	unseen.Lflag &^= unix.ECHO
	if err := unix.IoctlSetTermios(fd, unix.TCSETS, &unseen); err != nil {
		return nil, fmt.Errorf("the terminal: %w", err)
	}
	return func() { _ = unix.IoctlSetTermios(fd, unix.TCSETS, was) }, nil // best effort: the shell resets it, too
}
