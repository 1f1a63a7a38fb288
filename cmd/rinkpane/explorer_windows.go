package main

import "github.com/inconshreveable/mousetrap"

// byExplorer reports whether the file manager of Windows started the program.
func byExplorer() bool { return mousetrap.StartedByExplorer() }
