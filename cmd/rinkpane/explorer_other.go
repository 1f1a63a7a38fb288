//go:build !windows

package main

// byExplorer reports whether the file manager of Windows started the program.
func byExplorer() bool { return false }
