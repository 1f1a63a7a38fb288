package main

import (
	"bytes"
	"context"
	"io"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// Ctrl-C ends a command that waits for its input, or works, with plain words
// and nothing on standard output.
func TestStopEndsACommand(t *testing.T) {
	silent, hold := io.Pipe() // a terminal on which nobody types
	t.Cleanup(func() { hold.Close() })
	pipe := filepath.Join(t.TempDir(), "pipe") // nobody writes into it
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for _, args := range [][]string{
		{"check", "-"}, {"check", pipe},
		{"plan", filepath.Join("..", "..", "examples", "quillhaven.yaml"), "--out", filepath.Join(t.TempDir(), "plan")},
	} {
		var out, told bytes.Buffer
		code := make(chan int, 1)
		go func() { code <- answer(ctx, args, silent, &out, &told) }()
		select {
		case got := <-code:
			if got != exitBad || out.Len() > 0 || told.String() != "rinkpane: stopped before the answer was there\n" {
				t.Errorf("%v: exit %d, %d bytes of output, told %q", args, got, out.Len(), told.String())
			}
		case <-time.After(20 * time.Second):
			t.Fatalf("%v does not stop", args)
		}
	}
}

// TestAPipeWithoutAWriter waits for one no longer than patience lasts.
func TestAPipeWithoutAWriter(t *testing.T) {
	t.Parallel() // it mostly waits
	pipe := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	var out, told bytes.Buffer
	if got := answer(t.Context(), []string{"check", pipe}, nil, &out, &told); got != exitBad || out.Len() > 0 {
		t.Errorf("exit %d, %d bytes of output", got, out.Len())
	}
	if got := told.String(); !strings.HasPrefix(got, "rinkpane: "+pipe+" is a pipe into which nobody has written for 10s") || strings.Count(got, "\n") != 1 {
		t.Errorf("told %q", got)
	}
}
