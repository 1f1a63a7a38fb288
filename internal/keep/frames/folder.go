package frames

import (
	"cmp"
	"context"
	"path/filepath"
	"slices"
	"strings"

	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/cores"
)

// Found is what folders hold.
type Found struct {
	Frames   []recap.Frame // in the order in which they were taken, then by name
	Troubles []Trouble     // by name
	Known    int           // shots that a journal knew and that were not read again
}

// Read reads all frames in folders and files, shared over the cores, and tells those who
// watch how far it is. It writes nothing but to the journal, which may be nil. A context
// that ends stops it between two files.
func Read(ctx context.Context, paths []string, j *Journal) (Found, error) {
	shots, troubles, err := list(ctx, paths)
	if err != nil {
		return Found{}, err
	}
	out, err := readAll(ctx, shots, j)
	out.Troubles = append(out.Troubles, troubles...)
	slices.SortStableFunc(out.Troubles, func(a, b Trouble) int { return strings.Compare(a.File, b.File) })
	return out, err
}

// readAll reads shots.
func readAll(ctx context.Context, shots []shot, j *Journal) (out Found, err error) {
	done := make([]entry, len(shots))
	err = cores.EachUntil(ctx, "reading frames", len(shots), func(i int) { done[i] = j.read(shots[i]) })
	for _, e := range done {
		if e.known {
			out.Known++
		}
		out.Troubles = append(out.Troubles, e.troubles...)
		if e.Frame != nil {
			out.Frames = append(out.Frames, *e.Frame)
		}
	}
	slices.SortStableFunc(out.Frames, recap.Frame.Compare)
	if err == nil {
		err = j.failure()
	}
	return out, err
}

// read reads the files of one shot: the first of its pictures that says when it was
// taken, with a rating from wherever one stands. A raw file's JPEG is read first. Where no
// picture says it, a sidecar may.
func (s shot) read() entry {
	var e entry
	slices.SortStableFunc(s.pictures, func(a, b string) int { return cmp.Compare(rawness(a), rawness(b)) })
	for _, path := range s.pictures {
		f, trouble := ReadFile(path)
		switch {
		case trouble.Cause != "":
			e.troubles = append(e.troubles, trouble)
		case e.Frame == nil:
			e.Frame = &f
		case e.Frame.Rating.IsZero():
			e.Frame.Rating = f.Rating
		}
	}
	for _, path := range s.sidecars {
		e.sidecar(s, path)
	}
	if e.Frame != nil { // something beside it was read in its place
		e.troubles = slices.DeleteFunc(e.troubles, func(t Trouble) bool { return t.Cause == RawKind })
	}
	return e
}

// sidecar adds what a sidecar of a shot says.
func (e *entry) sidecar(s shot, path string) {
	if len(s.pictures) == 0 {
		e.troubles = append(e.troubles, Trouble{path, Alone, nil})
		return
	}
	said, err := sidecar(path)
	f := said.frame(s.pictures[0])
	if e.Frame == nil && !f.Taken.IsZero() {
		e.Frame = &f
	}
	switch {
	case e.Frame != nil && !f.Rating.IsZero(): // damage behind it does not matter
		e.Frame.Rating = f.Rating
	case err != nil:
		e.troubles = append(e.troubles, Trouble{path, Broken, err})
	}
}

// rawness orders a shot's files: pictures before raw files.
func rawness(path string) int {
	if slices.Contains(rawEnds(), strings.ToLower(filepath.Ext(path))) {
		return 1
	}
	return 0
}
