package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
)

// longestLine is the most bytes of a line that is read as a password.
const longestLine = 4096

// askPassword reads a password: from a terminal twice and unseen, else the
// first line of standard input.
func askPassword(a *app, prompt string) (string, error) {
	in := bufio.NewReader(io.LimitReader(a.in, longestLine))
	f, ok := a.in.(*os.File)
	if !ok || !isTerminal(f) {
		return passwordLine(in)
	}
	loud, err := quiet(f)
	if err != nil {
		return "", err
	}
	defer loud()
	fmt.Fprint(a.err, prompt+": ")
	first, err := passwordLine(in)
	fmt.Fprintln(a.err)
	if err != nil {
		return "", err
	}
	fmt.Fprint(a.err, "The same again: ")
	second, err := passwordLine(in)
	fmt.Fprintln(a.err)
	if err != nil {
		return "", err
	}
	if first != second {
		return "", errors.New("the two passwords differ; nothing was changed")
	}
	return first, nil
}

func passwordLine(in *bufio.Reader) (string, error) {
	line, err := in.ReadString('\n')
	if err != nil && !errors.Is(err, io.EOF) {
		return "", fmt.Errorf("reading the password: %w", err)
	}
	line = strings.TrimRight(line, "\r\n")
	if line == "" {
		return "", errors.New("no password: type it, or send it as the first line of standard input")
	}
	return line, nil
}
