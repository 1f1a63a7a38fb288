//go:build !linux

package main

import (
	"errors"
	"os"
)

// isTerminal reports whether a file is a terminal.
func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// quiet cannot stop a terminal of this system from showing what is typed.
func quiet(*os.File) (loud func(), err error) {
	return nil, errors.New("a password typed here would be seen: send it as the first line of standard input")
}
