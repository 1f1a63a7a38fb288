package main

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"example.org/rinkpane/internal/keep/queue"
)

// stopper is a standard error that stops the program once it reads a word.
type stopper struct {
	bytes.Buffer
	word string
	stop context.CancelFunc
}

func (s *stopper) Write(b []byte) (int, error) {
	if strings.Contains(string(b), s.word) {
		s.stop()
	}
	return s.Buffer.Write(b)
}

// TestNoBookTakesThePlaceOfAnother names books of files that differ in their ending only,
// or that are called as the book over all.
func TestNoBookTakesThePlaceOfAnother(t *testing.T) {
	var books []outFile
	for _, f := range []struct{ arena, book string }{
		{"north.hall.yaml", "north.hall.pdf"}, {"League.yaml", "League.yaml.pdf"}, {"x.yaml", "x.pdf"}, {"x.yml", "x.yml.pdf"}, {"x.yml.yaml", "x.yml.yaml.pdf"},
	} {
		got := bookFile(f.arena, books)
		if got != f.book {
			t.Errorf("the book of %s is %s, expected %s", f.arena, got, f.book)
		}
		books = append(books, outFile{name: got})
	}
}

// TestALeagueThatIsStopped says how much is left; what was at work waits, and cost no try.
func TestALeagueThatIsStopped(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	data := t.TempDir()
	told := &stopper{word: "jobs left", stop: stop}
	var out bytes.Buffer
	code := answer(ctx, []string{"league", "../../examples", "--data", data, "--moments", "20000"}, nil, &out, told)
	if code != exitBad || out.Len() > 0 || !strings.Contains(told.String(), "of 6 jobs left; the same command goes on from there") {
		t.Errorf("exit %d, %d bytes of output, told %q", code, out.Len(), told.String())
	}
	q, err := queue.OpenFolder(t.Context(), data, queue.Options{Program: version()})
	if err != nil {
		t.Fatal(err)
	}
	defer q.Close()
	all, err := q.Listed(t.Context(), 10)
	if err != nil || len(all) != 6 {
		t.Fatalf("%d jobs, %v", len(all), err)
	}
	for _, p := range all {
		if p.State != queue.Done && (p.State != queue.Waiting || p.Tries != 0) {
			t.Errorf("%s %s is %s after %d tries", p.Kind, p.About, p.State, p.Tries)
		}
	}
}
